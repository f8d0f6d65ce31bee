import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Body } from '../../src/kernel/body.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { type Placement, placedBody, placedProperties } from '../../src/kernel/placed-body.ts'
import { solidProperties } from '../../src/kernel/properties.ts'
import { boxOfFace, readBody } from '../../src/kernel/read-body.ts'
import { shapes } from '../../src/kernel/shapes.ts'
import { freeStepFile, readStepFile } from '../../src/read/step-file.ts'

// Source of the checks: the kernel's own placing of the same shapes.

// The public translator round-robin part "as1" (source: test/data/README.md).
const as1 = readFileSync(new URL('../data/as1-oc-214.stp', import.meta.url), 'utf8')

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

/** Every number of one is that of the other to so much of its size, everything else is the same. */
function expectAlike(a: unknown, b: unknown, within = 1e-9, where = ''): void {
  if (typeof a === 'number' && typeof b === 'number') {
    if (Math.abs(a - b) > within * Math.max(1, Math.abs(b))) expect(a, where).toBe(b)
  } else if (typeof a === 'object' && a !== null && typeof b === 'object' && b !== null) {
    expect(Object.keys(a), where).toEqual(Object.keys(b))
    for (const key of Object.keys(a))
      expectAlike((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], within, `${where}.${key}`)
  } else expect(a, where).toBe(b)
}

describe('an assembly in its places', () => {
  it('is as1 as the kernel places it: faces, edges, bounds, volume, surface, centre of gravity', () => {
    const { file } = readStepFile(as1, kernel)
    const { whole } = file!
    const shape = kernel.shapeOf(whole)
    expectAlike(kernel.body(whole), readBody(kernel.oc, shape))
    // the kernel integrates over the file's splines to some 1e-8
    expectAlike(kernel.properties(whole), solidProperties(kernel.oc, shape, true), 1e-7)
    freeStepFile(file!, kernel)
  })

  it('can still be read when its parts were given back first', () => {
    const { file } = readStepFile(as1, kernel)
    for (const { solid } of file!.parts) kernel.free(solid)
    const shape = kernel.shapeOf(file!.whole)
    expect(kernel.body(file!.whole)).toEqual(readBody(kernel.oc, shape))
    expect(kernel.properties(file!.whole)).toEqual(solidProperties(kernel.oc, shape, true))
    kernel.free(file!.whole)
  })

  it('turns and moves bodies of every kind of face as the kernel does, bounds and all', () => {
    const make = shapes(kernel)
    const bodies = [
      make.fuse(make.box([0, 0, 0], [20, 12, 8]), make.sphere([18, 6, 8], 5)),
      make.fuse(make.cylinder([0, 0, 0], [0, 0, 1], 6, 14), make.torus([0, 0, 14], [0, 0, 1], 6, 2)),
      make.cone([0, 0, 0], [1, 0, 0], 7, 3, 12),
    ]
    const [c, s] = [Math.cos(0.6), Math.sin(0.6)]
    const at: Placement = {
      move: [3, -4, 5],
      columns: [
        [c, s, 0],
        [-s, c, 0],
        [0, 0, 1],
      ],
    }
    const degrees = (0.6 * 180) / Math.PI
    const placed = bodies.map((solid) => make.translate(make.rotate(solid, [0, 0, 0], [0, 0, 1], degrees), at.move))
    let asked = 0
    const together: Body = placedBody(
      bodies.map((solid, i) => ({
        body: kernel.body(solid),
        at,
        box: () => {
          asked++
          return boxOfFace(kernel.oc, kernel.shapeOf(placed[i]!))
        },
      })),
    )
    // not for the cone: it reaches furthest on its rims
    expect(asked).toBe(2)
    let [f, e] = [0, 0]
    for (const solid of placed) {
      const one = kernel.body(solid)
      const mine = together.faces.slice(f, f + one.faces.length)
      expectAlike(
        mine.map((x) => x.surface),
        one.faces.map((x) => x.surface),
      )
      const edges = together.edges.slice(e, e + one.edges.length)
      expectAlike(
        edges.map((x) => x.curve),
        one.edges.map((x) => x.curve),
      )
      f += one.faces.length
      e += one.edges.length
    }
    const boxes = placed.map((solid) => kernel.body(solid).box)
    for (const k of [0, 1, 2] as const) {
      expect(together.box.min[k]).toBeCloseTo(Math.min(...boxes.map((b) => b.min[k])), 6)
      expect(together.box.max[k]).toBeCloseTo(Math.max(...boxes.map((b) => b.max[k])), 6)
    }
    const sum = placedProperties(bodies.map((solid) => ({ properties: kernel.properties(solid), at })))
    const each = placed.map((solid) => kernel.properties(solid))
    expect(sum.volume).toBeCloseTo(
      each.reduce((v, p) => v + p.volume, 0),
      6,
    )
    const moment = each.reduce((m, p) => m + p.volume * p.centroid[0], 0)
    expect(sum.centroid[0]).toBeCloseTo(moment / sum.volume, 9)
  })
})
