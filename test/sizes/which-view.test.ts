import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { readBrief } from '../../src/brief/read.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { asme, iso } from './sized.ts'

/*
 * Sizes stand where the feature shows its true shape and visible (ASME Y14.5-2018 4.1(b) and 4.1(i), ISO 129-1; from
 * memory).
 */
describe('a radius stands where its round shows true', () => {
  it('the toe of a rolled angle in the view along the angle, though a corner round cuts an arc out of it', () => {
    const s = asme(`angle rolled, 1/4 STK, inside R .25, toe R .19
  upright 3.00 high, at rear; base 2.00 toward front; length 3.00
slots base, from top: 2X .281 × .75 overall THRU, long way front-rear
  1.500 apart, centred; centres 1.25 from heel
round base, toe corners: 2X R.19
`)
    const views = s.sizes.dimensions.filter((d) => d.direction === 'radius').map((d) => [d.id, d.view])
    expect(views).toContainEqual(['stock/radius/toe rounds', 'right'])
    expect(views).toContainEqual(['round 1/radius/round 1', 'top'])
  })
})

// ASME Y14.38 abbreviates EQUALLY SPACED; repetitive features evenly spread are said so (ASME Y14.5-2018; from memory).
describe('EQL SP', () => {
  const plate = (holes: string) => `plate 6.00 × 6.00 × .50
hole B top: ⌀1.500 THRU
  centred both ways
${holes}`
  it('stands at every circle of a face, and at two holes that stand on no centre line', () => {
    const s = asme(
      plate(`holes top: 6X ⌀.281 THRU
  on ⌀2.500 bolt circle about hole B, equal, one at 12 o'clock
holes top: 4X ⌀.406 THRU
  on ⌀4.500 bolt circle about hole B, equal, first at 45°
holes top: 2X ⌀.250 THRU
  on ⌀3.500 bolt circle about hole B, equal, first at 22.5°
`),
    )
    for (const text of ['6X ⌀.281 THRU', '4X ⌀.406 THRU', '2X ⌀.250 THRU']) expect(s.texts).toContain(`${text}, EQL SP`)
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('is left out at two opposite holes on a centre line', () => {
    const s = asme(plate("holes top: 2X ⌀.250 THRU\n  on ⌀3.500 bolt circle about hole B, equal, one at 12 o'clock\n"))
    expect(s.texts).toContain('2X ⌀.250 THRU')
  })
})

describe('a size at a hidden line', () => {
  const hub = `turned axis left-right
  left ⌀50, 20 long
  flange ⌀120, 14 long
  right ⌀60, 30 long
bore left face: ⌀30 THRU
holes flange left face: 6X ⌀9 THRU
  on ⌀95 bolt circle, equal, one at 12 o'clock
holes right face: 4X M5 ↧ 10
  on ⌀45 bolt circle, equal, first at 45°
`
  it('says which view or section would show it, as a statement that does', () => {
    const s = iso(hub)
    const marks = s.sizes.marks.filter((m) => m.rule === 'size-to-hidden-line')
    const [mend] = marks.flatMap((m) => m.mends ?? [])
    const views = s.views.views.map((v) => v.id)
    if (views.includes('right')) {
      expect(marks).toEqual([])
      return
    }
    expect(mend!.text).toMatch(/^views .*right.*; section A-A as front; pictorial$/m)
    const { text } = s.part.brief
    const mended = text.slice(0, mend!.span.from) + mend!.text + text.slice(mend!.span.to)
    expect(readBrief(mended).marks).toEqual([])
    const after = iso(mended.slice(mended.indexOf('turned')))
    expect(after.sizes.marks.filter((m) => m.rule === 'size-to-hidden-line')).toEqual([])
    expect(after.find('4× M5 ↧ 10').view).toBe('right')
  })
})

describe('the angle of the first hole of a circle', () => {
  it('is measured beyond the circle, where the mark at the hole is drawn, not in the bore', async () => {
    const kernel = await openKernel()
    const drawing = compile(
      `part Trial
units inch
practice ASME
plate 6.00 × 6.00 × .50
hole B top: ⌀1.500 THRU
  centred both ways
holes top: 4X ⌀.406 THRU
  on ⌀4.500 bolt circle about hole B, equal, first at 45°
`,
      kernel,
    )
    const { sheet, sizes } = drawing
    const angle = sizes!.dimensions.find((d) => d.measured.kind === 'angle')!
    const arcs = sheet!.items.flatMap((i) =>
      i.item === 'stroke' && i.kind === 'dimension' && i.tie?.dimension === angle.id && i.curve.kind === 'arc'
        ? [i.curve.r]
        : [],
    )
    const { scale } = sheet!.views.find((v) => v.id === angle.view)!
    expect(arcs.length).toBeGreaterThan(0)
    for (const r of arcs) expect(r).toBeGreaterThan(2.25 * 25.4 * scale)
    kernel.free(drawing.part!.solid)
  })
})

// Extension lines do not cross the outline where it can be helped (common practice, no source).
describe('the diameter of a turned step', () => {
  it('is taken from the end with nothing larger beyond it', () => {
    const s = iso(`turned axis left-right
  a ⌀20, 20 long
  b ⌀60, 6 long
  c ⌀25, 30 long
  d ⌀18, 20 long
groove c: 2 wide, bottom ⌀22
  right side 10 from c right face
`)
    const at = (text: string) => {
      const { measured } = s.find(text)
      if (measured.kind !== 'linear') throw new Error(`${text} is ${measured.kind}`)
      return [measured.a[0], measured.b[0]].map((x) => Math.round(x * 1e6) / 1e6)
    }
    expect(at('⌀20')).toEqual([0, 0])
    expect(at('⌀25')).toEqual([56, 56])
    expect(at('⌀18')).toEqual([76, 76])
  })
})
