import { expect, it } from 'vitest'
import { pointAt } from '../../src/geometry/evaluate.ts'
import { iso } from '../sizes/sized.ts'

// ISO 128-2, ASME Y14.2-2014 §2.7 (from memory): a centre line passes the outline that is drawn by a little; a section
// out of the view shows the cut alone, not the larger step behind it.
it('crosses a section across a shaft by its own outline, however large the collar behind it', () => {
  const { views } = iso(`turned axis left-right
  collar ⌀50, 12 long
  seat ⌀35, 40 long
  stem ⌀18 h9, 30 long
keyseat seat, front: 10 P9 wide × 5 deep × 28 long
  left end 6 from collar right face
`)
  const section = views.views.find((v) => v.kind === 'section')!
  const centre = section.lines.filter((l) => l.kind === 'centre' && l.curve.kind === 'line')
  expect(centre).toHaveLength(2)
  for (const { curve } of centre)
    for (const t of [0, 1]) expect(Math.hypot(...pointAt(curve, t))).toBeCloseTo(35 / 2, 9)
})
