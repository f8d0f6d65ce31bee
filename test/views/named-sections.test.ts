import { describe, expect, it } from 'vitest'
import { drawViews } from '../../src/views/draw-views.ts'
import { openBench } from '../part/workbench.ts'

/** What the plane of a section goes through: worked out by hand from the numbers of each brief. */
describe('a section through a named feature', () => {
  const bench = openBench()

  const viewsOf = (text: string) => drawViews(bench.part(text), bench.kernel)
  const cut = (text: string) => viewsOf(text).views.find((v) => v.kind === 'section')!
  const shaft = (side: string, views: string) => `turned axis left-right
  body ⌀40, 100 long
  nose ⌀30, 40 long
keyseat body, ${side}: 10 wide × 5 deep × 60 long
  left end 20 from body left face
views ${views}`

  it.each(['top', 'bottom', 'front', 'rear'])('cuts a keyseat on the %s across the axis', (side) => {
    const section = cut(shaft(side, 'front; section A-A through keyseat'))
    expect(section.side).toBe('left')
    expect(section.hatched).toHaveLength(1)
    // ⌀40 whole, but for the 5 taken off at the keyseat
    const { min, max } = section.box
    expect(max[0] - min[0]).toBeCloseTo(40, 6)
    expect(max[1] - min[1]).toBeCloseTo(40, 6)
  })

  it.each(['top', 'bottom'])('goes half way into the keyseat where it must face it: %s', (side) => {
    const section = cut(shaft(side, 'front; section A-A through keyseat as top'))
    expect(section.hatched).toHaveLength(1)
    // the upper keyseat leaves the whole shaft to be seen, the lower one a chord of it between its floor and its mouth
    const { min, max } = section.box
    const wide = max[1] - min[1]
    if (side === 'top') expect(wide).toBeCloseTo(40, 6)
    else {
      expect(wide).toBeLessThan(2 * Math.sqrt(20 ** 2 - 15 ** 2))
      expect(wide).toBeGreaterThan(10)
    }
  })

  it('goes half way down a hole where it lies square to it', () => {
    const section = cut(`block 80 × 60 × 20
hole top: ⌀10 THRU
  centred both ways
views front; section A-A through hole 1 as top`)
    expect(section.hatched).toHaveLength(1)
    // the outline of the block and the circle of the hole
    expect(section.hatched[0]).toHaveLength(2)
  })
})
