import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { asme, iso, type Sized } from './sized.ts'

/**
 * Two features that end at one level by chance are still two: each has its own size, as if they ended apart (ASME
 * Y14.5-2018 4.1, each feature sized once, from memory). Held against the same brief with one number changed.
 */
const block = 'block     120 × 70 × 45\n'
const cases: readonly (readonly [name: string, asme: boolean, coincident: string, apart: string])[] = [
  [
    'a drill point under a step’s face',
    false,
    `${block}step      bottom right: 25 from right, 10 from bottom
hole      right: M10 ↧ 20, drill ⌀8.5 ↧ 25
          35 from front; 28 from bottom
`,
    '↧ 26',
  ],
  [
    'counterbores at a step’s level and at one another’s',
    false,
    `${block}step      top left: 30 from left, 12 from top
holes A   top: 2X ⌀11 THRU, ⌴ ⌀18 ↧ 12
          60 from left; 2 up 40 apart, centred
hole B    top: ⌀9 THRU, ⌴ ⌀15 ↧ 12
          90 from left; 20 from front
`,
    '↧ 13',
  ],
  [
    'a chamfer’s border at a spotface’s floor',
    true,
    `disc      ⌀7.50 × .88, outer face front
holes A   outer face: 8X ⌀.563 THRU, spotface ⌀1.12 ↧ .06
          on ⌀6.000 bolt circle, equal, astride the vertical centre line
chamfer   rim edges: 2X .06 × 45°
`,
    '↧ .09',
  ],
  [
    'a chamfer’s border at a slot’s floor',
    true,
    `block     3.250 × 2.000 × 1.500
slot      top: .375 × 1.125 overall ↧ .250, long way front-rear
          2.500 from left; centred up
chamfer   top right edge: .250 × 45°
`,
    '↧ .200',
  ],
]

const judged = ({ sizes, part }: Sized) => ({
  missing: sizes.proof.missing.map((m) => m.text),
  repeated: sizes.proof.repeated.map((r) => r.text),
  byRank: rankOf(part.body, makingOf(part), sizes.dimensions),
})

describe('levels that coincide by chance', () => {
  it.each(cases)('%s', (_, inInch, lines, other) => {
    const read = inInch ? asme : iso
    const together = read(lines)
    const deep = / ↧ [\d.]+(?=[\n,])/.exec(lines.replace('M10 ↧ 20', 'M10'))![0]
    const apart = read(lines.replaceAll(deep, ` ${other}`))
    for (const one of [together, apart]) {
      const { byRank, ...said } = judged(one)
      expect(said).toEqual({ missing: [], repeated: [] })
      expect(byRank).toMatchObject({ missing: 0, repeated: 0 })
    }
    expect(together.sizes.proof.sizes).toBe(apart.sizes.proof.sizes)
  })

  it('are too many where one floor is given twice', () => {
    const { sizes } = iso(`${block}hole A    top: ⌀9 THRU, ⌴ ⌀15 ↧ 12
          90 from left; 20 from front
`)
    const floor = sizes.dimensions.find((d) => d.id === 'hole A/note')!
    expect(sizes.proof.complete).toBe(true)
    const s = iso(`${block}hole A    top: ⌀9 THRU, ⌴ ⌀15 ↧ 12
          90 from left; 20 from front
`)
    const again = { ...floor, id: 'again', states: floor.states!.filter((x) => x.kind === 'distance') }
    expect(rankOf(s.part.body, makingOf(s.part), [...s.sizes.dimensions, again])).toMatchObject({ repeated: 1 })
  })
})

/** The same of numbers that are equal by chance: each brief beside itself with one of the two changed by a little. */
const alike: readonly (readonly [name: string, lines: string, typed: string, other: string])[] = [
  [
    'slots in two legs, as wide and as far apart',
    `angle     machined, .75 thick
          upright 5.00 high, at rear; base 4.00 toward front; length 6.00
slots     base, from top: 2X .562 × 1.75 overall THRU, long way front-rear
          3.500 apart, centred; centres 2.38 from heel
slots     upright, from front: 2X .562 × 2.50 overall THRU, long way up-down
          3.500 apart, centred; centres 3.00 from bottom
`,
    '2X .562 × 2.50',
    '2X .568 × 2.50',
  ],
  [
    'pockets whose walls stand in line',
    `block     4.000 × 3.000 × 1.000
pocket A  top: 1.000 × .750 ↧ .250, corners R .125
          1.000 from left; 2.000 from front
pocket B  top: 1.000 × .625 ↧ .375, corners R .125
          1.000 from left; .750 from front
`,
    '1.000 × .625',
    '.938 × .625',
  ],
  [
    'a leg’s toe round and the rounds of its corners',
    `angle     rolled, 1/4 STK, inside R .25, toe R .19
          upright 3.00 high, at rear; base 2.00 toward front; length 3.00
round     base, toe corners: 2X R.19
`,
    '2X R.19',
    '2X R.22',
  ],
  [
    'rounded corners about holes',
    `plate     6.00 × 4.00 × .500 ±.002
holes     top: 4X ⌀.406 THRU
          2 across 5.000 apart, centred; 2 up 3.000 apart, centred
round     corners: 4X R.50
`,
    '4X R.50',
    '4X R.47',
  ],
]

describe('numbers that are equal by chance', () => {
  it.each(alike)('%s', (_, lines, typed, other) => {
    const [together, apart] = [lines, lines.replace(typed, other)].map((l) => asme(l)) as [Sized, Sized]
    expect(lines).toContain(typed)
    for (const one of [together, apart]) {
      const { byRank, ...said } = judged(one)
      expect(said).toEqual({ missing: [], repeated: [] })
      expect(byRank).toMatchObject({ missing: 0, repeated: 0 })
    }
    expect(together.sizes.proof.sizes).toBe(apart.sizes.proof.sizes)
    expect(together.texts.length).toBe(apart.texts.length)
  })
})
