import { expect, it } from 'vitest'
import { readFrame } from '../../src/brief/frame/read-frame.ts'
import { readBrief } from '../../src/brief/read.ts'
import { withAcceptances } from '../../src/check/acceptances.ts'
import type { Sized } from '../../src/check/rule.ts'
import { rule as datumUnstable } from '../../src/check/rules/frames/datum-unstable.ts'
import { rule as boreWithoutChamfer } from '../../src/check/rules/making/bore-without-chamfer.ts'
import { rule as roughForTolerance } from '../../src/check/rules/tolerances/rough-for-tolerance.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { datumMarks } from '../../src/tolerance/frame/check-datums.ts'
import { allMarks, iso, sized } from '../sizes/sized.ts'

const kernel = await openKernel()

// What a teacher at the board would say of a slip. Wordings: common practice, no source, unless said.

it('leaves an unknown class of general tolerances to the mark where it stands, not to every size', () => {
  const text = (general: string) =>
    `units mm\npractice ISO, first angle\ngeneral ${general}\nblock 80 × 50 × 40\nhole top: ⌀10 THRU\n  20 from left; 25 from front\n`
  const bySize = (general: string) => allMarks(sized(text(general))).filter((m) => m.rule === 'no-tolerance-class')
  expect(bySize('ISO 2768-mk')).toEqual([])
  // a class that there is, without sizes: every size goes without
  expect(bySize('ISO 2768-K').length).toBeGreaterThan(4)
})

it('says that no such view is drawn, and else that the size is not seen true there', () => {
  const bracket = 'block 60 × 40 × 30\nstep top left: 20 from left, 10 from top\n'
  const said = (lines: string) =>
    iso(bracket + lines)
      .sizes.marks.filter((m) => m.rule === 'size-not-in-view')
      .map((m) => m.text)
  expect(said('place 30 in rear view\n')).toEqual(['No rear view is drawn, so 30 cannot stand there.'])
  expect(said('place 30 in top view\n')).toEqual([
    '30 cannot stand in the top view: what it measures is not seen true there.',
  ])
})

it('says that there is no rule “all”', () => {
  const brief = readBrief('units mm\npractice ISO\nblock 60 × 40 × 30\naccept all because I like it\n')
  const idle = withAcceptances(brief, brief.marks).filter((m) => m.rule === 'acceptance-idle')
  expect(idle.map((m) => [m.weight, m.text])).toEqual([
    ['look again', 'There is no rule all: nothing is accepted by this.'],
  ])
})

// 2 × 0.0001 mm = 0.2 µm.
it('says a tolerance of ±0.0001 mm in its own figures, not as 0 µm', () => {
  const brief = readBrief(
    'units mm\npractice ISO\ntexture Ra 6.3\nblock 60 × 40 × 30\nhole top: ⌀5.55 ±0.0001 THRU\n  centred both ways\n',
  )
  if (roughForTolerance.reads !== 'drawing') throw new Error('the rule reads the drawing')
  const [found] = roughForTolerance.check({ brief, part: buildPart(brief, kernel) } as Sized)
  expect(found!.text).toContain('is held to 0.2 µm')
})

// ASME Y14.5-2018 table 6: the material condition stands as a letter in a circle (from memory).
it('takes a bare M after the value for Ⓜ where no datum is called M', () => {
  const marks = (text: string, letters: string) => {
    const frame = readFrame(text)
    if (!frame.ok) throw new Error(frame.problem.text)
    const datums = [...letters].map((letter) => ({ letter, featureOfSize: true }))
    return datumMarks(frame.value, frame.value.rows[0]!, 0, { practice: 'ASME', datums } as unknown as Parameters<
      typeof datumMarks
    >[3])
  }
  const bare = marks('position dia .01 M A B C', 'ABC')
  expect(bare.map((m) => m.rule)).toEqual(['datum-unknown'])
  expect(bare[0]!.mends![0]!.text).toBe('Ⓜ')
  expect(marks('position dia .01 M A B', 'ABM')).toEqual([])
  expect(marks('position dia .01 A B C M', 'ABC').map((m) => m.rule)).toContain('too-many-datums')
})

// ISO 80000-1:2009, 7.3.2: one decimal sign on one sheet (from memory).
it('marks a decimal point in the texture and the edges of a sheet with commas', () => {
  const text = (ra: string) =>
    `units mm\npractice ISO\ndecimal comma\ntexture Ra ${ra}\nedges edges broken 0,2 to 0,5\nblock 60 × 40 × 30\n`
  const { marks } = readBrief(text('3.2'))
  expect(marks.map((m) => [m.rule, m.weight, m.expected])).toEqual([['decimal-comma', 'look again', '3,2']])
  expect(text('3.2').slice(marks[0]!.span!.from, marks[0]!.span!.to)).toBe('3.2')
  expect(readBrief(text('3,2')).marks).toEqual([])
})

it('offers the chamfer of a fit at edges that the part has, in the units of the brief', () => {
  const wanted = (lines: string) => {
    const brief = readBrief(`${lines}\n`)
    if (boreWithoutChamfer.reads !== 'brief') throw new Error('the rule reads the brief')
    return boreWithoutChamfer.check({ brief }).map((f) => f.expected)
  }
  const mm = 'units mm\npractice ISO\n'
  const two =
    'block 60 × 40 × 30\nhole A top: ⌀8 THRU\n  10 from left; 10 from front\nhole top: ⌀20 H7 THRU\n  centred both ways'
  expect(wanted(mm + two)).toEqual(['chamfer   hole 2 edges: 1 × 45°, or the edges statement'])
  const labelled = two.replace('⌀8 THRU', '⌀8 H7 THRU').replace('⌀20 H7', '⌀20')
  expect(wanted(mm + labelled)).toEqual(['chamfer   hole A edges: 1 × 45°, or the edges statement'])
  const pin = 'turned axis left-right\n  pin ⌀.500 h6, 2.00 long'
  expect(wanted(`units inch\npractice ASME\n${pin}`)).toEqual(['chamfer   ends: .03 × 45°, or the edges statement'])
})

// 30 from the right of 60 is 30 from the left, 20 from the rear of 40 is 20 from the front.
it('says that a hole in the place of another is stated twice, from whichever sides it is located', () => {
  const at = (places: string) =>
    iso(
      `block 60 × 40 × 30\nhole top: ⌀20 H7 THRU\n  30 from left; 20 from front\nhole top: ⌀20 H7 THRU\n  ${places}\n`,
    )
      .part.marks.filter((m) => m.rule === 'holes-overlap')
      .map((m) => [m.text, m.expected])
  expect(at('30 from right; 20 from rear')).toEqual([
    ['hole 2 stands in the place of hole 1: the hole is stated twice.', 'one statement, or another place'],
  ])
  expect(at('28 from right; 20 from rear')[0]![0]).toBe('hole 2 overlaps hole 1: their centres are 2 mm apart.')
})

it('offers THRU for a hole as deep as the part, and a smaller depth for one that is not', () => {
  const wanted = (depth: string) =>
    iso(`block 60 × 40 × 30\nhole top: ⌀8 ↧ ${depth}\n  30 from left; 20 from front\n`)
      .part.marks.filter((m) => m.rule === 'drill-point-through')
      .map((m) => m.expected)
  expect(wanted('30')).toEqual(['THRU: the depth is that of the part'])
  // the point of a ⌀8 drill at 118° is 4 / tan 59° = 2.40 long
  expect(wanted('28')).toEqual(['a smaller depth, or a flat bottom'])
  expect(wanted('27')).toEqual([])
})

// A boss ⌀90 × 6 with a chamfer of 1 bears over 6 − 1 = 5.
it('calls a datum by the word of the brief, and says that a chamfer is taken off its length', () => {
  const { part } = iso(`disc ⌀140 × 16, outer face front
spigot rear: ⌀90 f7 × 6 high
bore front: ⌀35 H7 THRU
chamfer boss end edge: 1 × 45°
datum B spigot
frame bore: ◎ ⌀0.05 B
`)
  if (datumUnstable.reads !== 'drawing') throw new Error('the rule reads the drawing')
  expect(datumUnstable.check({ brief: part.brief, part } as Sized).map((f) => f.text)).toEqual([
    'Datum B, spigot, bears over 5 mm of its length, chamfers and rounds not counted, on a diameter of 90 mm: it does not set how the part lies.',
  ])
})
