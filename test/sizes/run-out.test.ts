import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, iso, type Sized } from './sized.ts'

/*
 * A slot that runs out into a hole has no end there: a length that ends on nothing cannot be measured (ASME Y14.5-2018
 * 4.1: sizes to points and surfaces that are there; from memory). Its width stands, and what is left of its ends.
 */
const block = 'block 80 × 40 × 20\n'
const hole = (x: number) => `hole top: ⌀16\n  ${x} from left; centred up\n`
const cases: readonly (readonly [name: string, brief: string, own: readonly string[], length: string])[] = [
  ['open to a side', `${hole(40)}slot top: 8 × 40 overall, open to left\n  centred up\n`, ['8, centred'], '40'],
  [
    'blind, open to a side',
    `hole top: ⌀16 ↧ 12\n  40 from left; centred up\nslot top: 8 × 40 overall ↧ 6, open to left\n  centred up\n`,
    ['8, centred', '↧ 6'],
    '40',
  ],
  [
    'between two holes',
    `${hole(20)}${hole(60)}slot top: 8 × 39 overall, long way left-right\n  40 from left; centred up\n`,
    ['8, centred'],
    '39',
  ],
  [
    'between two holes, from centre to centre and centred',
    `${hole(20)}${hole(60)}slot top: 8 × 40 centre to centre, long way left-right\n  centred both ways\n`,
    ['8, centred'],
    '40',
  ],
  [
    // its other end: 45 + 30 / 2 − 8 / 2
    'at one of its ends',
    `${hole(30)}slot top: 8 × 30 overall, long way left-right\n  45 from left; centred up\n`,
    ['8, centred', '56', 'R'],
    '30',
  ],
]

const must = (s: Sized) => allMarks(s).filter((m) => m.weight === 'must change')

describe('a slot that runs out into a hole', () => {
  it.each(cases)('%s, has the sizes that can be measured', (_, brief, own, length) => {
    const s = iso(block + brief)
    const { dimensions, proof, marks } = s.sizes
    expect(s.texts.filter((_, i) => dimensions[i]!.feature === 'slot 1')).toEqual(own)
    expect(must(s)).toEqual([])
    expect(proof.sentence).toMatch(/^complete/)
    expect(rankOf(s.part.body, makingOf(s.part), dimensions)).toMatchObject({ missing: 0, repeated: 0 })
    const [mark] = marks.filter((m) => m.rule === 'length-runs-out')
    expect(mark?.text).toMatch(new RegExp(`^${length} does not stand on the sheet`))
    expect(s.part.brief.text.slice(mark!.span!.from, mark!.span!.to)).toBe(length)
    for (const one of dimensions) {
      const less = dimensions.filter((d) => d !== one)
      expect([one.id, prove(s.part, less).missing.length > 0]).toEqual([one.id, true])
    }
  })

  it('deeper than the hole, keeps its length', () => {
    const s = iso(`${block}hole top: ⌀16 ↧ 8
  40 from left; centred up
slot top: 8 × 40 overall ↧ 12, open to left
  centred up
`)
    expect(s.texts.filter((_, i) => s.sizes.dimensions[i]!.feature === 'slot 1')).toEqual([
      '8, centred',
      '40',
      '↧ 12',
      'R',
    ])
    expect(must(s)).toEqual([])
  })
})
