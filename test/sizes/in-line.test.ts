import { describe, expect, it } from 'vitest'
import { iso } from './sized.ts'

/*
 * Features drawn in line, or on one centre line, stand so without a size; a size of 0 is not written (ASME Y14.5-2018
 * 4.1, implied; ISO 129-1; from memory).
 */
const LEVER = `outline 14 thick, face front
  right 120; arc R 20 to 120 across, 40 up, turning left; left 120; arc R 20 to 0 across, 0 up, turning left; close
`
describe('a distance of 0', () => {
  it('from an axis or a corner is alignment: no size, no mark, and the drawing is complete', () => {
    const s = iso(`${LEVER}boss A front: ⌀36 × 8 high
  across 0 from corner 1; 20 from bottom
hole C front: ⌀20 H7 THRU
  across 0 from corner 1; 20 from bottom
hole D front: ⌀16 H7 THRU
  across 120 from corner 1; 20 from bottom
`)
    expect(s.part.marks.map((m) => m.text)).toEqual([])
    expect(s.sizes.dimensions.filter((d) => d.value === 0)).toEqual([])
    expect(s.sizes.marks.map((m) => m.text)).toEqual([])
    expect(s.sizes.proof.complete).toBe(true)
  })
})
