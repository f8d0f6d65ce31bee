import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { Stopped } from '../../src/views/exact/watch.ts'

// The public translator round-robin part "as1" (source: test/data/README.md).
const as1 = readFileSync(new URL('../data/as1-oc-214.stp', import.meta.url), 'utf8')

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

describe('a solid at work', () => {
  it('says what it does: each view from its beginning to 100 %, never back', () => {
    const said: string[] = []
    const drawing = compileSolid(as1, kernel, { progress: (what) => said.push(what) })
    kernel.free(drawing.part!.solid)
    const plain = said.filter((what) => !/\d/.test(what))
    expect(plain).toEqual([
      'reading',
      'recognising features',
      'drawing the views',
      'choosing sizes',
      'laying out the sheet',
    ])
    expect(said).toContain('reading, 1 of 1')
    for (const view of ['front', 'top', 'left', 'pictorial']) {
      const shares = said.flatMap((what) => what.match(`^drawing the ${view} view, (\\d+) %$`)?.[1] ?? []).map(Number)
      expect(shares).toEqual([...shares].sort((a, b) => a - b))
      expect(shares.at(-1)).toBe(100)
      expect(shares.length).toBeGreaterThan(5)
    }
  })

  it('ends where it is asked to, and keeps nothing in the kernel', () => {
    const before = kernel.kept()
    for (const asked of [1, 20]) {
      let left = asked
      expect(() => compileSolid(as1, kernel, { stop: () => --left <= 0 })).toThrow(Stopped)
      expect(left).toBe(0)
    }
    expect(kernel.kept()).toBe(before)
  })
})
