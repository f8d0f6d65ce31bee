import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { iso, type Sized } from './sized.ts'

// The thickness stands as a note in some of these; a section view has it as a size.
const thick = 'views front, top\n'

/** Complete; without any one size it is not, with any one twice it is too much; the rank of the whole Jacobian agrees. */
function expectProper(s: Sized): void {
  const { proof, dimensions, tables } = s.sizes
  expect({ missing: proof.missing, repeated: proof.repeated }).toEqual({ missing: [], repeated: [] })
  expect(rankOf(s.part.body, makingOf(s.part), dimensions)).toMatchObject({ missing: 0, repeated: 0 })
  for (const one of dimensions) {
    if (one.reference || !one.states?.length) continue
    expect(
      prove(
        s.part,
        dimensions.filter((d) => d !== one),
        { tables },
      ).missing.length,
      one.id,
    ).toBeGreaterThan(0)
    const twice = [...dimensions, { ...one, id: 'again' }]
    expect(prove(s.part, twice, { tables }).repeated.length, one.id).toBeGreaterThan(0)
  }
}

const outline = (moves: string, more = '') =>
  iso(`outline 10 thick, face front\n  right ${moves}; close\n${more}${thick}`)

// A half round is sized by its radius and the place of its centre, which stands on the side it is cut in; a size shows
// for two things that stand level where one number is given for both (common practice, no source).
describe('arcs of an outline', () => {
  it.each([
    ['a half round in a side', '100; up 40; left 30; arc R20 to 30 across, 40 up, turning right; left 30', 4 + 1],
    ['a half round that ends in a cusp', '120; up 60; arc R15 to 90 across, 60 up, turning right; left 90; down 60', 4],
    ['less than a half round', '100; up 40; left 35; arc R20 to 35 across, 40 up, turning right; left 35', 6],
    ['a quarter about the corner', '80; up 20; arc R20 to 60 across, 40 up, turning right; left 60', 6],
    ['a quarter that runs on smoothly', '80; up 20; arc R20 to 60 across, 40 up, turning left; left 60', 4],
    ['an arc that ends level with no side', '120; up 40; arc R50 to 90 across, 60 up, turning right; left 90', 6],
    [
      'an arc that begins level with another side by another number',
      '120; up 40; arc R50 to 90 across, 60 up, turning right; left 50; down 20; left 40',
      8,
    ],
    ['an arc after a slope', '80; up 20; slope left 30 up 30; arc R25 to 20 across, 50 up, turning left; left 20', 8],
  ])('%s', (_, moves, sizes) => {
    const s = outline(moves)
    expectProper(s)
    expect(s.sizes.proof.sizes).toBe(sizes)
  })

  it('ask for a level that nothing says', () => {
    const s = outline('120; up 40; arc R50 to 90 across, 60 up, turning right; left 90')
    const without = s.sizes.dimensions.filter((d) => d !== s.find('40'))
    expect(prove(s.part, without, { views: s.views }).missing).toHaveLength(1)
  })

  it('end about a hole that has the same number once', () => {
    const s = outline(
      '80; arc R20 to 80 across, 40 up, turning left; left 80',
      'hole front: ⌀20 THRU\n  80 from left; 20 from bottom\n',
    )
    expectProper(s)
    expect(s.texts.filter((t) => t === '80')).toHaveLength(1)
    expect(s.sizes.proof.conditions).toContainEqual({ kind: 'aligned', count: expect.any(Number) })
  })
})

// Each feature is sized by its own numbers: that a corner's centre falls on a hole's axis is a coincidence of numbers
// (ASME Y14.5-2018 4.1, from memory). Held against the same brief with another radius.
describe('rounded corners about the axes of holes', () => {
  const plate = (r: number, places: string) =>
    iso(`block 100 × 60 × 20
round corners: 4X R${r}
holes top: 4X ⌀6 THRU, ⌴ ⌀10 ↧ 6
  ${places}
`)
  it.each([
    '2 across 84 apart, centred; 2 up 44 apart, centred',
    '2 across 84 apart, leftmost 8 from left; 2 up 44 apart, lowest 8 from front',
    'at 8, 8; 92, 8; 8, 52; 92, 52; from left and front',
  ])('%s', (places) => {
    const [about, beside] = [plate(8, places), plate(9, places)]
    expectProper(about)
    expect(about.texts.map((t) => t.replace('R8', 'R9'))).toEqual(beside.texts)
    expect(about.sizes.proof.sentence).toBe(beside.sizes.proof.sentence)
  })

  it('and chamfers that run round them stay on one line with them', () => {
    expectProper(
      iso(`block 100 × 60 × 20
round corners: 4X R8
chamfer top edges: 4X 1 × 45°
holes top: 4X ⌀6 THRU
  2 across 84 apart, centred; 2 up 44 apart, centred
`),
    )
  })
})
