import { describe, expect, it } from 'vitest'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import type { SheetItem } from '../../../src/sheet/sheet.ts'
import type { View } from '../../../src/views/view.ts'
import { across, field, hole, note, place, rect, seg, size, sizeSet, upward, view } from './fixtures.ts'

// Common practice, no source: a leader or extension line must not seem to belong to what it does not mean.

const placed = (
  views: { view: View; placed: ReturnType<typeof place>['placed'] }[],
  dimensions: ReturnType<typeof across>[],
  practice: 'ISO' | 'ASME',
) => placeDimensions({ views, sizes: sizeSet(dimensions), practice, obstacles: [], bounds: field(420, 297) })

const linesOf = (items: readonly SheetItem[], id: string, kind: string) =>
  items.flatMap((i) =>
    i.item === 'stroke' && i.kind === kind && i.curve.kind === 'line' && i.tie?.dimension === id ? [i.curve] : [],
  )

const distance = (p: Vec2, { a, b }: { a: Vec2; b: Vec2 }) => {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / (ux * ux + uy * uy)))
  return Math.hypot(a[0] + t * ux - p[0], a[1] + t * uy - p[1])
}

describe('leaders', () => {
  // Out of each of these holes the customary angles lead through a corner.
  it.each([
    [50, 50],
    [50, 28.87],
    [28.87, 50],
    [100, 50],
  ])('from a hole at %d, %d keep off the corners of the part', (x, y) => {
    const v = view('front', [...rect(0, 0, 150, 100), ...hole([x, y], 6)], { min: [0, 0], max: [150, 100] })
    const views = [place(v, [120, 100])]
    const dimensions = [
      note('front', [[x, y]], 6, '⌀12 THRU', { id: 'hole' }),
      across('front', [0, y], [x, y], 'x'),
      upward('front', [x, 0], [x, y], 'y'),
      across('front', [0, 0], [150, 0], '150'),
      upward('front', [0, 0], [0, 100], '100'),
    ]
    for (const practice of ['ISO', 'ASME'] as const) {
      const r = placed(views, dimensions, practice)
      expect(r.unplaced).toEqual([])
      const leader = linesOf(r.items, 'hole', 'leader')
      expect(leader.length).toBeGreaterThan(0)
      for (const corner of [
        [120, 100],
        [270, 100],
        [120, 200],
        [270, 200],
      ] as const)
        for (const l of leader) expect(distance(corner, l)).toBeGreaterThan(1)
    }
  })

  it('to the end of an open slot do not come in over its other side', () => {
    const r = 5
    const v = view(
      'front',
      [
        seg([0, 0], [150, 0]),
        seg([150, 0], [150, 100]),
        seg([150, 100], [0, 100]),
        seg([0, 100], [0, 50 + r]),
        seg([0, 50 + r], [30, 50 + r]),
        { curve: { kind: 'arc', c: [30, 50], r, from: Math.PI / 2, sweep: -Math.PI }, kind: 'visible', sources: [] },
        seg([30, 50 - r], [0, 50 - r]),
        seg([0, 50 - r], [0, 0]),
      ],
      { min: [0, 0], max: [150, 100] },
    )
    const arc = { kind: 'radius', centre: [30, 50], radius: r, from: Math.PI / 2, sweep: -Math.PI } as const
    const radius = size('front', arc, 'R', { id: 'end' })
    const result = placed([place(v, [120, 100])], [radius], 'ISO')
    const leader = linesOf(result.items, 'end', 'leader')
    expect(leader.length).toBeGreaterThan(0)
    // Sides of the slot on paper: y = 145 and 155, x from 120 to 150.
    for (const { a, b } of leader)
      for (const y of [145, 155]) {
        const t = (y - a[1]) / (b[1] - a[1])
        const x = a[0] + t * (b[0] - a[0])
        expect(t > 0.01 && t < 0.99 && x > 120 && x < 149.9).toBe(false)
      }
  })
})

describe('the diameter of a groove narrower than an arrowhead', () => {
  it.each(['ISO', 'ASME'] as const)('stands at the groove, not between lines beside the outline, %s', (practice) => {
    const half = (s: 1 | -1) => [
      seg([0, 12.5 * s], [24.7, 12.5 * s]),
      seg([24.7, 12.5 * s], [24.7, 11.95 * s]),
      seg([24.7, 11.95 * s], [26, 11.95 * s]),
      seg([26, 11.95 * s], [26, 12.5 * s]),
      seg([26, 12.5 * s], [30, 12.5 * s]),
      seg([30, 12.5 * s], [30, 16 * s]),
      seg([30, 16 * s], [75, 16 * s]),
    ]
    const lines = [
      ...half(1),
      ...half(-1),
      seg([0, -12.5], [0, 12.5]),
      seg([75, -16], [75, 16]),
      seg([24.7, -11.95], [24.7, 11.95]),
      seg([26, -11.95], [26, 11.95]),
      seg([0, 0], [75, 0], 'centre', 3),
    ]
    const v = view('front', lines, { min: [0, -16], max: [75, 16] })
    const of = (x: number, r: number, text: string, id: string) =>
      upward('front', [x, -r], [x, r], text, { id, direction: 'diameter' })
    const dimensions = [
      of(24.7, 11.95, '⌀23.9', 'groove'),
      of(0, 12.5, '⌀25', 'journal'),
      of(75, 16, '⌀32', 'seat'),
      across('front', [0, -12.5], [30, -12.5], '30'),
      across('front', [24.7, -12.5], [26, -12.5], '1.3'),
    ]
    const r = placed([place(v, [150, 150])], dimensions, practice)
    expect(r.unplaced).toEqual([])
    expect(linesOf(r.items, 'groove', 'extension')).toEqual([])
    expect(linesOf(r.items, 'groove', 'leader').length).toBeGreaterThan(0)
  })
})

describe('a row of running sizes', () => {
  it('jogs by 45° at most up to its deepest jog, its lines as far apart as lines must be', () => {
    // Seven holes 3 mm apart under figures some 9 mm wide.
    const at = Array.from({ length: 7 }, (_, i) => 60 + 3 * i)
    const v = view('top', [...rect(0, 0, 150, 60), ...at.flatMap((x) => hole([x, 30], 1))], {
      min: [0, 0],
      max: [150, 60],
    })
    const dimensions = at.map((x) =>
      size('top', { kind: 'ordinate', datum: [0, 0], point: [x, 30], along: [1, 0] }, `${x}.000`, { id: `x${x}` }),
    )
    const r = placed([place(v, [120, 120])], dimensions, 'ASME')
    expect(r.unplaced).toEqual([])
    const slanted = at.flatMap((x) =>
      linesOf(r.items, `x${x}`, 'extension').filter(
        ({ a, b }) => Math.abs(a[0] - b[0]) > 0.05 && Math.abs(a[1] - b[1]) > 0.05,
      ),
    )
    expect(slanted.length).toBeGreaterThan(4)
    const widest = Math.max(...slanted.map(({ a, b }) => Math.abs(a[0] - b[0])))
    for (const { a, b } of slanted) expect(Math.abs(a[1] - b[1])).toBeGreaterThanOrEqual(Math.min(12, widest) - 1e-6)
    // Least space between parallel lines: 0.7 mm (ISO 128-2, from memory).
    for (let i = 1; i < slanted.length; i++)
      for (const end of [slanted[i]!.a, slanted[i]!.b]) expect(distance(end, slanted[i - 1]!)).toBeGreaterThan(0.7)
  })
})
