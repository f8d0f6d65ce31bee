import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

// Volumes by the closed formulas of prism, cylinder and cone. ASME Y14.5-2018 4.6.12 and ISO 15786 (from memory): a
// depth runs from the surface that the hole is worked into.
const bench = openBench()

const BLOCK = 'block 120 × 70 × 45'
const STEP = 'step top left: 30 from left, 12 from top'
const HERE = '15 from left; 15 from front'
const STEPPED = 120 * 70 * 45 - 30 * 12 * 70
const disc = (d: number, h: number) => (Math.PI / 4) * d * d * h
/** A cone of 118° below a drill of the diameter. */
const point = (d: number) => disc(d, d / 2 / Math.tan((59 * Math.PI) / 180)) / 3

describe('depths run from the surface that a feature is worked into', () => {
  it.each([
    ['a counterbore on a step', `hole top: ⌀9 THRU, ⌴ ⌀15 ↧ 20\n  ${HERE}`, disc(9, 33 - 20) + disc(15, 20)],
    ['a blind hole on a step', `hole top: ⌀8 ↧ 10\n  ${HERE}`, disc(8, 10) + point(8)],
    ['a tapped hole on a step', `hole top: M8 ↧ 15, drill ⌀6.8 ↧ 25\n  ${HERE}`, disc(6.8, 25) + point(6.8)],
    [
      'a countersink on a step',
      `hole top: ⌀9 THRU, ⌵ ⌀15 × 90°\n  ${HERE}`,
      disc(9, 33 - 3) + (Math.PI / 3) * 3 * (7.5 ** 2 + 7.5 * 4.5 + 4.5 ** 2),
    ],
    ['a pocket on a step', `pocket top: 10 × 20 ↧ 5\n  ${HERE}`, 10 * 20 * 5],
    [
      'a slot on a step',
      'slot top: 8 × 20 overall ↧ 6, long way front-rear\n  15 from left; centred up',
      6 * (8 * 12 + Math.PI * 16),
    ],
    [
      'a hole into the wall of the step',
      'hole left: ⌀8 ↧ 10\n  centred across; 40 from bottom',
      disc(8, 10) + point(8),
    ],
  ])('%s', (_, feature, taken) => {
    const part = bench.part(`${BLOCK}\n${STEP}\n${feature}`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(STEPPED - taken, 6)
  })

  it('counts alike where the step is stated after the hole', () => {
    const part = bench.part(`${BLOCK}\nhole top: ⌀9 THRU, ⌴ ⌀15 ↧ 20\n  ${HERE}\n${STEP}`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(STEPPED - disc(9, 13) - disc(15, 20), 6)
  })

  it('runs from the floor of a pocket and from the end of a boss', () => {
    const pocket = bench.part(
      `${BLOCK}\npocket top: 40 × 36 ↧ 14\n  centred both ways\nhole top: ⌀8 ↧ 10\n  centred both ways`,
    )
    expect(faults(pocket)).toEqual([])
    expect(pocket.properties.volume).toBeCloseTo(120 * 70 * 45 - 40 * 36 * 14 - disc(8, 10) - point(8), 6)
    const boss = bench.part(
      `${BLOCK}\nboss top: ⌀30 × 9 high\n  centred both ways\nhole top: ⌀8 ↧ 20\n  centred both ways`,
    )
    expect(faults(boss)).toEqual([])
    expect(boss.properties.volume).toBeCloseTo(120 * 70 * 45 + disc(30, 9) - disc(8, 20) - point(8), 6)
  })

  it('says where a depth goes through what the step has left', () => {
    expect(faults(bench.part(`${BLOCK}\n${STEP}\nhole top: ⌀8 ↧ 34\n  ${HERE}`))).toEqual(['too-deep'])
    const under = 'step bottom left: 30 from left, 20 from bottom'
    expect(faults(bench.part(`${BLOCK}\n${STEP}\n${under}\nhole top: ⌀8 ↧ 14\n  ${HERE}`))).toEqual(['too-deep'])
  })

  it('marks a member that stands half on a step, and counts from the higher surface', () => {
    const part = bench.part(`${BLOCK}\n${STEP}\nhole top: ⌀9 THRU, ⌴ ⌀15 ↧ 20\n  30 from left; 15 from front`)
    expect(faults(part)).toEqual([])
    const [mark] = part.marks.filter((m) => m.rule === 'two-levels')
    expect(mark?.text).toContain('step 1')
    // half of the counterbore's upper 12 mm is cut in air
    expect(part.properties.volume).toBeCloseTo(STEPPED - disc(9, 25) - disc(15, 20) + disc(15, 12) / 2, 6)
  })

  it('refuses a depth whose surface a later pocket takes away', () => {
    const part = bench.part(
      `${BLOCK}\nhole top: ⌀8 ↧ 30\n  centred both ways\npocket top: 40 × 36 ↧ 14\n  centred both ways`,
    )
    const [mark] = part.marks.filter((m) => m.rule === 'depth-from-where')
    expect(mark?.text).toContain('pocket 1 is stated after hole 1')
  })

  it('refuses a hole where a step has left nothing', () => {
    expect(faults(bench.part(`${BLOCK}\n${STEP}\nhole front: ⌀6 ↧ 10\n  10 from left; 40 from bottom`))).toContain(
      'hole-off-part',
    )
  })
})
