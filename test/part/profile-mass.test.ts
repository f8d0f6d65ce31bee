import { expect, it } from 'vitest'
import { openBench } from './workbench.ts'

const bench = openBench()

// the kernel integrates over the faces of the solid: an oracle independent of the profile
it.each([
  [
    'plate',
    'plate 120 × 80 × 10\nround front corners: 2X R10\nholes top: 4X ⌀9 THRU\n  2 across 60 apart, leftmost 15 from left; 2 up 40 apart, centred',
  ],
  [
    'plate seen from the front',
    'plate 120 × 80 × 10, face front\nslot front: 10 × 40 overall THRU, open to left\n  30 from bottom',
  ],
  ['outline', 'outline 5 thick, face right\n right 60; arc R20 to 60 across, 30 up, turning left; left 60; close'],
  ['channel', 'channel 80 high, 40 wide, 6 thick, 200 long, axis front-rear'],
  [
    'bent angle with worked legs',
    'angle formed, 5 STK, inside R 5; upright 60 high, at left; base 40 toward right; length 100\nholes upright, from right: 2X ⌀9 THRU\n  2 across 40 apart, centred; 40 from bottom\nround base, toe corners: 2X R8',
  ],
  [
    'turned',
    'turned axis up-down\n a ⌀20, 28 long\n b ⌀30 tapered to ⌀25, 20 long\n c ⌀16, 10 long\nbore bottom face: ⌀8 ↧ 20\nround top face outer edge: R2\nchamfer bottom face outer edge: 1 × 30°',
  ],
  ['tube', 'tube ⌀62 outside, ⌀45 inside, 12 long, axis left-right\nchamfer bore edges: 2X 0.5 × 45°'],
])('%s: volume, surface and centroid agree with the kernel', (_, text) => {
  const part = bench.part(text)
  const oracle = bench.kernel.properties(part.solid)
  expect(part.marks.filter((m) => m.weight === 'must change')).toEqual([])
  expect(Math.abs(part.properties.volume / oracle.volume - 1)).toBeLessThan(1e-11)
  expect(Math.abs(part.properties.area / oracle.area - 1)).toBeLessThan(1e-11)
  for (const k of [0, 1, 2] as const) expect(part.properties.centroid[k]).toBeCloseTo(oracle.centroid[k], 8)
})
