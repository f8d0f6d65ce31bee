import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { compile } from '../../../src/app/compile.ts'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { openKernel } from '../../../src/kernel/open.ts'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import type { SheetItem } from '../../../src/sheet/sheet.ts'
import type { View } from '../../../src/views/view.ts'
import { across, field, hole, place, rect, seg, size, sizeSet, upward, view } from './fixtures.ts'

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

const kernel = await openKernel()

/** Leaders of a compiled sheet with the sizes they belong to, and the visible straight lines of its views. */
function linesOn(text: string) {
  const { sheet, sizes, part } = compile(text, kernel)
  kernel.free(part!.solid)
  const straight = sheet!.items.flatMap((i) =>
    i.item === 'stroke' && i.curve.kind === 'line' && i.tie?.view !== 'pictorial' ? [{ ...i, curve: i.curve }] : [],
  )
  const slanted = ({ a, b }: { a: Vec2; b: Vec2 }) => Math.abs(a[1] - b[1]) > 1e-6
  return {
    leaders: straight.filter((i) => i.kind === 'leader' && slanted(i.curve)),
    visible: straight.filter((i) => i.kind === 'visible').map((i) => i.curve),
    dimensions: sizes!.dimensions,
  }
}

const at = ({ a, b }: { a: Vec2; b: Vec2 }, p: Vec2) =>
  ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / Math.hypot(b[0] - a[0], b[1] - a[1])

describe('leaders', () => {
  it('keep off the corners of the part, where they would seem to point', () => {
    const { leaders, visible } = linesOn(drillPlate)
    expect(leaders.length).toBeGreaterThan(2)
    const corners = visible.flatMap(({ a, b }) => [a, b])
    for (const { curve } of leaders) {
      const length = Math.hypot(curve.b[0] - curve.a[0], curve.b[1] - curve.a[1])
      const passed = corners.filter((p) => at(curve, p) > 2 && at(curve, p) < length)
      for (const p of passed) expect(distance(p, curve)).toBeGreaterThan(1)
    }
  })

  it('to the end of an open slot do not come in over its other side', () => {
    const { leaders, visible, dimensions } = linesOn(readFileSync('examples/base-plate.brief', 'utf8'))
    const end = dimensions.find((d) => d.callout.lines.flat().join('') === 'R')!
    const own = leaders.filter((i) => i.tie?.dimension === end.id).map((i) => i.curve)
    expect(own).toHaveLength(1)
    // It is short (ASME Y14.5-2018 §4.4.6, ISO 128-2, from memory), and crosses no edge but the outline.
    const { a, b } = own[0]!
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(20)
    expect(visible.filter((v) => crossed(own[0]!, v)).length).toBeLessThanOrEqual(1)
  })
})

describe('sizes of a crowded plate', () => {
  it('stand outside the outline, and cross no dimension line', () => {
    const { sheet, part } = compile(crowdedPlate, kernel)
    kernel.free(part!.solid)
    const { min, max } = sheet!.views.find((v) => v.id === 'front')!.box
    const within = sheet!.items.filter((i) => {
      if (i.item !== 'stroke' || i.kind !== 'dimension' || i.curve.kind !== 'line') return false
      const [x, y] = [(i.curve.a[0] + i.curve.b[0]) / 2, (i.curve.a[1] + i.curve.b[1]) / 2]
      return i.tie?.view === 'front' && x > min[0] && x < max[0] && y > min[1] && y < max[1]
    })
    expect(within).toEqual([])
    expect(auditSizes(sheet!, 'ISO').dimensionLineCrossings).toBe(0)
  })
})

function crossed(p: { a: Vec2; b: Vec2 }, q: { a: Vec2; b: Vec2 }): boolean {
  const side = ({ a, b }: { a: Vec2; b: Vec2 }, c: Vec2) =>
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  return side(p, q.a) * side(p, q.b) < 0 && side(q, p.a) * side(q, p.b) < 0
}

const drillPlate = `part      Drill plate
units     inch
practice  ASME
material  tool steel ASTM A681 O1
general   .XX ±.01   .XXX ±.002   angles ±1/2°
plate     9.00 × 6.00 × .75
holes A   top: 7X ⌀.5000 +.0005 -.0000 THRU
          at .750, .750; 2.125, 1.500; 3.000, 4.875; 4.438, .875; 5.250, 3.000; 7.125, 2.250; 8.000, 5.250; from left and front
holes B   top: 3X 3/8-16 UNC-2B THRU
          at 1.250, 4.000; 6.250, 5.000; 8.125, .750; from left and front
slot      top: .750 × 2.00 overall ↧ .312, long way left-right
          3.25 from left; 2.50 from front
step      top right: .50 from right, .25 from top
sizes     ordinate
`

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

const crowdedPlate = `part      Crowded plate
units     mm
practice  ISO, first angle
general   ISO 2768-mK
plate     160 long × 100 wide × 12 thick, face front
holes A   front: 4X ⌀9 THRU
          2 across 130 apart, centred; 2 up 70 apart, centred
hole B    front: ⌀25 H7 THRU
          60 from left; 50 from bottom
hole C    front: ⌀16 THRU
          110 from left; 65 from bottom
holes D   front: 3X M6 THRU
          at 30, 20; 80, 15; 140, 50; from left and bottom
slot      front: 10 × 30 overall THRU, long way left-right
          110 from left; 30 from bottom
round     corners: 4X R8
`
