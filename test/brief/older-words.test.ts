import { expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'

// Callouts as older sheets and beginners write them. What each means: common practice, no source, unless said.
const inch = (lines: string) =>
  readBrief(`units inch\npractice ASME\nplate 6 × 4 × .5\n${lines}\n  1 from left; 2 from front\n`)
const first = (lines: string) => inch(lines).features[0] as unknown as Record<string, unknown>

it.each(['.25 DP', '.25 deep', '.25 DEEP', 'depth .25', 'DP .25', '.25 DEPTH'])('reads %s as ↧ .25', (depth) => {
  const said = `hole top: ⌀.5 ${depth}`
  expect(inch(said).marks).toEqual([])
  expect(first(said).depth).toMatchObject({ kind: 'blind', size: { text: '.25' } })
})

it('reads C’BORE with a depth after DP, and passes the word DRILL after a diameter', () => {
  const said = "hole top: ⌀.25 DRILL THRU, C'BORE .5 × .25 DP"
  expect(inch(said).marks).toEqual([])
  expect(first(said)).toMatchObject({
    depth: { kind: 'through' },
    counterbore: { diameter: { text: '.5' }, depth: { text: '.25' } },
  })
})

it('passes TAP after a thread, and quotes no blanks', () => {
  expect(inch('hole top: 1/4-20 UNC-2B TAP THRU').marks).toEqual([])
  const bare = inch('hole top: 1/4-20 TAP').marks.map((m) => m.text)
  expect(bare).toEqual(['through, or how deep?'])
})

it('asks how deep where the figure before deep is the diameter', () => {
  const { marks } = inch('hole top: ⌀.5 deep')
  expect(marks.map((m) => m.text)).toEqual(['how deep?'])
})

const mended = (text: string) => {
  const { marks } = readBrief(text)
  expect(marks).toHaveLength(1)
  const mend = marks[0]!.mends![0]!
  return text.slice(0, mend.span.from) + mend.text + text.slice(mend.span.to)
}

it('reads 4-⌀ as 4X and asks for the X (ASME Y14.5-2018: X after the number of places; from memory)', () => {
  const text =
    'units inch\npractice ASME\nplate 6 × 4 × .5\nholes top: 4-⌀.25 THRU\n  2 across 4 apart, centred; 2 up 2 apart, centred\n'
  const brief = readBrief(text)
  expect(brief.marks.map((m) => m.expected)).toEqual(['4X'])
  expect(brief.features[0]).toMatchObject({ count: { value: 4 }, diameter: { text: '.25' } })
  const after = mended(text)
  expect(after).toContain('4X ⌀.25 THRU')
  expect(readBrief(after).marks).toEqual([])
})

it.each([
  ['R.50 THRU', '⌀1.00 THRU'],
  ['R5 THRU', '⌀10 THRU'],
  ['R0.125 THRU', '⌀0.250 THRU'],
])('gives a hole by its diameter: %s becomes %s', (said, better) => {
  const text = `units inch\npractice ASME\nplate 60 × 40 × .5\nhole top: ${said}\n  centred both ways\n`
  const after = mended(text)
  expect(after).toContain(better)
  expect(readBrief(after).marks).toEqual([])
})

it('says that an R is a round, and that C1 is 1 × 45°', () => {
  const text = 'units mm\npractice ISO\nblock 60 × 40 × 20\nchamfer   top edges: R5\n'
  expect(readBrief(text).marks.map((m) => m.text)).toEqual(['an R is the size of a round, not of a chamfer'])
  const round = mended(text)
  expect(readBrief(round).features[0]).toMatchObject({ kind: 'round', size: { text: '5' } })
  const c = mended(text.replace('R5', 'C1'))
  expect(readBrief(c).features[0]).toMatchObject({ kind: 'chamfer', size: { text: '1' }, angle: { value: 45 } })
})

it('marks a second length of a step once, and the steps stand', () => {
  const brief = readBrief(
    'units inch\npractice ASME\nturned axis left-right\n  head ⌀1.00, .50 long, to .50\n  body ⌀.500, 2.00 long\n',
  )
  expect(brief.marks.map((m) => m.text)).toEqual(['the length of head is stated twice'])
  expect(brief.stock).toMatchObject({ steps: [{ length: { kind: 'long' } }, { name: { text: 'body' } }] })
})
