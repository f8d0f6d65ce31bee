import { beforeAll, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { envelopesOf } from '../../src/check/measure/form-rule.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { chooseSizes } from '../../src/sizes/choose-sizes.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

it.each([
  ['⌀20 h6 Ⓔ', 'envelope'],
  ['⌀20 h6 (E)', 'envelope'],
  ['⌀20 h6 envelope', 'envelope'],
  ['⌀20 ±0.1 Ⓘ', 'independent'],
  ['⌀20 +0.1 0 independent', 'independent'],
  ['⌀20.02/19.98 (I)', 'independent'],
])('%s says how form goes with size', (written, kind) => {
  const brief = readBrief(`units     mm\npractice  ISO\nround bar ${written}, 120 long, axis left-right\n`)
  expect(brief.marks).toEqual([])
  expect(brief.stock).toMatchObject({
    kind: 'bar',
    diameter: { text: written.match(/[\d.]+/)![0], formRule: { kind } },
  })
})

// ISO 286-1, table 1: IT6 is 13 µm and IT7 21 µm over 18 to 30 mm. ISO 14405-1: Ⓔ is perfect form at maximum material.
it('the envelope stands at the largest shaft and the smallest hole, and leaves the rest of the size to the form', () => {
  const subject = lazySubject(
    onHeader(
      'iso',
      `block     80 × 50 × 30 ±0.05 Ⓔ
hole A    top: ⌀20 H7 Ⓔ THRU
          20 from left; centred up
boss      top: ⌀25 h6 Ⓔ × 8 high
          55 from left; centred up`,
    ),
    kernel,
  )
  const found = envelopesOf(subject.part).map(({ feature, at, form }) => [feature, at.toFixed(3), form.toFixed(3)])
  const letters = chooseSizes(subject.part, drawViews(subject.part, kernel)).dimensions.map((d) => plainText(d.callout))
  subject.free()
  expect(found).toContainEqual(['hole A', '20.000', '0.021'])
  expect(found).toContainEqual(['boss', '25.000', '0.013'])
  expect(found).toContainEqual(['bottom to top', '30.050', '0.100'])
  expect(found).toHaveLength(3)
  for (const said of ['20 H7 Ⓔ', '25 h6 Ⓔ', '30 ±0.05 Ⓔ'])
    expect(
      letters.some((l) => l.includes(said)),
      said,
    ).toBe(true)
})
