import { beforeAll, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const marksOf = (text: string) => {
  const part = buildPart(readBrief(text), kernel)
  kernel.free(part.solid)
  return part.marks.map((m) => ({ ...m, quoted: m.span && text.slice(m.span.from, m.span.to) }))
}
const inch = (lines: string) => `units inch\npractice ASME\nplate 4 × 3 × .5\n${lines}\n`

it('says by how much a pattern lies off its face, beyond which side, and how far the face reaches', () => {
  // two across 1.25 apart from 5.00: the farther at 6.25, on a plate 4 long
  const place = '2 across 1.25 apart, leftmost 5.00 from left; 2 up 1 apart, lowest .5 from front'
  const [mark, ...more] = marksOf(inch(`holes top: 4X ⌀.25 THRU\n  ${place}`))
  expect(more).toEqual([])
  expect(mark).toMatchObject({
    rule: 'pattern-off-face',
    quoted: place,
    text: 'All 4 of hole 1 lie off the top: up to 2.250 in beyond the right, by the centre.',
    expected: 'a place on it: the top is 4.000 in left-right and 3.000 in front-rear',
  })
})

it('says how far a hole comes out over an edge, and over the rim of a disc', () => {
  expect(marksOf(inch('hole top: ⌀.25 THRU\n  2 from left; 2.95 from front'))[0]!.text).toBe(
    'hole 1 breaks out of the edge of the top, .075 in beyond the rear.',
  )
  // 72 / 2 + 10 / 2 = 41 on a radius of 40
  const disc =
    "units mm\npractice ISO\ndisc ⌀80 × 10\nholes front face: 4X ⌀10 THRU on ⌀72 bolt circle, one at 12 o'clock\n"
  expect(marksOf(disc)[0]!.text).toBe('All 4 of hole 1 break out of the edge of the front face, 1 mm beyond its rim.')
})

it('offers the other word where a part has no such corners, and takes “left edge” for left', () => {
  const mm = (lines: string) => `units mm\npractice ISO\nplate 80 × 60 × 10\n${lines}\n`
  const [mark, ...more] = marksOf(mm('fillet corners: R5'))
  expect(more).toEqual([])
  expect(mark!.mends).toMatchObject([{ text: 'round' }])
  expect(marksOf(mm('round corners: R5'))).toEqual([])
  expect(marksOf(mm('hole top: ⌀6 THRU\n  20 from left edge; 15 from front side'))).toEqual([])
})

it.each([
  ['hole top: ⌀.5 ↧ .5', 'hole top: ⌀.5 THRU'],
  ['hole top: ⌀.5, .5 deep', 'hole top: ⌀.5, THRU'],
])('a hole as deep as the part has one mark, with THRU to write: %s', (said, wanted) => {
  const text = inch(`${said}\n  centred both ways`)
  const [mark, ...more] = marksOf(text)
  expect(more).toEqual([])
  const { span, text: write } = mark!.mends![0]!
  const after = text.slice(0, span.from) + write + text.slice(span.to)
  expect(after).toContain(wanted)
  expect(marksOf(after)).toEqual([])
})
