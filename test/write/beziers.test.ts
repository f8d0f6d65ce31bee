import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Curve2, Spline2 } from '../../src/geometry/curve2.ts'
import { pointAt } from '../../src/geometry/evaluate.ts'
import type { Vec2 } from '../../src/geometry/vec.ts'
import { type Cubic, cubicPoint, cubics } from '../../src/write/beziers.ts'

const num = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const samples = Array.from({ length: 41 }, (_, i) => i / 40)

/** Largest distance of points of the Béziers from the curve's implicit form. */
const worst = (pieces: readonly Cubic[], off: (p: Vec2) => number) =>
  Math.max(...pieces.flatMap((c) => samples.map((t) => off(cubicPoint(c, t)))))

describe('Béziers', () => {
  it('keep within 1e-4 mm of circles', () => {
    fc.assert(
      fc.property(num(0.1, 2000), num(-7, 7), num(-6.28, 6.28), (r, from, sweep) => {
        const arc: Curve2 = { kind: 'arc', c: [3, 4], r, from, sweep }
        expect(worst(cubics(arc), ([x, y]) => Math.abs(Math.hypot(x - 3, y - 4) - r))).toBeLessThan(1e-4)
      }),
    )
  })

  it('keep within 1e-4 mm of ellipses', () => {
    fc.assert(
      fc.property(num(1, 500), num(0.05, 1), num(0, 3), (a, ratio, turn) => {
        const major: Vec2 = [a * Math.cos(turn), a * Math.sin(turn)]
        const ellipse: Curve2 = { kind: 'ellipse', c: [0, 0], major, ratio, from: 0.3, sweep: 5 }
        // Affine image of the circle: undo the squeeze, compare with the radius; the squeeze only shrinks distances.
        const off = ([x, y]: Vec2) => {
          const u = (x * major[0] + y * major[1]) / a
          const v = (-x * major[1] + y * major[0]) / (a * ratio)
          return Math.abs(Math.hypot(u, v) - a)
        }
        expect(worst(cubics(ellipse), off)).toBeLessThan(1e-4)
      }),
    )
  })

  it('are exact for polynomial splines up to degree 3', () => {
    for (const degree of [1, 2, 3]) {
      const poles: Vec2[] = [
        [0, 0],
        [10, 25],
        [30, -5],
        [45, 12],
        [60, 0],
        [70, 30],
      ]
      const inner = Array.from({ length: poles.length - degree - 1 }, (_, i) => i + 1)
      const last = inner.length + 1
      const spline: Spline2 = {
        kind: 'spline',
        degree,
        knots: [...Array<number>(degree + 1).fill(0), ...inner, ...Array<number>(degree + 1).fill(last)],
        poles,
      }
      const pieces = cubics(spline)
      expect(pieces).toHaveLength(last)
      pieces.forEach((c, i) => {
        for (const t of samples) {
          const [x, y] = pointAt(spline, (i + t) / last)
          const [u, v] = cubicPoint(c, t)
          expect(Math.hypot(x - u, y - v)).toBeLessThan(1e-9)
        }
      })
    }
  })

  it('follow a rational spline: the circle as a NURBS', () => {
    // Piegl and Tiller, The NURBS Book, Example 7.1: quarter circle of degree 2 with weights 1, √½, 1.
    const quarter: Spline2 = {
      kind: 'spline',
      degree: 2,
      knots: [0, 0, 0, 1, 1, 1],
      poles: [
        [50, 0],
        [50, 50],
        [0, 50],
      ],
      weights: [1, Math.SQRT1_2, 1],
    }
    expect(worst(cubics(quarter), ([x, y]) => Math.abs(Math.hypot(x, y) - 50))).toBeLessThan(1e-4)
  })
})
