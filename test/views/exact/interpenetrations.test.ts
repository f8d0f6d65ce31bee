import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import { type OcctKernel, openKernel } from '../../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../../src/kernel/shapes.ts'
import { interpenetrations } from '../../../src/views/exact/interpenetrations.ts'
import { together } from './assembly.ts'
import { randomSolid } from './random-solids.ts'

// Sources: descriptive geometry worked by hand; for random solids the volume that the kernel's boolean finds in common.

let kernel: OcctKernel
let make: Shapes
beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

const pairs = (...solids: SolidKey[]) => interpenetrations(together(solids.map((s) => kernel.body(s))))
const block = () => make.box([-10, -10, -5], [10, 10, 5])
const drilled = (r: number) => make.cut(block(), make.cylinder([0, 0, -10], [0, 0, 1], r, 20))
const pin = () => make.cylinder([0, 0, -20], [0, 0, 1], 5, 40)

describe('solids that take up the same room', () => {
  it('are a bar and the block it runs into; told once, with a place on the block’s skin', () => {
    const found = pairs(block(), make.box([-1, -2, -20], [3, 2, 20]))
    expect(found).toHaveLength(1)
    const [x, y, z] = found[0]!.at
    expect([-1, 3]).toContain(Math.round(x * 1e9) / 1e9)
    expect([-2, 2]).toContain(Math.round(y * 1e9) / 1e9)
    expect(Math.abs(z)).toBeCloseTo(5, 9)
  })

  it.each([
    ['a pin in a hole that is smaller by 0.01', 4.995, 1],
    ['a pin in a hole of its size', 5, 0],
    ['a pin in a hole that is larger', 5.01, 0],
  ])('%s', (_, r, count) => {
    expect(pairs(drilled(r), pin())).toHaveLength(count)
  })

  it.each<[string, number, number]>([
    ['a ball that pokes through the middle of a face', 12, 1],
    ['a ball that just touches a face', 15, 0],
    ['a ball clear of the face', 16, 0],
  ])('%s', (_, z, count) => {
    expect(pairs(block(), make.sphere([3.7, -2.9, z], 10))).toHaveLength(count)
  })

  it.each<[string, Vec3, Vec3]>([
    ['a block that stands on another', [-5, -5, 5], [5, 5, 9]],
    ['one flush with its sides', [-10, -10, 5], [10, 10, 9]],
    ['one that stands over its edge', [-5, -10, 5], [25, 10, 9]],
    ['one beside it, longer', [10, -30, -5], [14, 30, 5]],
    ['one that meets it in an edge', [10, -10, 5], [20, 10, 9]],
    ['one that meets it in a corner', [10, 10, 5], [20, 20, 9]],
  ])('only touch: %s', (_, min, max) => {
    expect(pairs(block(), make.box(min, max))).toEqual([])
  })

  it('are none in as1', () => {
    const text = readFileSync(new URL('../../data/as1-oc-214.stp', import.meta.url), 'utf8')
    const whole = kernel.body(kernel.readStep(text))
    expect(interpenetrations(whole)).toEqual([])
  })

  it('are those of random pairs whose common volume is not nought, unless one lies within the other', () => {
    const kinds = ['box', 'cylinder', 'cone', 'sphere', 'torus']
    const volume = (solid: SolidKey) => kernel.properties(solid).volume
    let [overlap, apart] = [0, 0]
    for (let seed = 1; seed <= 24; seed++) {
      const a = randomSolid(make, seed, kinds)!.solid
      // half of them shifted far enough to come clear or near
      const by: Vec3 = seed % 2 === 0 ? [0.137, 0.291, -0.173] : [9 + (seed % 5), 0.4, 0.3 * seed]
      const b = make.translate(randomSolid(make, seed + 100, kinds)!.solid, by)
      const common = volume(make.common(a, b))
      const within = Math.abs(common - Math.min(volume(a), volume(b))) < 1e-6 * common
      if (within && common > 0) continue
      if (common > 0) overlap++
      else apart++
      expect(pairs(a, b).length > 0, `seed ${seed}, common ${common}`).toBe(common > 1e-6)
    }
    expect(overlap).toBeGreaterThan(8)
    expect(apart).toBeGreaterThan(3)
  })
})
