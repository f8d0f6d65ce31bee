import { describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { withoutPlaces } from '../../src/brief/without-places.ts'

// Spellings heard in workshops and found on older sheets: common practice, no source.
const mm = (lines: string) => `units mm\npractice ISO, first angle\n${lines}\n`
const plate = (lines: string) => mm(`plate 120 × 100 × 20\n${lines}`)
const read = (text: string) => {
  const brief = readBrief(text)
  return { brief: withoutPlaces(brief), marks: brief.marks.map((m) => m.text) }
}

describe('a plain spelling of the trade is read as the language’s own', () => {
  it.each([
    ['hole top: ⌀6 THRU, c/bore ⌀11 × 6 deep, centred both ways', 'hole top: ⌀6 THRU, ⌴ ⌀11 ↧ 6, centred both ways'],
    ['hole top: ⌀6 THRU, cbore 11 dia 6 deep, centred both ways', 'hole top: ⌀6 THRU, ⌴ ⌀11 ↧ 6, centred both ways'],
    ['hole top: ⌀6 THRU, csk 90° × ⌀12, centred both ways', 'hole top: ⌀6 THRU, ⌵ ⌀12 × 90°, centred both ways'],
    ['drill top: ⌀6 THRU, centred both ways', 'hole top: ⌀6 THRU, centred both ways'],
    ['hole top: bore dia 6 THRU, centred both ways', 'hole top: ⌀6 THRU, centred both ways'],
    ['hole top: 6 diam. THRU, centred both ways', 'hole top: ⌀6 THRU, centred both ways'],
    ['hole top: D6 THRU, centred both ways', 'hole top: ⌀6 THRU, centred both ways'],
    ['hole top: ⌀6 x 5 deep, centred both ways', 'hole top: ⌀6 ↧ 5, centred both ways'],
    ['hole top: ⌀6 THRU in the middle', 'hole top: ⌀6 THRU, centred both ways'],
    ['hole top: ⌀6 THRU, 20 from left, 15 from back', 'hole top: ⌀6 THRU, 20 from left, 15 from rear'],
    ['hole top: ⌀6 THRU, 20 from left, on centre line', 'hole top: ⌀6 THRU, 20 from left, centred'],
    ['hole top: M8x1.25 tapped thru, centred both ways', 'hole top: M8x1.25 THRU, centred both ways'],
    ['round corners: radius 5', 'round corners: R5'],
    ['radius corners: 5', 'round corners: R5'],
    ['chamfer top edges: 45° × 2', 'chamfer top edges: 2 × 45°'],
    [
      'hole top: 4 holes ⌀6 THRU, 2 across 40 c/c, centred; 2 up 30 crs, centred',
      'hole top: 4X ⌀6 THRU, 2 across 40 apart, centred; 2 up 30 apart, centred',
    ],
    [
      'hole top: 4 off ⌀6 THRU, 4 across pitch 15, centred; centred',
      'hole top: 4X ⌀6 THRU, 4 across 15 apart, centred; centred',
    ],
    [
      'hole top: 2X ⌀6 THRU, 2 horizontally 40 apart, centred; centred',
      'hole top: 2X ⌀6 THRU, 2 across 40 apart, centred; centred',
    ],
    [
      'slot top: 8 × 30 overall THRU, left-right, centred both ways',
      'slot top: 8 × 30 overall THRU, long way left-right, centred both ways',
    ],
  ])('%s', (trade, own) => {
    const wanted = read(plate(own))
    expect(wanted.marks).toEqual([])
    const { brief, marks } = read(plate(trade))
    expect(marks).toEqual([])
    expect(brief).toEqual(wanted.brief)
  })

  it.each([
    'PCD 80',
    'on a 80 PCD',
    'on ⌀80 P.C.D.',
    'on ⌀80 BCD',
    'on pitch circle ⌀80',
    '80 P.C.D. EQ SP',
    'equispaced on an ⌀80 pitch circle',
  ])('a bolt circle: %s', (trade) => {
    const at = ", one at 12 o'clock"
    const wanted = read(plate(`holes top: 6X ⌀6 THRU, on 80 bolt circle${at}`))
    expect(wanted.marks).toEqual([])
    expect(read(plate(`holes top: 6X ⌀6 THRU, ${trade}${at}`))).toEqual(wanted)
  })

  it.each(['plate 80 x 60 t=10', 'plate 80 x 60 x 10 thk'])('%s', (trade) => {
    expect(read(mm(trade)).brief).toEqual(read(mm('plate 80 × 60 × 10')).brief)
    expect(read(mm(trade)).marks).toEqual([])
  })
})

/** What is marked, and that the first mend of each answers it. */
const mended = (text: string) => {
  const [mark, ...more] = readBrief(text).marks
  expect(more.map((m) => m.text)).toEqual([])
  const [mend] = mark!.mends!
  const after = text.slice(0, mend!.span.from) + mend!.text + text.slice(mend!.span.to)
  return {
    quoted: text.slice(mark!.span!.from, mark!.span!.to),
    after,
    left: readBrief(after).marks.map((m) => m.rule),
  }
}

describe('what says too little is marked at its words alone, with text that answers', () => {
  it.each([
    ['hole top: 2X ⌀6 THRU TYP, 2 across 40 apart, centred; centred', 'TYP', []],
    ['round corners: R5 typ.', 'typ.', []],
    ['hole top: 4X ⌀6 THRU in a row 20 apart', 'in a row', []],
    ['hole top: 4X ⌀6 THRU in line, 20 apart, leftmost 15 from left, 30 from front', 'in line,', []],
    ['hole top: 4 ⌀6 THRU, 2 across 40 apart, centred; 2 up 30 apart, centred', '4', []],
    ['hole top: ⌀6 THRU, x 20, y 15', 'x 20, y 15', []],
    ['hole top: ⌀6 THRU, on the centre line', 'on the centre line', []],
    ['hole top: ⌀6 THRU, csk 90, centred both ways', '90', ['still-to-be-measured']],
    ['holes top: 6X ⌀6 THRU, PCD 80', 'PCD 80', []],
    ['slot top: 8 × 30 overall THRU, centred both ways', 'slot', []],
  ])('%s', (trade, quoted, left) => {
    expect(mended(plate(trade))).toMatchObject({ quoted, left })
  })
})

describe('another order of words', () => {
  it.each([
    ['top hole: ⌀10 THRU\n  centred both ways', 'hole      top: ⌀10 THRU\n  centred both ways'],
    [
      'left face slot: 8 × 20 overall ↧ 4, up-down\n  centred both ways',
      'slot      left: 8 × 20 overall ↧ 4, up-down\n  centred both ways',
    ],
    [
      '4 holes top: ⌀6 THRU\n  2 across 60 apart, centred; 2 up 20 apart, centred',
      'holes     top: 4X ⌀6 THRU\n  2 across 60 apart, centred; 2 up 20 apart, centred',
    ],
  ])('%s: one mark, whose mend leaves none', (typed, mended) => {
    const text = plate(typed)
    const marks = readBrief(text).marks
    expect(marks.map((m) => m.rule)).toEqual(['word-order'])
    const { span, text: put } = marks[0]!.mends![0]!
    const after = text.slice(0, span.from) + put + text.slice(span.to)
    expect(after).toBe(plate(mended))
    expect(readBrief(after).marks).toEqual([])
  })

  it.each(['two rows of 2; 60 apart, 20 apart', '2 rows of 2, 60 apart, 20 apart'])('%s: asks which way', (places) => {
    const text = plate(`holes top: 4X ⌀6 THRU\n  ${places}`)
    const marks = readBrief(text).marks
    expect(marks.map((m) => m.rule)).toEqual(['row-way-not-said'])
    const written = marks[0]!.mends!.map(({ span, text: put }) => text.slice(0, span.from) + put + text.slice(span.to))
    expect(written.map((w) => readBrief(w).marks)).toEqual([[], []])
    expect(written[0]).toContain('2 across 60 apart, centred; 2 up 20 apart, centred')
    expect(written[1]).toContain('2 up 60 apart, centred; 2 across 20 apart, centred')
  })
})
