import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { asme, iso, type Sized } from './sized.ts'

// Slots: the ends carry R without a value (ASME Y14.5-2018 §4.8.13, ISO 129-1:2018; both from memory). It says that each
// end touches both sides: with the width that fixes its radius and its middle, two conditions an end.

const fullRounds = ({ sizes }: Sized) => sizes.proof.conditions?.find((c) => c.kind === 'full round')?.count

const cases: readonly (readonly [name: string, sized: () => Sized, text: string, conditions: number])[] = [
  [
    'open to an edge',
    () => iso('block 100 × 60 × 40\nslot top: 11 × 40 overall THRU, open to left\n  centred up\n'),
    'R',
    2,
  ],
  [
    'closed, centre to centre',
    () =>
      iso('block 100 × 60 × 40\nslot top: 10 × 30 centre to centre THRU, long way left-right\n  centred both ways\n'),
    '2× R',
    3,
  ],
  [
    'closed, overall, in a note of its own',
    () =>
      asme('block 4.00 × 2.00 × 1.50\nslot top: .250 × 1.00 overall THRU, long way left-right\n  centred both ways\n'),
    '.250 × 1.00, 2X R, CENTERED BOTH WAYS',
    3,
  ],
  [
    'that a step parts at its end',
    () =>
      iso(
        'block 100 × 60 × 40\nstep top right: 40 from right, 15 from top\nslot top: 12 × 60 overall ↧ 10, open to left\n  centred up\n',
      ),
    'R',
    2,
  ],
  [
    'worked as a pocket with corners of half its width',
    () => iso('block 80 × 50 × 40\npocket front: 40 × 16 ↧ 10, corners R 8\n  centred left-right; 15 from bottom\n'),
    '2× R',
    3,
  ],
]

describe('R without a value', () => {
  it.each(cases)('of a slot %s is counted openly and needed', (_, make, text, conditions) => {
    const s = make()
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    // The two ends of a closed slot share one middle line, so that the fourth tangency says nothing new.
    expect(fullRounds(s)).toBe(conditions)
    const own = s.find(text)
    expect(own.states?.map((x) => x.kind)).toContain('full round')
    const without = s.sizes.dimensions.map((d) =>
      d === own ? { ...d, states: d.states!.filter((x) => x.kind !== 'full round') } : d,
    )
    expect(prove(s.part, without).missing.length).toBeGreaterThan(0)
    expect(rankOf(s.part.body, makingOf(s.part), without).missing).toBeGreaterThan(0)
    expect(rankOf(s.part.body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
  })

  it('said twice is one too many', () => {
    const s = cases[0]![1]()
    const twice = [...s.sizes.dimensions, { ...s.find('R'), id: 'again' }]
    expect(prove(s.part, twice).repeated.flatMap((r) => r.dimensions)).toContain('again')
  })

  it('on an end that is no longer there points at nothing', () => {
    const s = cases[0]![1]()
    const astray = { ...s.find('R'), states: [{ kind: 'full round' as const, faces: [9999] }] }
    const proof = prove(s.part, [...s.sizes.dimensions.filter((d) => d.id !== astray.id), astray])
    expect(proof.repeated.some((r) => r.astray)).toBe(true)
  })
})
