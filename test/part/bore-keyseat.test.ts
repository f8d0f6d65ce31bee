import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { lazySubject, onHeader } from '../check/subject.ts'
import { faults, named, openBench } from './workbench.ts'

const bench = openBench()

const { PI } = Math
const HUB = `turned axis left-right
  hub ⌀60, 30 long
  rim ⌀120, 20 long
bore left: ⌀30 H7 THRU
`
const hub = PI * 900 * 30 + PI * 3600 * 20 - PI * 225 * 50
/** Area that a keyseat w wide takes above a bore of radius r, its bottom h from the axis. */
const area = (w: number, r: number, h: number) =>
  w * h - ((w / 2) * Math.sqrt(r * r - (w / 2) ** 2) + r * r * Math.asin(w / 2 / r))

describe('a keyseat in a bore', () => {
  // bore 30: 8 wide, 3.3 deep, so 33.3 over the bore (DIN 6885-1, from memory)
  it.each(['8 wide × 3.3 deep', '8 wide × 33.3 over bore'])('%s: runs through, from the crown of the bore', (size) => {
    const part = bench.part(`${HUB}keyseat bore, top: ${size}`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(hub - area(8, 15, 18.3) * 50, 4)
    expect(
      named(part, 'keyseat 1')
        .map((f) => f.name)
        .sort(),
    ).toEqual(['keyseat 1 floor', 'keyseat 1 wall', 'keyseat 1 wall'])
    const over = part.chosen.find((c) => c.kind === 'distance' && c.group === 'keyseat 1')
    expect(over).toMatchObject({ size: { text: '33.3', mm: expect.closeTo(33.3, 9) }, from: 'bore bottom' })
  })

  it('of a length from a face', () => {
    const part = bench.part(`${HUB}keyseat bore, front: 8 wide × 3.3 deep × 20 long; left end at left face`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(hub - area(8, 15, 18.3) * 20, 4)
  })

  it('in a blind bore as far as it goes', () => {
    const part = bench.part(`bar ⌀60, 50 long, axis left-right
bore left: ⌀30 ↧ 30, flat bottom
keyseat bore, top: 8 wide × 3.3 deep`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(PI * 900 * 50 - PI * 225 * 30 - area(8, 15, 18.3) * 30, 4)
  })

  it.each([
    ['no depth left', 'keyseat bore, top: 8 wide × 28 over bore', 'keyseat-too-small'],
    ['wider than the bore', 'keyseat bore, top: 31 wide × 3.3 deep', 'keyseat-too-large'],
    ['out of the hub', 'keyseat bore, top: 8 wide × 15 deep', 'keyseat-off-part'],
    ['at an end of the part', 'keyseat bore, left: 8 wide × 3.3 deep', 'wrong-side'],
    ['two depths', 'keyseat bore, top: 8 wide × 3.3 deep, 33.3 over bore', 'stated-twice'],
    ['over a shaft', 'keyseat hub, top: 8 wide × 33.3 over × 10 long; left end 5 from left face', 'contradiction'],
  ])('%s is marked', (_, text, rule) => {
    expect(faults(bench.part(HUB + text))).toEqual([rule])
  })

  // bore 20: 6 wide, 2.8 deep (DIN 6885-1, from memory)
  const BLOCK = 'block 80 × 40 × 60\nbore A front: ⌀20 H7 THRU\n  30 from left; 25 from bottom\n'
  const block = 40 * (80 * 60 - PI * 100)
  it.each([
    ['keyseat bore A, top: 6 wide × 2.8 deep', 40],
    ['keyseat bore, right: 6 wide × 22.8 over bore', 40],
    ['keyseat hole A, left: 6 wide × 2.8 deep × 15 long; front end at front', 15],
  ])('in a hole of a part that is not turned: %s', (text, long) => {
    const part = bench.part(BLOCK + text)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(block - area(6, 10, 12.8) * long, 4)
    const subject = lazySubject(onHeader('iso', BLOCK + text), bench.kernel)
    expect(subject.sizes.proof.sentence).toMatch(/^complete/)
    expect(subject.sizes.dimensions.map((d) => plainText(d.callout))).toEqual(expect.arrayContaining(['22.8', '6']))
    subject.free()
  })

  it.each([
    ['out of the block', 'keyseat bore A, left: 6 wide × 21 deep', 'keyseat-off-part'],
    ['along the bore', 'keyseat bore A, front: 6 wide × 2.8 deep', 'wrong-side'],
    ['in no bore', 'keyseat hole B, top: 6 wide × 2.8 deep', 'unknown-name'],
  ])('%s is marked on a block too', (_, text, rule) => {
    expect(faults(bench.part(BLOCK + text))).toEqual([rule])
  })

  it('prints and reads back as the same', () => {
    for (const text of [
      'keyseat bore, top: 8 wide × 33.3 over bore',
      'keyseat bore, front: 8 JS9 wide × 3.3 +0.2 0 deep',
    ]) {
      const brief = readBrief(`units mm\npractice ISO\n${HUB}${text}\n`)
      expect(brief.features).toHaveLength(2)
      const again = readBrief(printBrief(brief))
      expect(again.marks.filter((m) => m.weight === 'must change')).toEqual([])
      expect(printBrief(again)).toBe(printBrief(brief))
    }
  })
})
