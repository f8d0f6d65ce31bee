import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import type { Vec2 } from '../../src/geometry/vec.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { choicesFor } from '../../src/sheet/choices.ts'
import { letteringBox } from '../../src/sheet/lettering/lettering.ts'
import { possible } from '../../src/sheet/requested-format.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { blockViews, isoHeader, partWith } from './fixtures.ts'

// Common practice, no source: no size is left off while a larger sheet or another scale would hold it; a stated scale is
// kept; what stands on paper can be read.

const kernel = await openKernel()

function drawn(text: string) {
  const drawing = compile(text, kernel)
  kernel.free(drawing.part!.solid)
  return { sheet: drawing.sheet!, marks: drawing.marks }
}

const head = (units: 'inch' | 'mm') => `part      Trial
number    T-1 rev A
units     ${units}
practice  ${units === 'inch' ? 'ASME' : 'ISO, first angle'}
material  S355J2
${units === 'inch' ? 'general   .XX ±.01   .XXX ±.005   angles ±1°' : 'general   ISO 2768-mK'}
`

const stud = `${head('inch')}turned    axis left-right
          tap     5/8-11 UNC-2A, 1.25 long
          shoulder ⌀.875, .38 long
          body    ⌀.6250/.6240, 2.00 long
          nut     1/2-20 UNF-2A, 1.00 long
groove    tap: .12 wide, bottom ⌀.500
          right side at shoulder left face
groove    nut: .09 wide, bottom ⌀.410
          left side at body right face
chamfer   ends: 2X .06 × 45°
flat      shoulder, top: .8125 across
views     front; section A-A through flat; pictorial
`

const steps = (count: number) =>
  Array.from({ length: count }, (_, i) => `${(0.5 + 0.3125 * i).toFixed(3)}, ${(0.5 + 0.125 * i).toFixed(3)}`).join(
    '; ',
  )

const slot = (width: string, up: string) =>
  `slot      top: ${width} × 1.000 overall ↧ .125, long way left-right\n          6.000 from left; ${up} from front\n`

const crowded = `${head('inch')}sheet     A
scale     1:4
plate     8.00 × 5.00 × .75
holes A   top: 9X ⌀.1250 THRU
          at ${steps(9)}; from left and front
holes B   top: 2X 1/4-20 UNC-2B THRU
          at 3.500, 4.500; 7.500, 4.500; from left and front
${slot('.250', '2.000')}${slot('.312', '2.500')}${slot('.375', '3.100')}sizes     baseline
`

const strokesOf = (sheet: Sheet) =>
  sheet.items.flatMap((i) => (i.item === 'stroke' && i.curve.kind === 'line' ? [{ ...i, curve: i.curve }] : []))

/** Whether a piece of line enters a box. */
function enters([a, b]: readonly [Vec2, Vec2], { min, max }: { min: Vec2; max: Vec2 }): boolean {
  return Array.from({ length: 201 }, (_, i) => i / 200).some((t) => {
    const [x, y] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
    return x > min[0] && x < max[0] && y > min[1] && y < max[1]
  })
}

describe('room for every size', () => {
  it('is left by the letters of a cutting plane at a narrow step', () => {
    const { sheet, marks } = drawn(stud)
    expect(marks.filter((m) => m.rule === 'no-room-for-size')).toEqual([])
    const labels = sheet.items.flatMap((i) =>
      i.item === 'text' && i.role === 'label' ? [letteringBox(i.text, { ...i, fractions: 'inline' } as never)] : [],
    )
    expect(labels.length).toBeGreaterThanOrEqual(3)
    // Neither sizes nor centre lines strike the letters or the words under the section.
    for (const box of labels)
      for (const { kind, curve } of strokesOf(sheet))
        if (kind === 'extension' || kind === 'dimension' || kind === 'centre')
          expect(enters([curve.a, curve.b], box)).toBe(false)
  })

  it('is looked for on every larger sheet, and at every scale that fits, before one is left off', () => {
    const { formats, scales } = possible(isoHeader)
    const part = partWith(isoHeader)
    const desk = { part, views: blockViews(60, 40, 30), sizes: undefined, header: isoHeader, brief: part.brief }
    const { choices } = choicesFor({ ...desk, preliminary: false, unsound: false }, formats, scales)
    const tried = [...choices].map((c) => `${c.format.name} ${c.scaleText}`)
    expect(new Set(tried).size).toBe(tried.length)
    // 60 + 30 by 40 + 30 mm, with 10 mm about each view: at 5:1 450 + 40 by 350 + 40 mm stand over or beside the title
    // block of A1 and A0; A2 (594 × 420) holds them at 2:1, not at 5:1 over its title block.
    for (const want of [
      'A4 1:1',
      'A3 1:1',
      'A2 1:1',
      'A1 1:1',
      'A0 1:1',
      'A2 2:1',
      'A1 2:1',
      'A0 2:1',
      'A0 5:1',
      'A1 5:1',
    ])
      expect(tried).toContain(want)
    expect(tried).not.toContain('A4 5:1')
  })

  it('is made by a larger sheet, at the stated scale, where only the rows of sizes outgrow the stated one', () => {
    const { sheet, marks } = drawn(crowded)
    expect([sheet.format, sheet.scale]).toEqual(['B', '1:4'])
    const told = marks.filter((m) => m.rule === 'sheet-too-small')
    expect(told).toHaveLength(1)
    expect(told[0]!.text).toMatch(/^The views fit sheet A at 1:4, but the sizes do not: the rows of baseline sizes/)
    expect(told[0]!.text).toMatch(/Sheet B at 1:4 was taken\.$/)
    expect(marks.filter((m) => m.rule === 'no-room-for-size')).toEqual([])
  })

  it('is not taken by the thickness note: it stands under the lowest row, not between rows', () => {
    const { sheet } = drawn(`${head('mm')}plate 160 long × 100 wide × 12 thick, face front
holes A front: 4X ⌀9 THRU
  2 across 130 apart, centred; 2 up 70 apart, centred
hole B front: ⌀25 H7 THRU
  60 from left; 50 from bottom
hole C front: ⌀16 THRU
  110 from left; 65 from bottom
holes D front: 3X M6 THRU
  at 30, 20; 80, 15; 140, 50; from left and bottom
slot front: 10 × 30 overall THRU, long way left-right
  110 from left; 30 from bottom
round corners: 4X R8
`)
    const note = sheet.items.find((i) => i.item === 'text' && i.text.startsWith('t = 12'))!
    if (note.item !== 'text') throw new Error('no note')
    const levels = strokesOf(sheet).flatMap(({ kind, curve: { a, b } }) =>
      kind === 'dimension' && a[1] === b[1] && Math.min(a[0], b[0]) < note.at[0] && Math.max(a[0], b[0]) > note.at[0]
        ? [a[1]]
        : [],
    )
    expect(levels.length).toBeGreaterThan(2)
    expect(Math.min(...levels)).toBeGreaterThan(note.at[1] + note.height)
  })
})
