import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { faults, named, openBench } from './workbench.ts'

const bench = openBench()

const { PI } = Math
const TUBE = 'tube ⌀62 outside, ⌀45 inside, 40 long, axis left-right\n'
const tube = (PI / 4) * (62 ** 2 - 45 ** 2) * 40
const SHAFT = 'turned axis left-right\n  nose ⌀20, 30 long\n  head ⌀60, 25 long\n'
const shaft = PI * 10 ** 2 * 30 + PI * 30 ** 2 * 25

/** What a hole of radius r takes between the cylinder of radius R and the height h (at each y): the integral over its disc. */
function taken(r: number, R: number, h: (y: number) => number): number {
  const n = 20000
  let sum = 0
  for (let i = 0; i < n; i++) {
    const y = -r + (2 * r * (i + 0.5)) / n
    sum += 2 * Math.sqrt(r * r - y * y) * (Math.sqrt(R * R - y * y) - h(y)) * ((2 * r) / n)
  }
  return sum
}

describe('holes equally spaced round a turned surface', () => {
  it.each([2, 3, 4, 5, 6, 8])('%i through the wall of a tube, against numerical integration', (n) => {
    const part = bench.part(
      `${TUBE}holes outside, from top: ${n}X ⌀6 THRU to bore\n  15 from left face, equally spaced`,
    )
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(tube - n * taken(3, 31, (y) => Math.sqrt(22.5 ** 2 - y * y)), 1)
    expect(named(part, 'hole 1.').filter((f) => f.surface.kind === 'cylinder')).toHaveLength(n)
  })

  it('THRU alone goes through the wall of each', () => {
    const one = bench.part(`${TUBE}holes outside, from top: 4X ⌀6 THRU\n  15 from left face, equally spaced`)
    const other = bench.part(`${TUBE}holes outside, from top: 4X ⌀6 THRU to bore\n  15 from left face, equally spaced`)
    expect(faults(one)).toEqual([])
    expect(one.properties.volume).toBeCloseTo(other.properties.volume, 6)
  })

  it('blind in a shaft: depth from the crown, then a 118° point', () => {
    const part = bench.part(`${SHAFT}holes head, from top: 3X ⌀8 ↧ 12\n  12 from right, equally spaced`)
    expect(faults(part)).toEqual([])
    // a cone of height r / tan 59° (volume πr²h/3) below the full diameter
    const cone = (PI * 4 ** 2 * (4 / Math.tan((59 * PI) / 180))) / 3
    expect(part.properties.volume).toBeCloseTo(shaft - 3 * (taken(4, 30, () => 18) + cone), 1)
  })

  it('the first is where it is worked from, the others follow round the axis', () => {
    const part = bench.part(`${TUBE}holes outside, from front: 3X ⌀6 THRU to bore\n  15 from left face, equally spaced`)
    const members = part.features.find((f) => f.id === 'hole 1')!.members
    const angles = members.map((m) => (Math.atan2(m.point[2], m.point[1]) * 180) / PI)
    expect(((angles[0]! % 360) + 360) % 360).toBeCloseTo(180, 9)
    for (const m of members) expect(Math.hypot(m.point[1], m.point[2])).toBeCloseTo(31, 9)
    const steps = angles.map((a, i) => (((angles[(i + 1) % 3]! - a) % 360) + 360) % 360)
    for (const step of steps) expect(step).toBeCloseTo(120, 9)
  })

  it.each([
    [
      'through a solid shaft',
      `${SHAFT}holes head, from top: 4X ⌀8 THRU\n  12 from right, equally spaced`,
      'nothing-behind',
    ],
    [
      'so deep that they meet',
      `${SHAFT}holes head, from top: 6X ⌀8 ↧ 25\n  12 from right, equally spaced`,
      'holes-overlap',
    ],
    [
      'more than there is room for',
      `${TUBE}holes outside, from top: 24X ⌀6 THRU\n  15 from left face, equally spaced`,
      'holes-overlap',
    ],
    ['off the end', `${TUBE}holes outside, from top: 4X ⌀6 THRU\n  2 from left face, equally spaced`, 'hole-off-part'],
    ['on a flat face', 'block 60 × 40 × 20\nholes top: 4X ⌀6 THRU\n  15 from left, equally spaced', 'not-round'],
    [
      'beside the axis',
      `${TUBE}holes outside, from front: 4X ⌀6 THRU\n  15 from left face; 5 up from axis, equally spaced`,
      'located-twice',
    ],
    [
      'over another hole',
      `${TUBE}hole outside, from front: ⌀8 THRU one wall\n  16 from left face\nholes outside, from top: 4X ⌀6 THRU\n  15 from left face, equally spaced`,
      'holes-overlap',
    ],
  ])('%s is marked', (_, text, rule) => {
    expect(faults(bench.part(text))).toContain(rule)
  })

  it('prints as it reads', () => {
    const text = `units mm\npractice ISO\n${TUBE}holes outside, from top: 4X ⌀6 THRU to bore\n  15 from left face, equally spaced\n`
    const printed = printBrief(readBrief(text))
    expect(printed).toContain('equally spaced')
    expect(printBrief(readBrief(printed))).toBe(printed)
  })
})
