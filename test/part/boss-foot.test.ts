import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

const bench = openBench()

const { PI } = Math
const SPIGOT = 'disc ⌀140 × 16, outer face front\nspigot rear: ⌀90 × 20 high\n'
const whole = PI * 70 ** 2 * 16 + PI * 45 ** 2 * 20

/**
 * A concave fillet of radius ρ round a cylinder of radius r by Pappus: the area ρ²(1 − π/4), its centroid
 * ρ(10 − 3π)/(12 − 3π) from the corner (Machinery's Handbook, spandrel, from memory).
 */
const spandrel = (r: number, rho: number) =>
  2 * PI * (r + (rho * (10 - 3 * PI)) / (12 - 3 * PI)) * rho * rho * (1 - PI / 4)

describe('the foot and the rim of a spigot', () => {
  it.each(['foot', 'root'])('a fillet at the %s adds the spandrel turned', (word) => {
    const part = bench.part(`${SPIGOT}fillet spigot ${word}: R3`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(whole + spandrel(45, 3), 3)
  })

  it('a chamfer at the edge takes the rim', () => {
    const part = bench.part(`${SPIGOT}chamfer spigot edge: 1 × 45°`)
    expect(faults(part)).toEqual([])
    // a triangle of ½ mm², its centroid ⅓ in from the rim, by Pappus
    expect(part.properties.volume).toBeCloseTo(whole - 2 * PI * (45 - 1 / 3) * 0.5, 3)
  })

  it.each([
    ['fillet spigot edge: R3', 'round-not-fillet', 'fillet spigot foot: R3'],
    ['round spigot foot: R3', 'fillet-not-round', 'fillet spigot foot: R3'],
  ])('%s says what to write', (text, rule, write) => {
    const mark = bench.part(SPIGOT + text).marks.find((m) => m.rule === rule)
    expect(mark?.expected).toContain(write)
  })

  it('on flat stock either is refused, and not by an unknown name', () => {
    const block = 'block 160 × 100 × 50\nboss top: ⌀40 × 20 high\n  centred both ways\n'
    for (const text of ['fillet boss foot: R3', 'fillet boss edge: R3', 'chamfer boss edge: 1 × 45°'])
      expect(faults(bench.part(block + text))).toEqual([
        text.includes('fillet boss edge') ? 'round-not-fillet' : 'cannot-build',
      ])
  })
})
