import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'

// ISO 128-3:2022 and ASME Y14.3-2012 (from memory): the principal view shows most features with the fewest hidden lines.
// Counts below are taken by hand from the descriptions.

const kernel = await openKernel()

function drawn(text: string) {
  const drawing = compile(text, kernel)
  if (drawing.part) kernel.free(drawing.part.solid)
  return drawing
}
const marksOf = (text: string) => drawn(text).marks.filter((m) => m.rule === 'better-front')
const frontOf = (text: string) => drawn(text).views?.reasons.find((r) => r.startsWith('Front'))

/** A block with a counterbored hole: two circles from its own side, from the other one circle and one hidden circle. */
const bored = (side: string) => `part      Block
units     mm
practice  ISO, third angle
block     60 × 20 × 40
hole      ${side}: ⌀6 THRU, ⌴ ⌀12 ↧ 5
          centred both ways
`

describe('the front', () => {
  it('is said with what it shows and hides, and what the next best side would', () => {
    expect(frontOf(bored('rear'))).toBe(
      'Front, as the brief names it: shows 1 of 1 feature in true shape, 1 hidden line; from the rear it would be 1 and 0.',
    )
    // From the left the counterbore's two walls and floor and the hole's two walls are hidden: five lines, none true.
    expect(frontOf(bored('front'))).toBe(
      'Front, as the brief names it: shows 1 of 1 feature in true shape, 0 hidden lines; from the left it would be 0 and 5.',
    )
  })

  it('is marked where the rear shows as much with fewer hidden lines', () => {
    expect(marksOf(bored('front'))).toEqual([])
    expect(marksOf(bored('rear')).map((m) => [m.weight, m.text])).toEqual([
      [
        'remark',
        'From the rear the part would show 1 of 1 feature with 0 hidden lines; from the front it shows 1 with 1.',
      ],
    ])
  })

  it('is mended by the statement that is offered', () => {
    const text = bored('rear')
    const mend = marksOf(text)[0]!.mends![0]!
    const mended = text.slice(0, mend.span.from) + mend.text + text.slice(mend.span.to)
    const { views, sizes, marks } = drawn(mended)
    expect(views!.views.map((v) => v.id)).toEqual(['rear', 'right', 'pictorial'])
    expect(views!.views[0]!.lines.filter((l) => l.kind === 'hidden')).toEqual([])
    expect(sizes!.proof.complete).toBe(true)
    expect(marks.map((m) => m.rule)).not.toContain('better-front')
  })

  it('is not marked for another side that is drawn anyway', () => {
    // A plate lying flat: its top shows the holes, its front edge hides them.
    const text = `units     mm
practice  ISO
block     60 × 40 × 10
step      front right: 10 from right, 5 from front
holes     top: 2X ⌀6 THRU
          30 apart left-right, centred; centred front-rear
`
    expect(frontOf(text)).toContain('from the top, which is drawn too, it would be')
    expect(marksOf(text)).toEqual([])
  })
})
