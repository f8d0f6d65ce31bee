import { describe, expect, it } from 'vitest'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import type { PlacedView, SheetItem } from '../../../src/sheet/sheet.ts'
import type { Dimension } from '../../../src/sizes/dimension.ts'
import type { View } from '../../../src/views/view.ts'
import { across, circle, hole, note, place, rect, seg, sheetOf, size, sizeSet, upward, view } from './fixtures.ts'

// Worked by hand from the rules named; numbers are the project's own.

type Stroke = Extract<SheetItem, { item: 'stroke' }>
type Text = Extract<SheetItem, { item: 'text' }>

function placed(
  views: readonly { view: View; placed: PlacedView }[],
  dimensions: Dimension[],
  practice: 'ASME' | 'ISO' = 'ASME',
) {
  const bounds = { min: [10, 10], max: [410, 287] } as const
  const result = placeDimensions({ views, sizes: sizeSet(dimensions), practice, obstacles: [], bounds })
  expect(result.unplaced).toEqual([])
  const sheet = sheetOf(views, result.items, 420, 297)
  const { findings } = auditSizes(sheet, practice)
  expect(findings.filter((f) => f.what !== 'extensionCrossings')).toEqual([])
  const ends = (kind: Stroke['kind'], id?: string) =>
    result.items
      .filter(
        (i): i is Stroke => i.item === 'stroke' && i.kind === kind && (id === undefined || i.tie?.dimension === id),
      )
      .map(({ curve }) => {
        if (curve.kind !== 'line') throw new Error('expected straight lines')
        const round = (p: Vec2): Vec2 => [Math.round(p[0] * 1000) / 1000, Math.round(p[1] * 1000) / 1000]
        return [round(curve.a), round(curve.b)] as const
      })
  const text = (t: string) => result.items.find((i): i is Text => i.item === 'text' && i.text === t)!
  return { ...result, ends, text }
}

/** Plate 100 × 50 with two holes, lower left corner at (100, 100) on paper, full size. */
function plate() {
  const lines = [...rect(0, 0, 100, 50), ...hole([30, 25], 4), ...hole([60, 25], 4)]
  return [place(view('front', lines, { min: [0, 0], max: [100, 50] }), [100, 100])]
}

describe('baseline and chain (ASME Y14.5-2018 §2.6: accumulation of tolerances; §4.5, Fig. 4-6: spacing)', () => {
  // The rule: from one baseline each size carries its own tolerance only, so each has its own row, short inside long;
  // in a chain tolerances add up along one line.
  it('stacks baseline sizes 10 mm, then row by row outwards, short inside long', () => {
    const group = { id: 'x', scheme: 'baseline' } as const
    const r = placed(plate(), [
      across('front', [0, 0], [100, 0], '100', { id: 'l100', group }),
      across('front', [0, 0], [60, 25], '60', { id: 'l60', group }),
      across('front', [0, 0], [30, 25], '30', { id: 'l30', group }),
    ])
    // Outline top at 150; rows at 160, then every 8 mm (two text heights and 2 mm, never under 6).
    // Broken line: text 30 stands at the middle 115, lines end 1.5 mm either side of it.
    expect(r.text('30')).toMatchObject({ at: [115, 158.5], height: 3, anchor: 'middle', angle: 0 })
    expect(r.text('60')).toMatchObject({ at: [130, 166.5] })
    expect(r.text('100')).toMatchObject({ at: [150, 174.5] })
    const [left, right] = r.ends('dimension', 'l30')
    expect(left![0]).toEqual([100, 160])
    expect(right![1]).toEqual([130, 160])
    expect(left![1][0] - 100).toBeCloseTo(130 - right![0][0], 2)
    // One extension line at the common baseline: gap 1.5 from the outline, 3 past the furthest row.
    const base = r.ends('extension').filter(([a, b]) => a[0] === 100 && b[0] === 100)
    expect(base).toEqual([
      [
        [100, 151.5],
        [100, 179],
      ],
    ])
    // The holes' extension lines go on from the centre lines, which end at 125 + 4 + 3.
    expect(r.ends('extension', 'l30')).toEqual([
      [
        [130, 132],
        [130, 163],
      ],
    ])
    expect(r.ends('extension', 'l60')).toEqual([
      [
        [160, 132],
        [160, 171],
      ],
    ])
    expect(r.crossings).toBe(0)
  })

  it('keeps a chain in one line with one head each side of a common extension line', () => {
    const group = { id: 'x', scheme: 'chain' } as const
    const wish = { side: 'top' } as const
    const r = placed(plate(), [
      across('front', [0, 0], [30, 25], '30', { id: 'a', group, wish }),
      across('front', [30, 25], [60, 25], '30 ', { id: 'b', group }),
      across('front', [60, 25], [100, 0], '40', { id: 'c', group }),
      across('front', [0, 0], [100, 0], '(100)', { id: 'all', reference: true, wish }),
    ])
    const levels = ['a', 'b', 'c'].flatMap((id) => r.ends('dimension', id).flatMap(([p, q]) => [p[1], q[1]]))
    expect(new Set(levels)).toEqual(new Set([160]))
    expect(r.ends('dimension', 'all')[0]![0]).toEqual([100, 168])
    // Text in the middle of each: 115, 145, 180.
    expect(r.text('30').at[0]).toBeCloseTo(115, 6)
    expect(r.text('40').at[0]).toBeCloseTo(180, 6)
    const tips = r.items.filter((i) => i.item === 'fill' && i.kind === 'arrowhead').length
    expect(tips).toBe(8)
    expect(r.crossings).toBe(0)
  })

  it('puts ISO text above the unbroken line, read from the bottom or the right (ISO 129-1:2018 §5.7)', () => {
    const r = placed(
      plate(),
      [across('front', [0, 0], [100, 0], '100', { id: 'w' }), upward('front', [100, 0], [100, 50], '50', { id: 'h' })],
      'ISO',
    )
    // Row at 160; text 3.5 high, 1 mm above its line.
    expect(r.ends('dimension', 'w')).toEqual([
      [
        [100, 160],
        [200, 160],
      ],
    ])
    expect(r.text('100')).toMatchObject({ at: [150, 161], height: 3.5, angle: 0 })
    // Upright line at 210: text turned 90°, on its left.
    expect(r.ends('dimension', 'h')).toEqual([
      [
        [210, 100],
        [210, 150],
      ],
    ])
    expect(r.text('50')).toMatchObject({ angle: 90 })
    expect(r.text('50').at[0]).toBeCloseTo(209, 6)
    expect(r.text('50').at[1]).toBeCloseTo(125, 6)
  })
})

describe('a slot by overall length and width, ends 2X R (ASME Y14.5-2018 §4.16, slotted holes)', () => {
  it('stands where hand calculation puts it', () => {
    // Block 80 × 40 at (100, 100); slot 30 overall × 10 in its middle: straight sides 130–150, ends R5 about (130, 120), (150, 120).
    const lines = [
      ...rect(0, 0, 80, 40),
      seg([30, 15], [50, 15]),
      seg([30, 25], [50, 25]),
      {
        curve: { kind: 'arc', c: [50, 20], r: 5, from: -Math.PI / 2, sweep: Math.PI },
        kind: 'visible',
        sources: [],
      } as const,
      {
        curve: { kind: 'arc', c: [30, 20], r: 5, from: Math.PI / 2, sweep: Math.PI },
        kind: 'visible',
        sources: [],
      } as const,
      seg([25, 20], [55, 20], 'centre', 3),
      seg([40, 15], [40, 25], 'centre', 3),
    ]
    const r = placed(
      [place(view('front', lines, { min: [0, 0], max: [80, 40] }), [100, 100])],
      [
        across('front', [25, 20], [55, 20], '30', { id: 'length' }),
        upward('front', [50, 15], [50, 25], '10', { id: 'width' }),
        size('front', { kind: 'radius', centre: [50, 20], radius: 5, from: -Math.PI / 2, sweep: Math.PI }, '2X R', {
          id: 'ends',
        }),
      ],
    )
    // The radius has the upper right, where its head would stand beside the length's extension line: so that goes below.
    // Outline bottom at 100, row at 90, text in the middle at 140.
    expect(r.text('30').at).toEqual([140, 88.5])
    // The end's extreme point is (125, 120); the line starts clear of the round: √(2·5·0.6) = 2.449, then the gap of 1.5.
    const starts = r.ends('extension', 'length').map(([a]) => a)
    expect(starts).toEqual([
      [125, 116.051],
      [155, 116.051],
    ])
    // 10 mm cannot hold text (3 + 2 × 1.5) and two heads (2 × 4): heads outside at the left, away from the radius, text between at half height.
    expect(r.text('10').at).toEqual([90, 118.5])
    const tails = r.ends('dimension', 'width')
    expect(tails).toEqual([
      [
        [90, 109.5],
        [90, 115],
      ],
      [
        [90, 125],
        [90, 130.5],
      ],
    ])
    expect(r.text('2X R')).toBeDefined()
  })
})

describe('a bolt circle hole with a note (ASME Y14.5-2018 §4.5.3: leaders to circles are radial)', () => {
  it('aims at the centre of the hole, ends on its circle, and turns into a level shoulder', () => {
    // Disc ⌀100 about (200, 150); hole ⌀8 on ⌀70 at 60°: centre (217.5, 180.311).
    const c: Vec2 = [35 * Math.cos(Math.PI / 3), 35 * Math.sin(Math.PI / 3)]
    const holes = Array.from(
      { length: 6 },
      (_, i): Vec2 => [35 * Math.cos((i * Math.PI) / 3), 35 * Math.sin((i * Math.PI) / 3)],
    )
    const lines = [circle([0, 0], 50), circle([0, 0], 35, 'centre'), ...holes.map((h) => circle(h, 4))]
    const r = placed(
      [place(view('front', lines, { min: [-50, -50], max: [50, 50] }), [200, 150])],
      [note('front', [c], 4, '6X R4 HOLES', { id: 'note' })],
    )
    const [leader, shoulder] = r.ends('leader', 'note')
    const [tip, elbow] = leader!
    // 13 mm from the tip the elbow would stand 0.4 mm (30°), 1.6 mm (45°) or 1.99 mm (60°) off the disc's edge, too near for
    // the eye; 19 mm serve at each, and of the customary angles 45° is the first.
    // Tip: centre + 4·(cos 45°, sin 45°); elbow: centre + 23·(cos 45°, sin 45°).
    expect(tip).toEqual([220.328, 183.139])
    expect(elbow).toEqual([233.763, 196.574])
    const centre: Vec2 = [200 + c[0], 150 + c[1]]
    const off = (tip[0] - centre[0]) * (elbow[1] - tip[1]) - (tip[1] - centre[1]) * (elbow[0] - tip[0])
    expect(Math.abs(off)).toBeLessThan(0.02)
    // Shoulder level, 5 mm; the note begins 1 mm after it, its mid-height on the shoulder.
    expect(shoulder).toEqual([
      [233.763, 196.574],
      [238.763, 196.574],
    ])
    const text = r.text('6X R4 HOLES')
    expect(text.at[0]).toBeCloseTo(239.763, 2)
    expect(text.at[1]).toBeCloseTo(196.574 - 1.5, 2)
    expect(text.anchor).toBe('start')
  })
})
