import { describe, expect, it } from 'vitest'
import { allMarks, asme, iso } from './sized.ts'

describe('the diameter of a rim that flats have opened', () => {
  // Extension lines and arrows end at the feature measured (ISO 129-1:2018, ASME Y14.5-2018 section 4; from memory).
  const flange = (flats: string, views = 'right; section A-A half as front') => `turned axis left-right
  flange ⌀110, 14 long
  body ⌀60, 42.5 long
bore left: ⌀45 THRU
${flats}holes flange left face: 2X ⌀13.5 THRU
  on ⌀85 bolt circle, equal, one at 3 o'clock
views ${views}
`
  it('is taken from crown to crown where the rim stands', () => {
    const s = iso(flange('flats flange, top and bottom: 72 across\n'))
    const { measured } = s.find('⌀110')
    expect(measured).toMatchObject({ kind: 'linear', a: [-55, 0], b: [55, 0], along: [1, 0] })
  })

  it('is taken across the circle where it is whole', () => {
    const s = iso(flange('', 'right'))
    expect(s.find('⌀110').measured).toMatchObject({ kind: 'diameter', radius: 55 })
  })
})

describe('a keyseat that no view shows', () => {
  const shaft = (views: string) => `turned axis left-right
  body ⌀1.750, 6.00 long
bore right: ⌀.500 ↧ 2.00, flat bottom
keyseat body, bottom: .375 wide × .188 deep × 3.00 long
  left end .50 from left
${views}`
  it('has no width in a section through the axis that looks the other way; the mark says so', () => {
    const s = asme(shaft('views front; section A-A\n'))
    expect(s.texts).not.toContain('.375')
    expect(allMarks(s).some((m) => m.rule === 'no-view-for-size' && m.text.includes('.375'))).toBe(true)
    expect(s.sizes.proof.complete).toBe(false)
  })

  it('has it in the section across', () => {
    const s = asme(shaft(''))
    expect(s.find('.375').view).toMatch(/^section/)
    expect(s.sizes.proof.complete).toBe(true)
  })
})
