import { readFileSync } from 'node:fs'
import { beforeAll, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

// bench/soak-kernel.ts runs 500 builds
it('150 brackets built, cut and freed leave the kernel memory where it was after warm-up', () => {
  const text = readFileSync(new URL('../../examples/vent-bracket.brief', import.meta.url), 'utf8')
  const brief = readBrief(text)
  const once = () => {
    const part = buildPart(brief, kernel)
    if (part.body.faces.length === 0) throw new Error('nothing was built')
    kernel.free(kernel.cut(part.solid, [{ point: [38.1, 0, 0], normal: [1, 0, 0] }], 'intersection').solid)
    kernel.free(part.solid)
  }
  for (let i = 0; i < 10; i++) once()
  const before = kernel.memory()
  for (let i = 0; i < 150; i++) once()
  expect(kernel.memory()).toBe(before)
  expect(kernel.kept()).toBe(0)
})
