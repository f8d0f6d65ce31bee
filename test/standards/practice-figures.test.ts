import { describe, expect, it } from 'vitest'
import { inchFormats, metricFormats } from '../../src/standards/formats.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'
import { inchScales, isoScales, scaleText } from '../../src/standards/scales.ts'

const asme = practiceFigures('ASME', 'B')
const iso = practiceFigures('ISO', 'A3')

describe('ASME figures', () => {
  it('draw thick lines 0.6 and thin lines 0.3 mm', () => {
    // ASME Y14.2-2014 §2.1.
    expect(asme.widths).toEqual({ thick: 0.6, thin: 0.3 })
  })

  it('draw arrowheads three times as long as wide', () => {
    // ASME Y14.2-2014 §3.
    expect(asme.arrowhead.length / asme.arrowhead.width).toBeCloseTo(3, 9)
  })

  it('letter no smaller than the table of minimum heights', () => {
    // ASME Y14.2-2014 Table 1, from memory: 3 mm sizes and notes, 6 mm section letters and zones, 2.5 mm headings;
    // title and number 3 mm to size C and 6 mm above.
    for (const f of inchFormats) {
      const { lettering } = practiceFigures('ASME', f.name)
      expect(lettering.dimension).toBeGreaterThanOrEqual(3)
      expect(lettering.note).toBeGreaterThanOrEqual(3)
      expect(lettering.sectionLetter).toBeGreaterThanOrEqual(6)
      // The words under a view are no taller than the title (common practice, no source).
      expect(lettering.viewLabel).toBeLessThanOrEqual(lettering.title)
      expect(lettering.zone).toBeGreaterThanOrEqual(6)
      expect(lettering.heading).toBeGreaterThanOrEqual(2.5)
      expect(lettering.title).toBeGreaterThanOrEqual(f.name === 'D' || f.name === 'E' ? 6 : 3)
    }
  })

  it('space dimension lines at least 10 and 6 mm', () => {
    // ASME Y14.5-2018 Fig. 4-6.
    expect(asme.rows.first).toBeGreaterThanOrEqual(10)
    expect(asme.rows.next).toBeGreaterThanOrEqual(6)
  })

  it('leave a visible gap before extension lines and run past the last line', () => {
    // ASME Y14.5-2018 §4.5.2; 3 mm past the dimension line.
    expect(asme.extension.gap).toBeGreaterThan(0)
    expect(asme.extension.overshoot).toBe(3)
  })

  it('break the line for level text, with a decimal point and no zero before inch decimals', () => {
    // ASME Y14.5-2018 §4.3.1, §4.5.1, §4.6.5.
    expect(asme.text.place).toBe('in broken line')
    expect(asme.text.reads).toBe('level')
    expect(asme.decimals.sign).toBe('.')
    expect(asme.decimals.leadingZero).toEqual({ inch: false, mm: true })
  })
})

describe('ISO figures', () => {
  it('draw lines of a preferred group, wide to narrow 2:1', () => {
    // ISO 128-2:2022 §5 and ISO 128-24:2014: groups 0.5 and 0.7.
    expect(iso.widths).toEqual({ thick: 0.5, thin: 0.25 })
    expect(practiceFigures('ISO', 'A0').widths).toEqual({ thick: 0.7, thin: 0.35 })
  })

  it('build broken lines of 12d, 3d, 24d and dots of half d at most', () => {
    // ISO 128-2:2022 Table 3 (ISO 128-20:1996 Table 2).
    for (const f of metricFormats) {
      const p = practiceFigures('ISO', f.name)
      const d = p.widths.thin
      expect(p.dashes.hidden.long).toBeCloseTo(12 * d, 12)
      expect(p.dashes.hidden.gap).toBeCloseTo(3 * d, 12)
      expect(p.dashes.centre.long).toBeCloseTo(24 * d, 12)
      expect(p.dashes.centre.gap).toBeCloseTo(3 * d, 12)
      expect(p.dashes.centre.short).toBeLessThanOrEqual(0.5 * d + 1e-12)
      expect(p.dashes.phantom.shorts).toBe(2)
    }
  })

  it('letter in the heights of ISO 3098-1, line a tenth of the height', () => {
    // ISO 3098-1:2015 nominal sizes; type B.
    const series = [1.8, 2.5, 3.5, 5, 7, 10, 14, 20]
    for (const f of metricFormats) {
      const { lettering } = practiceFigures('ISO', f.name)
      const heights = [
        lettering.dimension,
        lettering.note,
        lettering.viewLabel,
        lettering.sectionLetter,
        lettering.title,
        lettering.value,
        lettering.heading,
        lettering.zone,
      ]
      for (const h of heights) expect(series).toContain(h)
      expect(lettering.strokeRatio).toBeCloseTo(0.1, 12)
    }
  })

  it('put text over the unbroken line, read from bottom or right, with a decimal comma', () => {
    // ISO 129-1:2018 §5.1 and §5.7.
    expect(iso.text.place).toBe('above line')
    expect(iso.text.reads).toBe('aligned')
    expect(iso.decimals.sign).toBe(',')
  })

  it('run extension lines 8d past the dimension line', () => {
    // ISO 129-1:2018 §5.4.
    expect(iso.extension.overshoot).toBeCloseTo(8 * iso.widths.thin, 12)
  })
})

it('letters nothing that would fall under 1.2 mm at half size', () => {
  // Half-size legibility: Y14.2-2014 Table 1 heights are set for reduced copies; 1.25 mm is the least of them halved.
  for (const p of [
    ...inchFormats.map((f) => practiceFigures('ASME', f.name)),
    ...metricFormats.map((f) => practiceFigures('ISO', f.name)),
  ]) {
    const { strokeRatio: _s, lineRatio: _l, ...heights } = p.lettering
    expect(Math.min(...Object.values(heights)) / 2).toBeGreaterThanOrEqual(1.2)
  }
})

describe('scales', () => {
  it('of ISO 5455 are 1, 2 and 5 times powers of ten', () => {
    // ISO 5455:1979 Table.
    expect(isoScales.map(scaleText)).toEqual(
      '50:1 20:1 10:1 5:1 2:1 1:1 1:2 1:5 1:10 1:20 1:50 1:100 1:200 1:500 1:1000 1:2000 1:5000 1:10000'.split(' '),
    )
  })

  it('run from large to small without a repetition', () => {
    for (const series of [isoScales, inchScales]) {
      const values = series.map((s) => s.paper / s.part)
      expect([...values].sort((a, b) => b - a)).toEqual(values)
      expect(new Set(values).size).toBe(values.length)
    }
  })
})
