import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

const bench = openBench()

const textOf = (part: ReturnType<typeof bench.part>, rule: string) => part.marks.find((m) => m.rule === rule)?.text

describe('holes across a round surface', () => {
  it('point at the axis where no other place is said', () => {
    const plain = bench.part('tube ⌀62 outside, ⌀45 inside, 80 long\nhole outside, from top: ⌀6 THRU\n  20 from left')
    const said = bench.part(
      'tube ⌀62 outside, ⌀45 inside, 80 long\nhole outside, from top: ⌀6 THRU\n  20 from left; centred up',
    )
    expect(faults(plain)).toEqual([])
    expect(faults(said)).toEqual([])
    expect(plain.properties.volume).toBeCloseTo(said.properties.volume, 9)
    expect(plain.properties.centroid[1]).toBeCloseTo(0, 9)
    expect(plain.implied).toContainEqual(expect.objectContaining({ kind: 'centred', between: ['hole 1 axis', 'axis'] }))
  })

  it('still need their place along it', () => {
    const part = bench.part('tube ⌀62 outside, ⌀45 inside, 80 long\nhole outside, from top: ⌀6 THRU\n  centred up')
    expect(faults(part)).toEqual(['not-located'])
  })
})

describe('holes in the flanges of a channel', () => {
  // volume of a channel by its three strips; each hole takes a cylinder of the flange's thickness
  const strips = (80 * 6 + 2 * 39 * 6) * 200
  it('go through both', () => {
    const part = bench.part(
      'channel 80 high × 45 wide × 6 thick, 200 long, axis left-right\nholes flanges: 2X ⌀11 THRU\n  2 across 120 apart, centred; 25 from web',
    )
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(strips - 4 * Math.PI * 5.5 ** 2 * 6, 6)
  })
  it('go through the one that is named', () => {
    const part = bench.part(
      'channel 80 high × 45 wide × 6 thick, 200 long, axis left-right\nholes upper flange, from top: 2X ⌀11 THRU\n  2 across 120 apart, centred; 25 from web',
    )
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(strips - 2 * Math.PI * 5.5 ** 2 * 6, 6)
  })
})

describe('marks of patterns', () => {
  it('name the member at fault and what it meets', () => {
    const part = bench.part(`plate 100 × 60 × 8
holes A top: 2X ⌀8 THRU
  40 apart, centred; centred up
holes B top: 3X ⌀8 THRU
  at 10, 10; 90, 10; 73, 34; from left and front`)
    // centres 3 and 4 mm apart along the two directions
    expect(textOf(part, 'holes-overlap')).toBe(
      'hole B.3 overlaps hole A.2: their centres are 5 mm apart. All of hole B are left out.',
    )
  })

  it('count slots, not their ends', () => {
    const one = bench.part(
      'plate 100 × 60 × 10\nslot top: 8 × 40 overall THRU, long way left-right\n  90 from left; 45 from front',
    )
    expect(textOf(one, 'breaks-edge')).toBe('slot 1 breaks out of the edge of the top.')
    const two = bench.part(
      'plate 100 × 60 × 10\nslots top: 2X 8 × 40 overall THRU, long way left-right\n  2 across 60 apart, leftmost 30 from left; 45 from front',
    )
    expect(textOf(two, 'breaks-edge')).toBe('1 of the 2 of slot 1 breaks out of the edge of the top.')
  })
})

describe('a notch that runs out over its edge', () => {
  it('says by what figures, and which face has the room', () => {
    const part = bench.part('plate 200 × 160 × 25\nnotch front, right: square, 40 wide, 30 deep\n  centred')
    const mark = part.marks.find((m) => m.rule === 'breaks-edge')!
    expect(mark.text).toContain('it is 40 wide, and the edge is 25 mm long')
    expect(mark.expected).toContain('notch top, right')
    const mended = bench.part('plate 200 × 160 × 25\nnotch top, right: square, 40 wide, 30 deep\n  centred')
    expect(faults(mended)).toEqual([])
    expect(mended.properties.volume).toBeCloseTo((200 * 160 - 40 * 30) * 25, 6)
  })
})
