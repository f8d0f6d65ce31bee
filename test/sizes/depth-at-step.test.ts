import { beforeAll, expect, it } from 'vitest'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from '../check/subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

// The bottom of a bore and the end of a step outside are two places, whatever their numbers: a depth that happens to
// equal a sum of lengths is no size said twice (common practice, no source).
it.each([
  [
    'a flat bottom level with a shoulder',
    `turned axis left-right; lengths from left face
  body ⌀32, to 50
  tip ⌀25, to 75
bore left: ⌀19 ↧ 50, flat bottom`,
  ],
  [
    'a drill level with the beginning of a taper',
    `turned axis left-right
  inlet ⌀24, 18 long
  body ⌀22, 44 long
  tip ⌀22 tapered to ⌀10, 16 long
bore left: ⌀14 ↧ 62, point 118°`,
  ],
  [
    'a counterbore level with a shoulder',
    `turned axis left-right
  flange ⌀60, 12 long
  hub ⌀40, 30 long
hole left: ⌀12 THRU, ⌴ ⌀25 ↧ 12
  on axis`,
  ],
])('%s: both are sized, and nothing is too many', (_, lines) => {
  const subject = lazySubject(onHeader('iso', lines), kernel)
  const { missing, repeated, sentence } = subject.sizes.proof
  expect([...missing, ...repeated].map((m) => m.text)).toEqual([])
  expect(sentence).toMatch(/^complete/)
  expect(subject.sizes.dimensions.filter((d) => d.derived)).toEqual([])
  subject.free()
})
