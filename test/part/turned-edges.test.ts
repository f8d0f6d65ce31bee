import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

// Volumes by closed formulas. A chamfer c × 45° at the mouth of a bore r is a triangle c²/2 whose centroid stands c/3
// from the corner: by Pappus 2π(r + c/3)·c²/2. A corner fillet R about an inside corner at radius a adds the corner
// square less its quarter circle; each part turned about the axis by Pappus.
const bench = openBench()

const round = (d: number, h: number) => (Math.PI * d * d * h) / 4
const mouth = (d: number, c: number) => Math.PI * (d / 2 + c / 3) * c * c
/** A fillet R at radius a: the square [a, a + R] less the quarter circle centred on its far corner, both by Pappus. */
const fillet = (a: number, R: number) => {
  const quarter = (Math.PI * R * R) / 4
  return 2 * Math.PI * ((a + R / 2) * R * R - (a + R - (4 * R) / (3 * Math.PI)) * quarter)
}

const HUB = 'turned axis left-right\n  hub ⌀60, 40 long\n  flange ⌀120, 18 long'
const BODY = round(60, 40) + round(120, 18) - round(32, 58)

describe('an edge named with its step', () => {
  it('of a shoulder, inner: where the smaller neighbour stands, not the mouth of the bore', () => {
    const part = bench.part(`${HUB}\nbore left: ⌀32 THRU\nfillet flange left face inner edge: R3`)
    expect(part.marks).toEqual([])
    expect(part.properties.volume).toBeCloseTo(BODY + fillet(30, 3), 6)
  })

  it('of an end, inner: the mouth of the bore there', () => {
    const part = bench.part(`${HUB}\nbore left: ⌀32 THRU\nchamfer flange right face inner edge: 2 × 45°`)
    expect(part.marks).toEqual([])
    expect(part.properties.volume).toBeCloseTo(BODY - mouth(32, 2), 6)
  })

  it('with the bore: only the mouth in that step', () => {
    const part = bench.part(
      `${HUB}\n  nose ⌀50, 20 long\nbore left: ⌀32 THRU\nchamfer nose bore edges: 2 × 45°\nchamfer hub bore edge: 1 × 45°`,
    )
    expect(part.marks).toEqual([])
    expect(part.properties.volume).toBeCloseTo(BODY + round(50, 20) - round(32, 20) - mouth(32, 2) - mouth(32, 1), 6)
  })

  it.each(['flange bore edges', 'hub right face inner edge'])('%s: there is none, and that is said', (name) => {
    const part = bench.part(`${HUB}\n  nose ⌀50, 20 long\nbore left: ⌀32 THRU\nchamfer ${name}: 2 × 45°`)
    expect(faults(part)).toEqual(['unknown-name'])
  })

  it('of a shoulder of a solid part too', () => {
    const part = bench.part(`${HUB}\nfillet flange left face inner edge: R3`)
    expect(part.marks).toEqual([])
    expect(part.properties.volume).toBeCloseTo(round(60, 40) + round(120, 18) + fillet(30, 3), 6)
  })
})

describe('a fillet stands at an inside corner, a round at an outside one', () => {
  it.each([
    ['fillet flange right face outer edge: R3', ['round-not-fillet']],
    ['round flange right face outer edge: R3', []],
    ['round flange left face inner edge: R3', ['fillet-not-round']],
    ['fillet bore edges: R3', ['round-not-fillet']],
  ])('%s', (line, rules) => {
    expect(bench.part(`${HUB}\nbore left: ⌀32 THRU\n${line}`).marks.map((m) => m.rule)).toEqual(rules)
  })
})

describe('bore edges are both mouths', () => {
  const [disc, spigot, hole] = ['disc ⌀130 × 20, outer face front', '⌀60 × 6 high', 'bore front: ⌀40 THRU']
  it.each([
    ['spigot in front', `spigot front: ${spigot}\n${hole}`],
    ['bore before the spigot', `${hole}\nspigot front: ${spigot}`],
    ['spigot behind', `spigot rear: ${spigot}\n${hole}`],
  ])('%s', (_, made) => {
    const whole = round(130, 20) + round(60, 6) - round(40, 26)
    const both = bench.part(`${disc}\n${made}\nchamfer bore edges: 2X 1.5 × 45°`)
    expect(both.marks).toEqual([])
    expect(both.properties.volume).toBeCloseTo(whole - 2 * mouth(40, 1.5), 6)
    const one = bench.part(`${disc}\n${made}\nchamfer bore front edge: 1.5 × 45°`)
    expect(one.marks).toEqual([])
    expect(one.properties.volume).toBeCloseTo(whole - mouth(40, 1.5), 6)
  })
})
