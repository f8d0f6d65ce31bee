import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

function drawn(general: string, hole = '⌀6.6') {
  const drawing = compile(
    `part Clip plate
number CC-0104
units mm
practice ISO
material steel S235JR
${general}
plate 60 long × 40 wide × 6 thick, face front
holes front: 2X ${hole} THRU
  2 across 40 apart, centred; 20 from bottom
`,
    kernel,
  )
  kernel.free(drawing.part!.solid)
  const stamp = drawing.sheet!.items.some((i) => i.item === 'text' && i.role === 'stamp')
  return { complete: drawing.sizes!.proof.complete, stamp }
}

// ASME Y14.5-2018 4.1(a), from memory: every size has a tolerance; a part without any cannot be accepted or refused.
describe('a sheet whose sizes are proven complete', () => {
  it('stays preliminary while a size has no tolerance, of its own or of the title block', () => {
    expect(drawn('')).toEqual({ complete: true, stamp: true })
    expect(drawn('general ISO 2768-m')).toEqual({ complete: true, stamp: false })
    expect(drawn('', '⌀6.6 ±0.1')).toEqual({ complete: true, stamp: true })
    expect(drawn('general ISO 2768-m', '⌀6.6 ±0.1')).toEqual({ complete: true, stamp: false })
  })
})
