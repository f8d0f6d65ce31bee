import { expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'

/*
 * Sheet and scale as a drafter would choose them (common practice, no source): full size where it serves, the smallest
 * sheet that holds views and sizes with ease, enlarged only what could not be read. Scales of ISO 5455:1979.
 */

const kernel = await openKernel()

function sheetOf(lines: string): { format: string; scale: string } {
  const { part, sheet } = compile(`part Trial piece\nunits mm\npractice ISO, first angle\n${lines}\n`, kernel)
  kernel.free(part!.solid)
  return { format: sheet!.format, scale: sheet!.scale }
}

it('does not enlarge a whole block for one small hole', () => {
  expect(sheetOf('block 120 × 80 × 50\nhole top: ⌀1 ↧ 3\n  40 from left; centred up')).toEqual({
    format: 'A3',
    scale: '1:1',
  })
})

it('enlarges a small part with the same hole until that can be read', () => {
  // A circle of 3 mm on paper wants 3:1; of the standard scales 2:1 and 5:1 the part decides: 20 mm within a hand's breadth.
  const { format, scale } = sheetOf('block 20 × 12 × 8\nhole top: ⌀1 ↧ 3\n  5 from left; centred up')
  expect(scale).toBe('5:1')
  expect(['A4', 'A3']).toContain(format)
})

it('fills the smallest sheet with a part of 5 mm', () => {
  expect(sheetOf('disc ⌀5 × 1\nbore ⌀2 THRU')).toEqual({ format: 'A4', scale: '20:1' })
})
