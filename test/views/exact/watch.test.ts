import { beforeAll, describe, expect, it } from 'vitest'
import type { Body } from '../../../src/kernel/body.ts'
import { type OcctKernel, openKernel } from '../../../src/kernel/open.ts'
import { shapes } from '../../../src/kernel/shapes.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import { ASK_EVERY, Stopped } from '../../../src/views/exact/watch.ts'
import { moved, together } from './assembly.ts'
import { frameAlong, PRINCIPAL } from './random-solids.ts'
import { loft } from './spline-solids.ts'

// Source of the checks: counts of the body's own edges and faces, each of which is a step at least.

let kernel: OcctKernel
let rows: Body

beforeAll(async () => {
  kernel = await openKernel()
  const make = shapes(kernel)
  const bored = kernel.body(make.cut(make.box([0, 0, 0], [40, 30, 10]), make.cylinder([20, 15, -1], [0, 0, 1], 6, 12)))
  rows = together(Array.from({ length: 60 }, (_, i) => moved(bored, [0, 50 * i, 3 * i])))
})

const iso = frameAlong([1, -1, 1])

describe('a watched drawing', () => {
  it('tells how far it is, from edges and faces to their end, and draws the same', () => {
    const told: [number, number][] = []
    const view = exactView(rows, iso, { progress: (done, total) => told.push([done, total]) })
    const parts = rows.edges.length + rows.faces.length
    expect(new Set(told.map(([, total]) => total))).toEqual(new Set([2 * parts]))
    expect(told[told.length - 1]).toEqual([2 * parts, 2 * parts])
    for (let i = 1; i < told.length; i++) expect(told[i]![0]).toBeGreaterThanOrEqual(told[i - 1]![0])
    // every edge and face is a step at least when read, when projected and when decided
    expect(told.length).toBeGreaterThan((2 * parts) / ASK_EVERY)
    expect(view).toEqual(exactView({ ...rows }, iso))
  })

  it('ends at the first asking that says so, wherever that falls', () => {
    let asked = 0
    exactView({ ...rows }, iso, { stop: () => ++asked < 0 })
    expect(asked).toBeGreaterThan(20)
    for (const at of [1, 2, Math.floor(asked / 2), asked]) {
      let count = 0
      expect(() => exactView({ ...rows }, iso, { stop: () => ++count === at })).toThrow(Stopped)
      expect(count).toBe(at)
    }
  })

  it('leaves a body that it was stopped on whole', () => {
    const body = { ...rows }
    let count = 0
    expect(() => exactView(body, iso, { stop: () => ++count === 5 })).toThrow(Stopped)
    expect(exactView(body, iso)).toEqual(exactView(rows, iso))
  })

  it('is asked within a single spline surface', () => {
    const body = kernel.body(
      loft(
        kernel,
        [
          { centre: [0, 0, 0], major: 10, minor: 10 },
          { centre: [4, 1, 15], major: 6, minor: 5 },
          { centre: [0, 0, 30], major: 9, minor: 9 },
        ],
        false,
      ),
    )
    let asked = 0
    exactView(body, PRINCIPAL.front, { stop: () => ++asked < 0 })
    expect(body.faces).toHaveLength(3)
    // its few edges and faces alone would not be asked about at all
    expect(body.edges.length + body.faces.length).toBeLessThan(ASK_EVERY)
    expect(asked).toBeGreaterThan(5)
  })
})
