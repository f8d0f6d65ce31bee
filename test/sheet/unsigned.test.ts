import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
}, 60_000)

const BRIEF = `part Trial
number T-1 rev A
units inch
practice ASME
general .XX ±.01 .XXX ±.005
material aluminum
drawn V. Drawer, 2024-01-02
checked P. Checker, 2024-01-03
approved Q. Approver, 2024-01-04
plate 4.00 × 2.00 × .25
`

const words = (text: string): string => {
  const { sheet, part } = compile(text, kernel)
  if (part) kernel.free(part.solid)
  return sheet!.items.map((i) => (i.item === 'text' ? i.text : '')).join('\n')
}

// Common practice, no source: a signature stands for the sheet as it was seen; one that was sent back has none.
describe('a sheet that must change', () => {
  it('carries who drew it, and no other signature', () => {
    const finished = words(BRIEF)
    for (const name of ['V. DRAWER', 'P. CHECKER', 'Q. APPROVER', '2024-01-04']) expect(finished).toContain(name)
    expect(finished).not.toContain('PRELIMINARY')
    const faulty = words(`${BRIEF}hole\n`)
    expect(faulty).toContain('PRELIMINARY')
    expect(faulty).toContain('V. DRAWER')
    for (const name of ['P. CHECKER', '2024-01-03', 'Q. APPROVER', '2024-01-04']) expect(faulty).not.toContain(name)
    // The desks are still there to sign at.
    for (const heading of ['CHECKED', 'APPROVED']) expect(faulty).toContain(heading)
  })
})
