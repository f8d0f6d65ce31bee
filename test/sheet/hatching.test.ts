import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Curve2 } from '../../src/geometry/curve2.ts'
import type { Vec2 } from '../../src/geometry/vec.ts'
import { hatchLines, hatchStyle } from '../../src/sheet/hatching.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'

const figures = practiceFigures('ISO', 'A3')
const polygon = (...p: Vec2[]): Curve2[] => p.map((a, i) => ({ kind: 'line', a, b: p[(i + 1) % p.length]! }))
const circle = (c: Vec2, r: number): Curve2[] => [{ kind: 'arc', c, r, from: 0, sweep: 2 * Math.PI }]
const total = (lines: readonly Curve2[]) =>
  lines.reduce((sum, l) => sum + (l.kind === 'line' ? Math.hypot(l.b[0] - l.a[0], l.b[1] - l.a[1]) : 0), 0)
const ends = (lines: readonly Curve2[]) => lines.flatMap((l) => (l.kind === 'line' ? [l.a, l.b] : []))

describe('hatching', () => {
  it('fills an area: line length times spacing is the area (Cavalieri)', () => {
    // Closed formulas: rectangle a·b, annulus π(R² − r²), ellipse π a b.
    const spacing = 0.25
    const style = { angle: 45, spacing }
    const rectangle = hatchLines([polygon([0, 0], [40, 0], [40, 25], [0, 25])], style)
    expect(total(rectangle) * spacing).toBeCloseTo(1000, -1)
    const annulus = hatchLines([circle([3, 7], 20), circle([3, 7], 8)], style)
    expect(Math.abs(total(annulus) * spacing - Math.PI * (400 - 64))).toBeLessThan(2)
    const ellipse: Curve2 = { kind: 'ellipse', c: [0, 0], major: [20, 5], ratio: 0.4, from: 0, sweep: 2 * Math.PI }
    const a2 = 425
    expect(Math.abs(total(hatchLines([[ellipse]], style)) * spacing - Math.PI * a2 * 0.4)).toBeLessThan(2)
  })

  it('ends exactly on the outline', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (R, k) => {
          const r = R * k
          for (const [x, y] of ends(hatchLines([circle([1, 2], R), circle([1, 2], r)], { angle: 45, spacing: 2 }))) {
            const d = Math.hypot(x - 1, y - 2)
            expect(Math.min(Math.abs(d - R), Math.abs(d - r))).toBeLessThan(1e-6)
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  it('keeps out of holes and of a spline-bounded void', () => {
    const spline: Curve2 = {
      kind: 'spline',
      degree: 2,
      knots: [0, 0, 0, 1, 1, 1],
      poles: [
        [5, 5],
        [10, 20],
        [15, 5],
      ],
    }
    const hole: Curve2[] = [spline, { kind: 'line', a: [15, 5], b: [5, 5] }]
    const lines = hatchLines([polygon([0, 0], [20, 0], [20, 20], [0, 20]), hole], { angle: 45, spacing: 1 })
    // Area under the quadratic Bézier over its chord: two thirds of base times sagitta (Archimedes).
    expect(Math.abs(total(lines) - (400 - (2 / 3) * 10 * 7.5))).toBeLessThan(8)
  })

  it('runs at 45°, and elsewhere only where an outline does', () => {
    // ISO 128-3:2022 / ASME Y14.3-2012: 45° to the outlines; not parallel or square to them.
    const square = [polygon([0, 0], [40, 0], [40, 40], [0, 40])]
    expect(hatchStyle([square], figures).angle).toBe(45)
    const diamond = [polygon([20, 0], [40, 20], [20, 40], [0, 20])]
    const { angle } = hatchStyle([diamond], figures)
    for (const outline of [45, 135]) {
      const d = Math.abs(angle - outline) % 180
      expect(Math.min(d, 180 - d)).toBeGreaterThan(10)
    }
  })

  it('is wider on large areas', () => {
    const of = (s: number) => hatchStyle([[polygon([0, 0], [s, 0], [s, s], [0, s])]], figures).spacing
    expect(of(10)).toBe(2)
    expect(of(300)).toBe(4)
    expect(of(80)).toBeGreaterThan(of(10))
  })
})
