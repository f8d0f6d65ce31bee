import { describe, expect, it } from 'vitest'
import { numberText } from '../../src/sizes/callout/numbers.ts'
import { asme, iso, sized } from './sized.ts'

/*
 * Habits of ASME Y14.5-2018 (4X, THRU, ⌴ ⌵ ↧, no zero before the point in inch, zero before it in mm, R before a radius)
 * and of ISO 129-1:2018 (4×, through unless a depth is given, decimal comma where asked). All from memory.
 */
describe('callouts after ASME Y14.5', () => {
  it('writes holes with count, THRU or depth, counterbore, countersink and spotface', () => {
    const { texts } = asme(`plate 4.00 × 3.00 × .500
holes A top: 4X ⌀0.281 THRU, ⌴ ⌀.500 ↧ .250
  2 across 3.000 apart, centred; 2 up 2.000 apart, centred
hole B top: ⌀.250 ↧ .375
  1.00 from left; .50 from front
hole C top: ⌀.201 THRU, ⌵ ⌀.385 × 82°
  2.00 from left; 1.25 from front
`)
    expect(texts).toContain('4X ⌀.281 THRU, ⌴ ⌀.500 ↧ .250')
    expect(texts).toContain('⌀.250 ↧ .375')
    expect(texts).toContain('⌀.201 THRU, ⌵ ⌀.385 × 82°')
    expect(texts).toContain('3.000, CENTERED')
  })

  it('writes threads as text, slots with their round ends, chamfers and radii', () => {
    const { texts } = asme(`plate 4.00 × 3.00 × .500
holes top: 2X 1/4-20 UNC-2B THRU
  2 across 2.000 apart, centred; .75 from front
slots top: 2X .281 × .75 overall THRU, long way front-rear
  2 across 1.250 apart, centred; 1.75 from front
round corners: 4X R.38
`)
    expect(texts).toContain('2X 1/4-20 UNC-2B THRU')
    expect(texts).toContain('2X .281 × .75, 4X R')
    expect(texts).toContain('4X R.38')
    expect(texts).not.toContain('2X .281 × .75 TYP')
  })

  it('writes limits one over the other, the larger above, and deviations stacked', () => {
    const { sizes, texts } = asme(`turned axis left-right
  left ⌀.7503/.7500, 1.38 long
  right ⌀.500 +.000 -.001, .75 long
`)
    expect(texts).toContain('⌀.7503/.7500')
    expect(texts).toContain('⌀.500 +.000/−.001')
    const limits = sizes.dimensions.find((d) => d.callout.lines[0]!.some((p) => typeof p !== 'string'))!
    expect(limits.callout.lines[0]).toEqual(['⌀', { stack: ['.7503', '.7500'] }])
  })

  it('keeps a millimetre size on an inch sheet, with its unit, and fractions as typed', () => {
    const { texts } = asme(`flat bar 1-1/2 STK × 1/4 STK, 8.00 long
hole top: ⌀18.5 mm THRU
  25 mm from left; centred up
`)
    expect(texts).toContain('1-1/2 STK')
    expect(texts).toContain('25 mm')
    expect(texts.some((t) => t.startsWith('⌀18.5 mm THRU'))).toBe(true)
  })
})

// ASME Y14.5-2018 4.3.1/4.3.2: inch without, millimetre with a zero before the point; ISO 129-1 likewise (from memory).
describe('digits', () => {
  it.each([
    ['0.25', 'inch', '.', '.25'],
    ['.250', 'inch', '.', '.250'],
    ['.5', 'mm', '.', '0.5'],
    ['0,5', 'mm', '.', '0.5'],
    ['12.50', 'mm', ',', '12,50'],
    ['1-3/8', 'inch', '.', '1-3/8'],
    ['120', 'mm', ',', '120'],
  ] as const)('%s in %s with %s reads %s', (typed, unit, sign, shown) => {
    expect(numberText(typed, unit, sign)).toBe(shown)
  })
})

describe('callouts after ISO 129-1', () => {
  it('leaves THRU out, counts with ×, and writes fits as text', () => {
    const { texts } = iso(`plate 120 × 80 × 12
holes A top: 4X ⌀6.6 THRU, ⌴ ⌀11 ↧ 6.8
  2 across 100 apart, centred; 2 up 60 apart, centred
hole B top: ⌀20 H7 THRU
  60 from left; 50 from front
`)
    expect(texts).toContain('4× ⌀6.6, ⌴ ⌀11 ↧ 6.8')
    expect(texts).toContain('⌀20 H7')
    expect(texts.join()).not.toMatch(/THRU|\dX /)
  })

  it('writes the decimal comma only where the brief asks for it, and zero before it', () => {
    const { texts } = sized(`part Trial piece
units mm
practice ISO, first angle
decimal comma
material S235JR
general ISO 2768-mK
plate 120 × 80 × 12,5
hole top: ⌀6,6 THRU
  20,50 from left; 8,5 from front
`)
    expect(texts).toContain('20,50')
    expect(texts.join()).not.toMatch(/\d\.\d/)
  })

  it('writes the comma in the angle of a first hole, which the part is made with', () => {
    const { find, texts, sizes } = sized(`part Trial piece
units mm
practice ISO, first angle
decimal comma
disc ⌀100 × 10,5, outer face front
holes front: 3X ⌀6,6 THRU
  on ⌀45,5 bolt circle, equal, first at 22,5°
`)
    expect(find('22,5°').value).toBe(22.5)
    expect(texts).toEqual(expect.arrayContaining(['⌀45,5', '3× ⌀6,6', '10,5']))
    expect(sizes.proof.complete).toBe(true)
  })

  it('writes chamfers as leg and angle, never with C', () => {
    const { texts } = iso(`disc ⌀60 × 20, outer face front
chamfer front face outer edge: 1 × 45°
`)
    expect(texts).toContain('1 × 45°')
    expect(texts.join()).not.toMatch(/C1/)
  })
})
