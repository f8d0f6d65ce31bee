import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, asme, iso, type Sized } from './sized.ts'

const must = (s: Sized) => allMarks(s).filter((m) => m.weight === 'must change')
const second = (s: Sized, dimensions = s.sizes.dimensions) => rankOf(s.part.body, makingOf(s.part), dimensions)

/*
 * Fully rounded ends: the radius is indicated and not dimensioned, because it follows from the width (ASME Y14.5-2018
 * rounded ends, ISO 129-1; from memory).
 */
describe('corners rounded to half the width', () => {
  it('of a head by two statements are one R without a value', () => {
    const s = asme(`block 2.50 × 1.50 × 3.00
round top left edge: R1.25
round top right edge: R1.25
bore front: ⌀1.000 THRU
  1.75 from bottom; centred left-right
`)
    expect(s.texts).toEqual(['2.50', '1.50', '3.00', 'R', '1.75', '⌀1.000 THRU, CENTERED'])
    expect(must(s)).toEqual([])
    expect(allMarks(s).filter((m) => m.rule === 'size-reaches-nothing')).toEqual([])
    expect(s.sizes.proof.sentence).toMatch(/^complete/)
    expect(second(s)).toMatchObject({ missing: 0, repeated: 0 })
    const bare = s.sizes.dimensions.filter((d) => d !== s.find('R'))
    expect(prove(s.part, bare).missing.length).toBeGreaterThan(0)
    expect(second(s, bare).missing).toBeGreaterThan(0)
  })

  it('keep their number where only some of them make a round end', () => {
    const s = iso(`block 60 × 40 × 18
step front right: 30 from right, 20 from front
round front left corner and rear left corner and rear right corner and right front corner: 4X R10
`)
    // the right end is 20 wide, the left one 40
    expect(s.texts).toEqual(['60', '40', '18', '30', '20', '2× R10', 'R'])
    expect(must(s)).toEqual([])
    expect(s.sizes.proof.sentence).toMatch(/^complete/)
    expect(second(s)).toMatchObject({ missing: 0, repeated: 0 })
  })

  it('keep a number that has a tolerance of its own, which the width then repeats', () => {
    const s = asme('block 4.00 × 1.50 × 1.00\nround front left corner and rear left corner: 2X R.75 ±.02\n')
    expect(s.texts).toContain('R.75 ±.02')
    expect(s.sizes.proof.repeated.map((r) => r.text).join()).toMatch(/^R\.75 ±\.02 is already fixed by 1\.50/)
  })
})

/*
 * A link is given by the distance of its holes and the R of its ends; its overall length is a reference size (ASME
 * Y14.5-2018 4.1, ISO 129-1: no size twice; that it is the overall one that gives way: common practice, no source).
 */
describe('a link with holes about the centres of its ends', () => {
  const hole = 'holes top: 2X ⌀12 THRU\n  80 apart, centred; centred up\n'

  it('of a plate has its length in brackets', () => {
    const s = iso(`block 110 × 30 × 20\nround corners: 4X R15\n${hole}`)
    expect(s.texts).toEqual(['(110)', '30', '20', '2× R', '80', '2× ⌀12, centred'])
    expect(s.find('(110)').reference).toBe(true)
    expect(must(s)).toEqual([])
    expect(s.sizes.proof.sentence).toMatch(/^complete/)
    expect(second(s)).toMatchObject({ missing: 0, repeated: 0 })
    // the overall size as a size of its own is one too many
    const stated = s.sizes.dimensions.map((d) => (d.reference ? { ...d, reference: false } : d))
    expect(prove(s.part, stated).repeated).toHaveLength(1)
    expect(second(s, stated)).toMatchObject({ missing: 0, repeated: 1 })
  })

  it('of an outline has the distance of the centres once, and R with its value', () => {
    const s = iso(`outline 20 thick, face top
  right 80; arc R 15 to 80 across, 30 up, turning left; left 80; arc R 15 to 0 across, 0 up, turning left; close
${hole}`)
    expect([...s.texts].sort()).toEqual(['2× R15', '2× ⌀12, centred', '80'].sort())
    expect(must(s)).toEqual([])
    expect(s.sizes.proof.sentence).toMatch(/^complete/)
    // the second opinion does not hear the note that gives the thickness
    expect([s.views.thicknessNote, second(s)]).toMatchObject(['t = 20', { missing: 1, repeated: 0 }])
  })

  it('placed from one end, has no size for what is the R of that end', () => {
    const s = asme(`block 4.25 × 1.25 × .75
round corners: 4X R.625
hole A top: ⌀.500 THRU
  .625 from left; centred up
hole top: ⌀.500 THRU
  across 3.000 from hole A; centred up
`)
    expect(s.texts).toContain('(4.25)')
    expect(s.texts).toContain('3.000')
    expect(s.texts).not.toContain('.625')
    expect(must(s)).toEqual([])
    expect(second(s)).toMatchObject({ missing: 0, repeated: 0 })
  })

  it('keeps an overall size with a tolerance of its own, and places the holes by words', () => {
    const s = iso(`block 110 ±0.1 × 30 × 20\nround corners: 4X R15\n${hole}`)
    expect(s.texts).toContain('110 ±0.1')
    expect(s.texts).toContain('80, centred')
    expect(second(s)).toMatchObject({ missing: 0, repeated: 0 })
  })

  it('keeps both lengths where the holes stand off the centres', () => {
    const s = iso(`block 110 × 30 × 20\nround corners: 4X R15\n${hole.replace('80', '82')}`)
    expect(s.texts).toContain('110')
    expect(s.texts).toContain('82, centred')
    expect(s.sizes.proof.sentence).toMatch(/^complete/)
  })
})
