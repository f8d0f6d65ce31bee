import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

const bench = openBench()

const PLATE = 'plate 80 × 60 × 10\n'
const named = (word: string) => `holes B top: 4X ⌀5 THRU
  on ⌀50 bolt circle, about ${word} A, equal, first at 45°
chamfer ${word} A edges: 2X 1 × 45°
datum B bottom
frame ${word} A: ⟂ ⌀0.05 B`

describe('a labelled bore on a part that is not turned', () => {
  it.each(['bore', 'hole'])('is found as %s, and bears the name that it was stated with', (word) => {
    const part = bench.part(`${PLATE}bore A top: ⌀30 H7 THRU\n${named(word)}`)
    expect(faults(part)).toEqual([])
    expect(part.named?.frames.map((f) => f?.id)).toEqual(['bore A'])
    expect(part.features.map((f) => f.id)).toEqual(expect.arrayContaining(['bore A', 'hole B']))
  })

  it.each(['bore A', 'hole A', 'bore'])('is what a hole goes through to: %s', (name) => {
    const part = bench.part(
      `block 60 × 40 × 50\nbore A front: ⌀20 THRU\nhole top: ⌀5 THRU to ${name}\n  centred both ways`,
    )
    expect(faults(part)).toEqual([])
  })

  it('is found as bore where it was stated as hole', () => {
    const part = bench.part(`${PLATE}hole A top: ⌀30 H7 THRU\n  centred both ways\n${named('bore')}`)
    expect(faults(part)).toEqual([])
    expect(part.named?.frames.map((f) => f?.id)).toEqual(['hole A'])
  })
})
