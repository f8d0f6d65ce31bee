import { describe, expect, it } from 'vitest'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import type { Dimension } from '../../src/sizes/dimension.ts'
import { iso } from './sized.ts'

/*
 * A leader comes to a chamfer through the air, never through the material (common practice, no source): a step of 0.1 mm
 * from the chamfer against the closed form of the body, a ring ⌀62/⌀45 × 12 and a block 40 × 30.
 */

function airSides(d: Dimension, inAir: (x: number, y: number) => boolean): boolean[] {
  const { measured } = d
  if (measured.kind !== 'leader') throw new Error('no leader')
  return measured.targets.map((t) => {
    if (t.kind !== 'point' || !t.normal) throw new Error('no way out')
    return inAir(t.at[0] + 0.1 * t.normal[0], t.at[1] + 0.1 * t.normal[1])
  })
}

describe('the way out of a chamfer', () => {
  it('is into the bore at the bore’s edges, outwards at the outer ones', () => {
    const { sizes } = iso(`tube ⌀62 outside, ⌀45 inside, 12 long, axis left-right
chamfer outer edges: 2X 1 × 45°
chamfer bore edges: 2X 0.5 × 45°
`)
    // Above the axis or below, the material begins past the bore's cone and ends before the outer one.
    const inAir = (x: number, y: number) => {
      const end = 6 - Math.abs(x - 6)
      const inner = 22.5 + Math.max(0, 0.5 - end)
      const outer = 31 - Math.max(0, 1 - end)
      return end < 0 || Math.abs(y) < inner || Math.abs(y) > outer
    }
    for (const text of ['2× 1 × 45°', '2× 0.5 × 45°']) {
      const note = sizes.dimensions.find((d) => plainText(d.callout).includes(text))
      expect(note, text).toBeDefined()
      const sides = airSides(note!, inAir)
      expect(sides.length, text).toBeGreaterThan(1)
      expect(sides, text).not.toContain(false)
    }
  })

  it('is outwards at a block’s corner', () => {
    const { sizes, views } = iso(`block 40 × 30 × 10
chamfer top left edge: 3 × 45°
`)
    const view = views.views.find((v) => v.id === sizes.dimensions.find((d) => d.measured.kind === 'leader')?.view)!
    const [left, top] = [view.box.min[0], view.box.max[1]]
    const note = sizes.dimensions.find((d) => d.measured.kind === 'leader')!
    expect(airSides(note, (x, y) => x - left + (top - y) < 3)).toEqual([true])
  })
})
