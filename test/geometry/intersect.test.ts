import { describe, expect, it } from 'vitest'
import type { Arc2, Curve2, Ellipse2, Spline2 } from '../../src/geometry/curve2.ts'
import { pointAt } from '../../src/geometry/evaluate.ts'
import { intersections } from '../../src/geometry/intersect.ts'

// Source of the checks: closed formulas of analytic geometry, worked beside each.

const line = (ax: number, ay: number, bx: number, by: number): Curve2 => ({ kind: 'line', a: [ax, ay], b: [bx, by] })
const circle = (x: number, y: number, r: number): Arc2 => ({ kind: 'arc', c: [x, y], r, from: 0, sweep: 2 * Math.PI })
const ellipse = (x: number, y: number, a: number, b: number): Ellipse2 => ({
  kind: 'ellipse',
  c: [x, y],
  major: [a, 0],
  ratio: b / a,
  from: 0,
  sweep: 2 * Math.PI,
})
/** y = x² for x in [-1, 1]: poles (-1, 1), (0, -1), (1, 1). */
const parabola: Spline2 = {
  kind: 'spline',
  degree: 2,
  knots: [0, 0, 0, 1, 1, 1],
  poles: [
    [-1, 1],
    [0, -1],
    [1, 1],
  ],
}

function points(a: Curve2, b: Curve2, tolerance = 1e-9): number[][] {
  const found = intersections(a, b, tolerance).map((m) => {
    const p = pointAt(a, m.a)
    const q = pointAt(b, m.b)
    expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeLessThan(2e-9)
    return [p[0], p[1]]
  })
  return found.sort((p, q) => (Math.abs(p[0]! - q[0]!) > 1e-6 ? p[0]! - q[0]! : p[1]! - q[1]!))
}

function near(found: number[][], wanted: number[][]): void {
  expect(found).toHaveLength(wanted.length)
  found.forEach((p, i) => {
    expect(p[0]).toBeCloseTo(wanted[i]![0]!, 8)
    expect(p[1]).toBeCloseTo(wanted[i]![1]!, 8)
  })
}

describe('intersections of plane curves', () => {
  it('crosses two lines', () => near(points(line(0, 0, 4, 4), line(0, 4, 4, 0)), [[2, 2]]))

  it('gives the shared ends of collinear lines', () => {
    near(points(line(0, 0, 10, 0), line(4, 0, 14, 0)), [
      [4, 0],
      [10, 0],
    ])
  })

  it('meets at a T where one line ends on the other', () => near(points(line(0, 0, 10, 0), line(3, 0, 3, 5)), [[3, 0]]))

  it('cuts a circle of radius 5 by x = 3 at y = ±4', () => {
    near(points(line(3, -9, 3, 9), circle(0, 0, 5)), [
      [3, -4],
      [3, 4],
    ])
  })

  it('touches a circle once', () => near(points(line(5, -9, 5, 9), circle(0, 0, 5)), [[5, 0]]))

  it('cuts two circles of radius 5, 6 apart, at (3, ±4)', () => {
    near(points(circle(0, 0, 5), circle(6, 0, 5)), [
      [3, -4],
      [3, 4],
    ])
  })

  it('touches two circles once, from outside and from inside', () => {
    near(points(circle(0, 0, 3), circle(5, 0, 2)), [[3, 0]])
    near(points(circle(0, 0, 5), circle(3, 0, 2)), [[5, 0]])
  })

  it('gives the ends of what two arcs of one circle share', () => {
    const a: Arc2 = { kind: 'arc', c: [0, 0], r: 2, from: 0, sweep: Math.PI }
    const b: Arc2 = { kind: 'arc', c: [0, 0], r: 2, from: Math.PI / 2, sweep: Math.PI }
    near(points(a, b), [
      [-2, 0],
      [0, 2],
    ])
  })

  it('cuts the ellipse x²/25 + y²/9 = 1 by y = x at ±15/√34', () => {
    const s = 15 / Math.sqrt(34)
    near(points(line(-9, -9, 9, 9), ellipse(0, 0, 5, 3)), [
      [-s, -s],
      [s, s],
    ])
  })

  it('cuts two crossed ellipses of half axes 5 and 3 in four points, |x| = |y| = 15/√34', () => {
    const s = 15 / Math.sqrt(34)
    const upright: Ellipse2 = { ...ellipse(0, 0, 5, 3), major: [0, 5] }
    near(points(ellipse(0, 0, 5, 3), upright), [
      [-s, -s],
      [-s, s],
      [s, -s],
      [s, s],
    ])
  })

  it('cuts the circle x² + y² = 16 and the ellipse x²/25 + y²/9 = 1 where x² = 175/16', () => {
    const x = Math.sqrt(175) / 4
    const y = 9 / 4
    near(points(circle(0, 0, 4), ellipse(0, 0, 5, 3)), [
      [-x, -y],
      [-x, y],
      [x, -y],
      [x, y],
    ])
  })

  it('cuts the parabola y = x² by y = 1/4 at x = ±1/2, and by the unit circle at y = (√5 - 1)/2', () => {
    near(points(line(-2, 0.25, 2, 0.25), parabola), [
      [-0.5, 0.25],
      [0.5, 0.25],
    ])
    const y = (Math.sqrt(5) - 1) / 2
    near(points(circle(0, 0, 1), parabola), [
      [-Math.sqrt(y), y],
      [Math.sqrt(y), y],
    ])
  })

  it('cuts two parabolas y = x² and y = 1 - x² at x = ±1/√2', () => {
    const other: Spline2 = {
      ...parabola,
      poles: [
        [-1, 0],
        [0, 2],
        [1, 0],
      ],
    }
    const x = Math.SQRT1_2
    near(points(parabola, other, 1e-9), [
      [-x, 0.5],
      [x, 0.5],
    ])
  })
})
