import { describe, expect, it } from 'vitest'
import { prove } from '../../src/sizes/proof/prove.ts'
import { allMarks, iso } from './sized.ts'

// Whatever size is left out, the proof says in which view it would stand and what to write in the brief (the project's
// own rule, docs/sizes.md).
describe('each missing size says what would mend it', () => {
  it.each([
    [
      'a taper with a chamfer',
      'turned axis left-right\n  nose ⌀24 tapered to ⌀16, 40 long\nchamfer nose right edge: 1 × 45°\n',
    ],
    ['a blind hole and its point', 'block 80 × 50 × 30\nhole top: ⌀8 ↧ 12\n  20 from left; centred up\n'],
    ['a countersink', 'block 80 × 50 × 30\nhole top: ⌀6.6 THRU, ⌵ ⌀12.6 × 90°\n  20 from left; 15 from front\n'],
    [
      'a sloping outline',
      'outline 8 thick, face front\n  right 80; up 20; slope left 30 up 30; left 50; close\nviews front, top\n',
    ],
    ['a vee', 'block 80 × 50 × 30\nnotch front, top: vee, 20 wide, 90°\n  centred\n'],
    ['a vee by its depth', 'block 80 × 50 × 30\nnotch top, front: vee, 9 wide, 8 deep\n  centred\n'],
    ['a chamfered edge', 'block 80 × 50 × 30\nchamfer top left edge: 2 × 3\n'],
    [
      'a bolt circle',
      'disc ⌀90 × 12, outer face front\nholes outer face: 3X ⌀6 THRU\n  on ⌀60 bolt circle, equal, first at 20°\n',
    ],
  ])('%s', (_, lines) => {
    const s = iso(lines)
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    for (const one of s.sizes.dimensions) {
      const { missing } = prove(
        s.part,
        s.sizes.dimensions.filter((d) => d !== one),
        { views: s.views },
      )
      expect(missing.length, one.id).toBeGreaterThan(0)
      for (const m of missing) {
        expect(m.view, m.text).toMatch(/./)
        expect(m.write, m.text).toMatch(/\d/)
      }
    }
  })

  it('in the brief’s own words: the feature’s statement, the step, the move, or a place from a side that is there', () => {
    const without = (lines: string, text: string) => {
      const s = iso(lines)
      const one = s.find(text)
      return prove(
        s.part,
        s.sizes.dimensions.filter((d) => d !== one),
        { views: s.views },
      ).missing.map((m) => m.write)
    }
    const taper = 'turned axis left-right\n  nose ⌀24 tapered to ⌀16, 40 long\nchamfer nose right edge: 1 × 45°\n'
    expect(without(taper, '1 × 45°')).toContain('chamfer  nose right edge: 1 × 45°')
    expect(without(taper, '⌀16')).toEqual(['nose ⌀24 tapered to ⌀16, 40 long'])
    const gusset =
      'outline 8 thick, face front\n  right 80; up 20; slope left 30 up 30; left 50; close\nviews front, top\n'
    expect(without(gusset, '20')).toEqual(['50 from top'])
    expect(without('block 80 × 50 × 30\nhole top: ⌀8 THRU\n  20 from left; 15 from front\n', '20')).toEqual([
      '20 from left',
    ])
    const lug =
      'outline 10 thick, face front\n  right 60; up 40; left 60; arc R20 to 0 across, 0 up, turning left; close\nhole front: ⌀8 THRU\n  20 from right; 12 from bottom\nviews front, top\n'
    expect(without(lug, '12')).toEqual(['12 from bottom'])
    // No side stands at the left of it: the right one is named.
    expect(without(lug, '20')).toEqual(['20 from right'])
  })
})

describe('what runs into a rounded edge', () => {
  it('is marked at the cut, and where a free-form surface comes of it the proof says between what', () => {
    const near = iso('block 100 × 60 × 20\nhole top: ⌀10 THRU\n  12 from left; centred up\nround top left edge: R8\n')
    expect(near.sizes.marks.map((m) => m.rule)).toContain('runs-into-edge')
    const clear = iso('block 100 × 60 × 20\nhole top: ⌀10 THRU\n  14 from left; centred up\nround top left edge: R8\n')
    expect(clear.sizes.marks.map((m) => m.rule)).not.toContain('runs-into-edge')
    const spoilt = iso('block 100 × 60 × 20\nhole top: ⌀20 THRU\n  12 from left; centred up\nround top edges: 4X R8\n')
    expect(spoilt.sizes.proof.missing.map((m) => m.text)).toEqual([
      'where hole 1 and round 1 meet there is a free-form surface, which no size here can fix',
    ])
  })

  it('is not a rim with a round of its own', () => {
    const s = iso('disc ⌀90 × 20, outer face front\nbore front: ⌀30 THRU\nround bore edges: 2X R2\n')
    expect(s.sizes.marks.map((m) => m.rule)).not.toContain('runs-into-edge')
  })
})

describe('one cause, one mark', () => {
  it.each([
    ['rounds too large for a block', 'block 100 × 60 × 20\nround corners: 4X R40\n'],
    ['a round that cannot be worked', 'block 80 × 50 × 30\nround top edges: 4X R30\n'],
    [
      'a round without room on a shaft',
      'turned axis left-right\n  body ⌀40, 50 long\n  nose ⌀30, 30 long\nround body right edge: R12\n',
    ],
    [
      'a groove by its depth in a taper',
      'turned axis left-right\n  nose ⌀38 tapered to ⌀42, 50 long\ngroove nose: 2 wide, 1 deep\n  right side 4 from nose right face\n',
    ],
  ])('%s', (_, lines) => {
    expect(allMarks(iso(lines))).toHaveLength(1)
  })
})

describe('features at one level by chance', () => {
  it.each([
    [
      'a hole that touches a step',
      'block 93 × 71 × 21\nstep top front: 10 from front, 7 from top\nhole top: ⌀6 THRU\n  40 from left; 13 from front\n',
      '13 from front',
    ],
    [
      'a vee as deep as holes lie from the edge',
      'block 100 × 60 × 20\nholes top: 2X ⌀6 THRU\n  84 apart, centred; 8 from front\nnotch top, front: vee, 9 wide, 8 deep\n  centred\n',
      '8 from front',
    ],
    [
      'a flat that ends at a chamfer’s border',
      'round bar ⌀22, 78 long, axis left-right\nchamfer ends: 2X 1 × 45°\nflat outside, top: 14 across, 20 long\n  right end 1 from right\n',
      '1 from right',
    ],
  ])('%s have the sizes that they have apart', (_, lines, place) => {
    const [together, apart] = [
      iso(lines),
      iso(
        lines.replace(
          place,
          place.replace(/\d+/, (n) => `${Number(n) + 2}`),
        ),
      ),
    ]
    expect(together.sizes.proof.complete, together.sizes.proof.sentence).toBe(true)
    expect(apart.sizes.proof.complete, apart.sizes.proof.sentence).toBe(true)
    expect(together.texts).toHaveLength(apart.texts.length)
  })
})
