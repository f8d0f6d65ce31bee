import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { endOf, startOf } from '../../src/geometry/evaluate.ts'
import { capitals, titleCapitals } from '../../src/sheet/lettering/capitals.ts'
import { fitText, wrap } from '../../src/sheet/lettering/fit.ts'
import { lettering, textExtent, textWidth } from '../../src/sheet/lettering/lettering.ts'
import { missingSigns } from '../../src/sheet/lettering/metrics.ts'
import { drawnSymbols } from '../../src/sheet/lettering/symbols.ts'
import { ABOVE, wayMarks } from '../../src/sizes/callout/sign-ways.ts'

const require = createRequire(import.meta.url)
const fontkit = require('fontkit') as { create(bytes: Buffer): Font }
interface Font {
  readonly capHeight: number
  layout(text: string, features: Record<string, boolean>): { readonly advanceWidth: number }
}
const fontOf = (weight: number) =>
  fontkit.create(readFileSync(require.resolve(`@fontsource/barlow/files/barlow-latin-${weight}-normal.woff`)))

describe('widths', () => {
  // Reference: the typeface's own tables through fontkit's layout, figures tabular, ligatures off.
  it.each([
    [400, false],
    [600, true],
  ] as const)('agree with the typeface at weight %i', (weight, bold) => {
    const font = fontOf(weight)
    const letter = fc.constantFrom(...Array.from({ length: 0x7e - 0x20 + 1 }, (_, i) => String.fromCharCode(0x20 + i)))
    const text = fc.array(letter, { minLength: 1, maxLength: 30 }).map((a) => a.join(''))
    fc.assert(
      fc.property(text, fc.double({ min: 1, max: 20, noNaN: true }), (t, h) => {
        const reference = (font.layout(t, { tnum: true, liga: false }).advanceWidth / font.capHeight) * h
        // Rounding of the stored widths: half a thousandth of the em a letter.
        expect(Math.abs(textWidth(t, h, { bold }) - reference)).toBeLessThanOrEqual((t.length * 0.001 * h) / 0.7 + 1e-9)
      }),
      { numRuns: 300 },
    )
  })

  it('are the same for every figure', () => {
    const w = [...'0123456789'].map((c) => textWidth(c, 10))
    expect(Math.max(...w) - Math.min(...w)).toBe(0)
  })
})

describe('drawn signs', () => {
  it('keep the proportions of ASME Y14.5', () => {
    // ASME Y14.5-2018 Nonmandatory Appendix C, from memory: counterbore and countersink 2h × h, the countersink at 90°.
    const sink = drawnSymbols.get('⌵')!.strokes
    const [a, b] = [sink[0]!, sink[1]!]
    const down = [endOf(a)[0] - startOf(a)[0], endOf(a)[1] - startOf(a)[1]]
    const up = [endOf(b)[0] - startOf(b)[0], endOf(b)[1] - startOf(b)[1]]
    expect(down[0]! * up[0]! + down[1]! * up[1]!).toBeCloseTo(0, 12)
    expect(down[0]! + up[0]!).toBeCloseTo(2, 12)
    const bore = drawnSymbols.get('⌴')!.strokes.flatMap((c) => [startOf(c), endOf(c)])
    expect(Math.max(...bore.map((p) => p[0])) - Math.min(...bore.map((p) => p[0]))).toBeCloseTo(2, 12)
    expect(Math.max(...bore.map((p) => p[1])) - Math.min(...bore.map((p) => p[1]))).toBeCloseTo(1, 12)
    // Diameter: circle of h.
    const circle = drawnSymbols.get('⌀')!.strokes[0]!
    expect(circle.kind === 'arc' && circle.r).toBe(0.5)
  })

  it('take the place of their characters in a line', () => {
    const items = lettering('4X ⌀.281 THRU', { at: [0, 0], height: 3, role: 'dimension' })
    expect(items.map((i) => (i.item === 'text' || i.item === 'glyph' ? i.text : ''))).toEqual(['4X ', '⌀', '.281 THRU'])
    const last = items[2]!
    expect(last.item === 'text' && last.at[0] + textWidth('.281 THRU', 3)).toBeCloseTo(textWidth('4X ⌀.281 THRU', 3), 9)
  })
})

describe('signs of more than one character', () => {
  const place = { at: [0, 0], height: 3, role: 'dimension' } as const
  const glyphs = (text: string) => lettering(text, place).flatMap((i) => (i.item === 'glyph' ? [i] : []))
  const points = (text: string) => glyphs(text)[0]!.strokes.flatMap((c) => [startOf(c), endOf(c)])

  // ASME Y14.5-2018, from memory: SF stands within the counterbore's sign.
  it('a spotface is one sign, found as ⌴SF', () => {
    const items = glyphs('⌴SF ⌀.88')
    expect(items.map((i) => i.text)).toEqual(['⌴SF', '⌀'])
    const [bore] = glyphs('⌴')
    const box = (p: readonly (readonly number[])[]) => [
      Math.min(...p.map((q) => q[0]!)),
      Math.max(...p.map((q) => q[0]!)),
      Math.min(...p.map((q) => q[1]!)),
      Math.max(...p.map((q) => q[1]!)),
    ]
    // its outline is the counterbore's own, and the letters stay within it
    expect(box(points('⌴SF'))).toEqual(box(bore!.strokes.flatMap((c) => [startOf(c), endOf(c)])))
  })

  // ISO 3040:2016 clause 5, from memory: the sign looks as the cone does.
  it.each([
    ['right', 0, 1],
    ['left', 0, -1],
    ['up', 1, 1],
    ['down', 1, -1],
  ] as const)('a taper that narrows to the %s', (way, along, sense) => {
    // The sides meet in the narrow end: of the strokes' ends the one that two slanting strokes share.
    const text = `⌲${wayMarks[way]}`
    const slants = glyphs(text)[0]!.strokes.filter((c) => {
      const [a, b] = [startOf(c), endOf(c)]
      return Math.abs(a[0] - b[0]) > 1e-9 && Math.abs(a[1] - b[1]) > 1e-9
    })
    expect(slants).toHaveLength(2)
    const ends = slants.map((c) => [startOf(c), endOf(c)])
    const tip = ends[0]!.find((p) => ends[1]!.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-9))!
    const base = ends.map((pair) => pair.find((p) => p !== tip && Math.hypot(p[0] - tip[0], p[1] - tip[1]) > 1e-9)!)
    for (const p of base) expect(Math.sign(tip[along] - p[along])).toBe(sense)
    expect(glyphs(text)[0]!.text).toBe('⌲')
  })

  // ASME Y14.5-2018 Fig. 4-8, from memory: the arc sign stands above the figures.
  it('an arc above its figures and no further', () => {
    const text = `⌒${ABOVE}2.50`
    const [glyph] = glyphs(text)
    const curve = glyph!.strokes[0]!
    expect(curve.kind).toBe('arc')
    const ends = [startOf(curve), endOf(curve)]
    expect(Math.min(...ends.map((p) => p[1]))).toBeGreaterThan(3)
    expect(Math.min(...ends.map((p) => p[0]))).toBeGreaterThanOrEqual(-1e-9)
    expect(Math.max(...ends.map((p) => p[0]))).toBeLessThanOrEqual(textWidth('2.50', 3) + 1e-9)
    expect(textWidth(text, 3)).toBeCloseTo(textWidth('2.50', 3), 9)
    const read = lettering(text, place).flatMap((i) => (i.item === 'text' || i.item === 'glyph' ? [i.text] : []))
    expect(read.join('')).toBe('⌒2.50')
  })
})

// ISO 129-1:2018, from memory: the two deviations stand with their decimal signs in line, a nil deviation as a bare 0.
describe('stacked deviations', () => {
  const lefts = (upper: string, lower: string) =>
    lettering(['⌀20 ', { stack: [upper, lower] }], { at: [0, 0], height: 3, role: 'dimension' }).flatMap((i) =>
      i.item === 'text' && (i.text === upper || i.text === lower) ? [i.at[0]] : [],
    )

  it.each([
    ['+0.1', '0', 1],
    ['0', '−0.1', 0],
  ] as const)('%s over %s: the 0 stands in the column of the units', (upper, lower, bare) => {
    const at = lefts(upper, lower)
    const sign = [upper, lower][1 - bare]![0]!
    expect(at[bare]! - at[1 - bare]!).toBeCloseTo(textWidth(sign, 3), 9)
  })

  it('begin together where both have a sign or neither', () => {
    for (const [upper, lower] of [
      ['+.002', '−.000'],
      ['.5005', '.5000'],
    ] as const)
      expect(new Set(lefts(upper, lower)).size).toBe(1)
  })
})

describe('fractions', () => {
  it.each(['G1/4', 'Rp 1/2', 'Rc1/8', '1/4 NPT', '1-1/4 NPT', '1/2-20 UNF'])(
    '%s is a thread and stays in line',
    (text) => {
      expect(lettering(text, { at: [0, 0], height: 3, role: 'dimension', fractions: 'stacked' })).toHaveLength(1)
    },
  )

  it('stand over a level bar and still read as typed', () => {
    const items = lettering('1-3/8 STK', { at: [0, 0], height: 3, role: 'dimension', fractions: 'stacked' })
    const read = items.flatMap((i) => (i.item === 'text' || i.item === 'glyph' ? [i.text] : [])).join('')
    expect(read).toBe('1-3/8 STK')
    const glyph = items.find((i) => i.item === 'glyph')
    const bar = glyph?.item === 'glyph' ? glyph.strokes[0]! : undefined
    expect(bar?.kind === 'line' && bar.a[1] === bar.b[1] && bar.a[1]).toBeCloseTo(1.5, 12)
    expect(textExtent('1-3/8', 3, { fractions: 'stacked' }).above).toBeGreaterThan(3)
  })

  it('leave dates, ratios, decimals and threads alone', () => {
    for (const t of ['11/03/2024', '.125/.130', 'M12x1.75', '1/2-20 UNF-2B', '1-1/4-7 UNC']) {
      expect(lettering(t, { at: [0, 0], height: 3, role: 'note', fractions: 'stacked' })).toHaveLength(1)
    }
  })
})

it('fits any text into any box, at no less than the least height', () => {
  fc.assert(
    fc.property(
      fc.string({ maxLength: 120 }),
      fc.double({ min: 12, max: 90, noNaN: true }),
      fc.double({ min: 4, max: 20, noNaN: true }),
      (text, width, depth) => {
        const fit = fitText(text, { width, depth, height: 3.5, least: 1.8, lineRatio: 1.5 })
        expect(fit.height).toBeGreaterThanOrEqual(1.8 - 1e-9)
        for (const line of fit.lines)
          expect(textWidth(line, fit.height) * fit.stretch).toBeLessThanOrEqual(width + 1e-6)
        expect(fit.height * (1 + (fit.lines.length - 1) * 1.5)).toBeLessThanOrEqual(Math.max(depth, fit.height) + 1e-6)
      },
    ),
    { numRuns: 300 },
  )
})

it('turns a title into capitals whole but for units (ASME Y14.2-2014 4.3, from memory)', () => {
  expect(titleCapitals('Trial y2')).toBe('TRIAL Y2')
  expect(titleCapitals('Spacer 12 mm, type b3')).toBe('SPACER 12 mm, TYPE B3')
})

// ISO 80000-1 (from memory): a number and its unit belong together.
it('keeps a number with its unit at the end of a line', () => {
  const text = 'Stamp the number on the rear edge, 5 mm characters.'
  const width = textWidth('Stamp the number on the rear edge, 5 ', 3.5)
  expect(wrap(text, width, 3.5, {}, true)).toEqual(['Stamp the number on the rear edge,', '5 mm characters.'])
  expect(wrap('12 mm', textWidth('12', 3.5), 3.5, {}, true)!.join(' ')).toBe('12 m m')
})

it('turns text into capitals but for units, fits and grades', () => {
  // ASME Y14.2-2014 §4.3; unit symbols of NIST SP 811 keep their letters.
  expect(capitals('Zinc plate 12 µm, remove burrs to 0.5 mm')).toBe('ZINC PLATE 12 µm, REMOVE BURRS TO 0.5 mm')
  expect(capitals('seat k6, Ra 0.8 in both bores')).toBe('SEAT k6, Ra 0.8 IN BOTH BORES')
})

it('names the signs it does not have', () => {
  expect(missingSigns('⌀25 漢字 Kovač')).toEqual(['漢', '字'])
})
