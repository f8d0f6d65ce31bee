import { readFileSync } from 'node:fs'
import { beforeAll, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'
import { buildPart } from '../../src/part/build.ts'
import { freeStepFile, readStepFile } from '../../src/read/step-file.ts'
import { writeStep } from '../../src/write/step.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

/** Takes memory until little is left of what the kernel holds: the next loss must show as growth. */
function fillUp(): void {
  const { ___libc_malloc: take } = kernel.oc as unknown as { ___libc_malloc: (bytes: number) => number }
  const PIECE = 2 ** 18
  const until = (grown: boolean, most: number) => {
    const before = kernel.memory()
    for (let i = 0; i < most; i++) {
      if (take(PIECE) === 0) throw new Error('no memory')
      if (grown && kernel.memory() > before) break
    }
    return kernel.memory() - before
  }
  const room = until(true, Infinity)
  const MARGIN = 2 * 2 ** 20
  until(false, Math.max(0, Math.floor((room - MARGIN) / PIECE) - 1))
}

/** Runs `once` until everything has its place, then `rounds` times more; the memory must stay as it is. */
function expectFlat(rounds: number, once: () => void): void {
  for (let i = 0; i < 10; i++) once()
  fillUp()
  once()
  const before = kernel.memory()
  for (let i = 0; i < rounds; i++) once()
  expect(kernel.memory()).toBe(before)
  expect(kernel.kept()).toBe(0)
}

// bench/soak-kernel.ts runs 500 builds
it('60 brackets built, cut, written and freed leave the kernel memory where it was', () => {
  const text = readFileSync(new URL('../../examples/vent-bracket.brief', import.meta.url), 'utf8')
  const brief = readBrief(text)
  expectFlat(60, () => {
    const part = buildPart(brief, kernel)
    if (part.body.faces.length === 0) throw new Error('nothing was built')
    kernel.free(kernel.cut(part.solid, [{ point: [38.1, 0, 0], normal: [1, 0, 0] }], 'intersection').solid)
    if (!writeStep(part, kernel).includes('MANIFOLD_SOLID_BREP')) throw new Error('nothing was written')
    kernel.free(part.solid)
  })
})

it('5000 blocks and pins leave the kernel memory where it was', () => {
  const make = shapes(kernel)
  expectFlat(5000, () => {
    const block = make.box([0, 0, 0], [30, 20, 10])
    const pin = make.cylinder([30, 20, 0], [0, 0, 1], 4, 10)
    kernel.free(block)
    kernel.free(pin)
  })
})

it('an assembly read 10 times leaves the kernel memory where it was', () => {
  const text = readFileSync(new URL('../data/as1-oc-214.stp', import.meta.url), 'utf8')
  expectFlat(10, () => {
    const { file } = readStepFile(text, kernel)
    if (file?.placed.length !== 18) throw new Error('not all was read')
    freeStepFile(file, kernel)
  })
})

it('kernels started at the same time keep apart', async () => {
  const [a, b] = await Promise.all([openKernel(), openKernel()])
  const size = (k: OcctKernel, edge: number) => {
    const solid = shapes(k).box([0, 0, 0], [edge, 1, 1])
    const { volume } = k.properties(solid)
    k.free(solid)
    return volume
  }
  // a block is as large as its edges multiplied
  for (let i = 1; i < 50; i++) {
    expect(size(a, i)).toBeCloseTo(i, 9)
    expect(size(b, 2 * i)).toBeCloseTo(2 * i, 9)
  }
})
