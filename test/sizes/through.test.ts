import { expect, it } from 'vitest'
import { allMarks, asme, iso } from './sized.ts'

const CHANNEL = 'channel 80 high × 45 wide × 6 thick, 200 long, axis left-right\n'
const TUBE = 'tube ⌀62 outside, ⌀45 inside, 40 long, axis left-right\n'

it('holes through both flanges are counted by their axes, and the note says that they go through both', () => {
  const s = iso(`${CHANNEL}holes flanges: 2X ⌀9 THRU\n  2 across 120 apart, centred; 25 from web\n`)
  expect(s.texts).toContain('2× ⌀9 through both flanges')
  const walls = s.part.features.find((f) => f.kind === 'hole')!.members.flatMap((m) => m.faces)
  expect(walls).toHaveLength(4)
})

it('a hole through one wall says into what', () => {
  const hole = (words: string) => `${TUBE}hole outside, from top: ⌀6 ${words}\n  20 from left face\n`
  for (const [s, text] of [
    [iso(hole('THRU to bore')), '⌀6 through to bore'],
    [iso(hole('THRU one wall')), '⌀6 through one wall'],
  ] as const) {
    expect(s.texts.some((t) => t.startsWith(text))).toBe(true)
    expect(s.sizes.proof.complete).toBe(true)
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  }
  const inch = asme(
    'tube ⌀2.00 outside, ⌀1.50 inside, 3.00 long, axis left-right\nhole outside, top: 1/4-20 UNC-2B to bore\n  1.00 from left face\n',
  )
  expect(inch.texts.some((t) => t.startsWith('1/4-20 UNC-2B THRU TO BORE'))).toBe(true)
})

// the brief's own names of holes stand nowhere on the sheet: what a hole ends in is told by its size
it.each([
  ['hole rim, from bottom: M8 THRU to hole 1', 'M8 through to ⌀25'],
  ['hole rim, from bottom: ⌀6 THRU to hole 1', '⌀6 through to ⌀25'],
])('%s', (line, text) => {
  const s = iso(
    `disc ⌀80 × 22, outer face front\nhole outer face: ⌀25 H7 THRU\n  centred left-right; up 10 from axis\n${line}\n  11 from front face\n`,
  )
  expect(s.texts.filter((t) => t.startsWith(text))).toHaveLength(1)
  expect(s.texts.join()).not.toContain('hole')
})
