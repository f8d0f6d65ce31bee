import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { auditSizes } from '../../src/sheet/placement/audit.ts'
import { calloutSheets } from './callout-sheets.ts'
import { allMarks, sized } from './sized.ts'

const kernel = await openKernel()

/**
 * Each kind of callout as the practice writes it, all from memory: ASME Y14.5-2018 with the clause or figure named, ISO
 * 129-1:2018 with the topic where no clause is remembered, ISO 286-1, ISO 965-1, ISO 3040. Words such as DRILL, FLAT
 * BOTTOM and CENTERED are common practice, no source.
 */
const SAID: Readonly<Record<keyof typeof calloutSheets, readonly (readonly [form: string, callout: string])[]>> = {
  'ISO block': [
    ['number of features ×, through without a word; counterbore and depth signs', '4× ⌀9, ⌴ ⌀15 ↧ 9'],
    ['countersink by diameter and angle', '2× ⌀6.6, ⌵ ⌀12.4 × 90°'],
    ['ISO 286-1: fit after the size; depth of a blind hole', '⌀12 H7 ↧ 20, flat bottom'],
    ['ISO 6410-1, ISO 965-1: thread with its class and depth, then the drill', 'M8 - 6H ↧ 16, drill ⌀6.8 ↧ 21'],
    ['spotface: the counterbore’s sign', '⌀11, ⌴ ⌀24 ↧ 1'],
    ['ISO 228-1: pipe thread', 'G1/4, drill ⌀11.8'],
    ['equal deviations', '120 ±0.05'],
    ['equal deviations', '40 ±0.1'],
    ['unequal deviations, nil as 0 without a sign', '⌀20 +0.1/0'],
    ['limits, the larger above', '⌀16.05/16.00'],
    ['slot by width and length, ends R without a value', '2× 11 × 40, 4× R'],
    ['depth where no section shows it', '↧ 6'],
    ['repeated radius', '4× R5'],
    ['chamfer that is not 45°', '8 × 30°'],
    ['repeated radius', '2× R10'],
  ],
  'ISO shaft': [
    ['ISO 6410-1, ISO 965-1: outside thread', 'M20 × 1.5 - 6g'],
    ['square', '□24'],
    ['unequal deviations', '⌀50 0/−0.1'],
    ['ISO 286-1', '⌀35 k6'],
    ['ISO 286-1', '10 P9'],
    ['ISO 3040 clause 5: taper by its rate', '⌲ 1:10'],
    ['chamfer of 45° by leg and angle', '1.5 × 45°'],
    ['spherical radius, here following from the diameter', 'SR9'],
    ['reference size in brackets', '(192)'],
  ],
  'ISO plate': [
    ['length along an arc', '⌒50'],
    ['radius', 'R60'],
    ['decimal comma', '⌀10,5, centred both ways'],
  ],
  'ASME block': [
    ['1.3, Fig. 6-1: 4X, THRU, counterbore and depth', '4X ⌀.281 THRU, ⌴ ⌀.500 ↧ .281'],
    ['countersink', '2X ⌀.281 THRU, ⌵ ⌀.53 × 82°'],
    ['5.3: limits, the larger above; 4.3.1: no zero before the point', '⌀.5005/.5000 ↧ .75, FLAT BOTTOM'],
    ['ASME B1.1 and Y14.6: thread', '3/8-16 UNC-2B ↧ .75, DRILL ⌀.312 ↧ 1.00'],
    ['spotface: SF within the counterbore’s sign', '⌀.406 THRU, ⌴SF ⌀.88'],
    ['ASME B1.20.1: pipe thread', '1/4-18 NPT THRU, DRILL ⌀.438'],
    ['ISO 965-1 thread on an inch sheet', 'M10 - 6H THRU'],
    ['5.3.1: as many decimals in the size as in its tolerance', '4.500 ±.005'],
    ['5.3.1: unequal, nil with a sign and all decimals', '⌀.750 +.002/−.000 THRU'],
    ['slot by width and length over R', '2X .406 × 1.50, 4X R'],
    ['depth where no section shows it', '↧ .25'],
    ['repeated radius', '4X R.19'],
    ['chamfer', '.31 × 30°'],
    ['fraction as typed', '1-1/2'],
  ],
  'ASME shaft': [
    ['ASME B1.1 and Y14.6: outside thread', '3/4-16 UNF-2A'],
    ['square', '□1.00'],
    ['5.3: limits', '⌀1.3760/1.3755'],
    ['Fig. 5-13: conical taper', '⌲ .1:1'],
    ['chamfer of 45° by leg and angle', '.06 × 45°'],
    ['spherical radius, here following from the diameter', 'SR.375'],
    ['reference size in brackets', '(8.00)'],
  ],
  'ASME plate': [
    ['Fig. 4-8: length along an arc', '⌒2.00'],
    ['radius', 'R2.50'],
    ['through', '⌀.406 THRU, CENTERED BOTH WAYS'],
  ],
}

describe.each(Object.keys(SAID) as (keyof typeof SAID)[])('%s', (name) => {
  const s = sized(calloutSheets[name])

  it('is complete, each size once, and nothing must change', () => {
    expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  })

  it.each(SAID[name])('%s: %s', (_, callout) => {
    expect(s.texts).toContain(callout)
  })

  it('uses no sign or word of the other practice', () => {
    const other = name.startsWith('ISO') ? /\dX |THRU|SF|(?<![\d.,])\.\d/ : /\d×|(?<!\d)0\.\d|,\d| through|centred/
    expect(s.texts.filter((t) => other.test(t))).toEqual([])
  })

  it('stands on its sheet with no text on text, on lines or under arrowheads', () => {
    const { part, sheet, sizes } = compile(calloutSheets[name], kernel)
    if (part) kernel.free(part.solid)
    const found = auditSizes(sheet!, part!.brief.header.practice)
    expect(found).toMatchObject({ textOnText: 0, textOnLine: 0, arrowCollisions: 0 })
    // every size is drawn
    const drawn = new Set(sheet!.items.flatMap((i) => ('tie' in i && i.tie?.dimension) || []))
    expect(sizes!.dimensions.filter((d) => !drawn.has(d.id)).map((d) => d.id)).toEqual([])
  })
})
