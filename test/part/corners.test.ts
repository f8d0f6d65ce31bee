import { describe, expect, it } from 'vitest'
import { faults, named, openBench } from './workbench.ts'

// Volumes by closed formulas: a corner round takes (1 − π/4)r² off the section; a chamfer c × 45° all round a border of
// straight length s and four corner arcs r takes s·c²/2 and, by Pappus, 2π(r − c/3)·c²/2.
const bench = openBench()

const rounded = (a: number, b: number, r: number) => a * b - 4 * (1 - Math.PI / 4) * r * r
const allRound = (a: number, b: number, r: number, c: number) =>
  ((2 * (a - 2 * r) + 2 * (b - 2 * r)) * c * c) / 2 + 2 * Math.PI * (r - c / 3) * ((c * c) / 2)

describe('corners are those of the large face', () => {
  it.each([
    ['a block that lies', 'block 80 × 60 × 20', rounded(80, 60, 8) * 20],
    ['a block on edge', 'block 80 × 20 × 60', rounded(80, 60, 8) * 20],
    ['a block seen from the side', 'block 20 × 60 × 80', rounded(80, 60, 8) * 20],
    ['a plate', 'plate 80 × 60 × 20', rounded(80, 60, 8) * 20],
  ])('%s', (_, stock, volume) => {
    const part = bench.part(`${stock}\nround corners: 4X R8`)
    expect(part.marks).toEqual([])
    expect(part.properties.volume).toBeCloseTo(volume, 6)
  })

  it('also where the holes that go through look the other way', () => {
    const part = bench.part(
      'block 80 × 60 × 20\nround corners: 4X R8\nholes front: 2X ⌀6 THRU\n  40 apart, centred; centred up',
    )
    expect(part.marks).toEqual([])
    expect(part.properties.volume).toBeCloseTo(rounded(80, 60, 8) * 20 - 2 * Math.PI * 9 * 60, 6)
  })

  it('are the stock’s own, not those a notch leaves', () => {
    const part = bench.part(
      'plate 80 × 60 × 10, face front\nnotch front, top: square, 20 wide, 10 deep\n  centred\nround corners: 4X R3',
    )
    expect(part.marks).toEqual([])
    expect(part.properties.volume).toBeCloseTo((rounded(80, 60, 3) - 200) * 10, 6)
  })

  it('are inside ones for a fillet, outside ones for a round', () => {
    const ell = 'outline 10 thick, face front\n  right 80; up 20; left 50; up 40; left 30; close'
    const section = 80 * 20 + 30 * 40
    const fillet = bench.part(`${ell}\nfillet corners: R5`)
    expect(fillet.marks).toEqual([])
    expect(fillet.properties.volume).toBeCloseTo((section + (1 - Math.PI / 4) * 25) * 10, 6)
    const round = bench.part(`${ell}\nround corners: 5X R5`)
    expect(round.marks).toEqual([])
    expect(round.properties.volume).toBeCloseTo((section - 5 * (1 - Math.PI / 4) * 25) * 10, 6)
  })
})

describe('a chamfer of an edge that ends in round corners follows them', () => {
  it.each([
    ['rounded in the profile', ''],
    ['rounded on the solid', 'holes front: 2X ⌀6 THRU\n  40 apart, centred; centred up\n'],
  ])('%s', (_, holes) => {
    const part = bench.part(`block 80 × 60 × 20\n${holes}round corners: 4X R8\nchamfer top edges: 4X 1 × 45°`)
    expect(faults(part)).toEqual([])
    const bored = holes === '' ? 0 : 2 * Math.PI * 9 * 60
    expect(part.properties.volume).toBeCloseTo(rounded(80, 60, 8) * 20 - bored - allRound(80, 60, 8, 1), 6)
    expect(named(part, 'chamfer').filter((f) => f.surface.kind === 'cone')).toHaveLength(4)
  })
})
