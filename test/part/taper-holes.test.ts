import { expect, it } from 'vitest'
import { iso } from '../sizes/sized.ts'

// ⌀40 to ⌀30 over 80: at its larger side, 30 − w from the left, the radius is 20 − (30 − w) / 16 (similar triangles)
it.each([
  ['⌀6 ↧ 12, flat bottom', 3, 12],
  ['⌀6 THRU, ⌴ ⌀11 ↧ 5', 5.5, 5],
])('counts %s in a taper from the highest material under it', (call, w, deep) => {
  const { part, texts } = iso(
    `turned axis left-right\n  a ⌀40 tapered to ⌀30, 80 long\nhole a, from top: ${call}\n  30 from left\n`,
  )
  const levels = part.body.faces.flatMap(({ surface }) =>
    surface.kind === 'plane' && Math.abs(surface.axes.z[2]) > 0.999 ? [surface.axes.origin[2]] : [],
  )
  expect(levels).toEqual([expect.closeTo(20 - (30 - w) / 16 - deep, 6)])
  expect(texts).toEqual(['⌀40', '⌀30', '80', '30', `${call.replace(' THRU', '')}, centred`])
})
