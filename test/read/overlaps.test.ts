import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'

// The public translator round-robin part "as1" (source: test/data/README.md): its rod, ⌀10, lies in bores of ⌀10.
const as1 = readFileSync(new URL('../data/as1-oc-214.stp', import.meta.url), 'utf8')

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const overlaps = (text: string) => {
  const { marks, part, sheet } = compileSolid(text, kernel)
  kernel.free(part!.solid)
  expect(sheet).toBeDefined()
  return marks.filter((m) => m.rule === 'solids-overlap').map((m) => m.text)
}

describe('an assembly whose parts take up the same room', () => {
  it('is not as1 as its makers left it', () => {
    expect(overlaps(as1)).toEqual([])
  })

  it('names the parts, how often and where, and draws them', () => {
    // the rod with its two nuts, on z = 60, raised by 2: it runs into the wall of each bracket's bore
    const placed = /#(\d+) = CARTESIAN_POINT\('',\(-10\.,75\.,60\.\)\)/.exec(as1)
    expect(placed).not.toBeNull()
    const raised = as1.replace(placed![0], placed![0].replace('60.', '62.'))
    const said = overlaps(raised)
    expect(said).toHaveLength(1)
    expect(said[0]).toMatch(/^L-bracket and rod take up the same room, 2 times: at .* mm one runs into the other/)
    const [, y, z] = /at (.*) mm/.exec(said[0]!)![1]!.split(', ').map(Number)
    // a place on the rod, ⌀10 about y = 75, z = 62
    expect(Math.hypot(y! - 75, z! - 62)).toBeLessThan(5.01)
  })
})
