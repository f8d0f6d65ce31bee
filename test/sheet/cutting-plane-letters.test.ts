import { beforeAll, expect, it } from 'vitest'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from '../check/subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

// Sizes begin at the ends of a view's border; a letter on their way once drove this part to an A1 at 5:1. That a sheet
// is no larger than its drawing needs is common practice, no source.
it('leaves the end of a taper free for its diameter', () => {
  const subject = lazySubject(
    onHeader(
      'iso',
      `turned axis left-right
  inlet M24 × 1.5 - 6g, 18 long
  hex ⌀38, 14 long
  body ⌀22, 30 long
  tip ⌀22 tapered to ⌀10, 16 long
flats hex: 6X 32 A/F
hole right: ⌀3 H8 THRU
  on axis
groove inlet: 3 wide, bottom ⌀21.7
  right side at hex left face
chamfer inlet left edge: 1.5 × 45°
views front; section A-A`,
    ),
    kernel,
  )
  expect(['A4', 'A3']).toContain(subject.sheet.format)
  const tip = subject.sizes.dimensions.find((d) => d.value === 10 && d.direction === 'diameter')!
  expect(subject.sheet.items.some((i) => i.tie?.dimension === tip.id)).toBe(true)
  subject.free()
})
