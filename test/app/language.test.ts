import { beforeAll, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { languageBlocks } from '../brief/language-blocks.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

it.each(languageBlocks().map((block) => [block.title, block.text]))(
  'the example of %s builds, draws and is complete',
  (_, text) => {
    const { part, sheet, marks } = compile(text, kernel)
    if (part) kernel.free(part.solid)
    expect(marks.filter((mark) => mark.weight === 'must change').map((mark) => mark.text)).toEqual([])
    expect(part!.body.faces.length).toBeGreaterThan(0)
    expect(sheet!.views.length).toBeGreaterThan(0)
  },
)
