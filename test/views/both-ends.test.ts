import { expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'

// ASME Y14.3-2012 §1.7 and ISO 128-3 §4 (from memory): as many views as are needed, features seen in full lines.

const kernel = await openKernel()

const spindle = (right: string) => {
  const drawing = compile(
    `part      Trial spindle
units     mm
practice  ISO, first angle
general   ISO 2768-mK
turned    axis left-right
          a ⌀60, 40 long
          b ⌀80, 30 long
holes     left: 4X M6 ↧ 12, drill ⌀5 ↧ 16
          on ⌀40 bolt circle, equal, one at 12 o'clock
${right}`,
    kernel,
  )
  kernel.free(drawing.part!.solid)
  return drawing
}

it('shows each end of a turned part that has blind holes in both', () => {
  const { sheet, sizes } = spindle(`holes     right: 3X ⌀6 ↧ 12
          on ⌀50 bolt circle, equal, one at 12 o'clock
`)
  expect(sheet!.views.map((v) => v.id)).toEqual(expect.arrayContaining(['left', 'right']))
  // Each pattern is told where its holes are seen in full lines.
  const viewOf = (word: string) => sizes!.dimensions.find((d) => d.callout.lines.flat().join(' ').includes(word))?.view
  expect([viewOf('M6'), viewOf('3×')]).toEqual(['left', 'right'])
  expect(sizes!.proof.complete).toBe(true)
})

it('shows one end where only that has holes', () => {
  const ids = spindle('').sheet!.views.map((v) => v.id)
  expect(ids).toContain('left')
  expect(ids).not.toContain('right')
})
