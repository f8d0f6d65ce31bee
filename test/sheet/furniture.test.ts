import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Header } from '../../src/brief/brief.ts'
import { boxOf as curveBox } from '../../src/geometry/evaluate.ts'
import { border } from '../../src/sheet/furniture/border.ts'
import { generalLines } from '../../src/sheet/furniture/general-tolerances.ts'
import { projectionSymbol } from '../../src/sheet/furniture/projection-symbol.ts'
import { titleBlock, titleBlockSize } from '../../src/sheet/furniture/title-block.ts'
import { titleWords } from '../../src/sheet/furniture/title-words.ts'
import { weightText } from '../../src/sheet/furniture/weight.ts'
import { textWidth } from '../../src/sheet/lettering/lettering.ts'
import type { SheetItem } from '../../src/sheet/sheet.ts'
import { formatNamed } from '../../src/standards/formats.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'
import { ascHeader, isoHeader, words } from './fixtures.ts'

const block = (header: Header, mass?: number) => {
  const { width, height } = titleBlockSize(header.practice)
  const box = { min: [100, 10], max: [100 + width, 10 + height] } as const
  const facts = { header, scale: '1:2', format: 'A3', sheet: 1, sheets: 1, ...(mass === undefined ? {} : { mass }) }
  return { box, ...titleBlock(facts, box, practiceFigures(header.practice, 'A3')) }
}
const texts = (items: readonly SheetItem[]) => items.flatMap((i) => (i.item === 'text' ? [i] : []))

describe('title block', () => {
  it('is 180 mm wide on ISO sheets, so that it fits A4 upright', () => {
    // ISO 7200:2004 §5; ISO 5457:1999: drawing space of A4 is 180 mm wide.
    expect(titleBlockSize('ISO').width).toBe(180)
  })

  it('holds every field of the brief', () => {
    const shown = texts(block(isoHeader, 1.27).items).map((t) => t.text)
    for (const t of [
      'Bearing cover',
      'K-1071',
      'B',
      'EN-GJL-250',
      'ISO 2768-mK',
      'Ra 3.2',
      'E. Lindqvist',
      '2024-05-02',
      'P. Moreau',
      'Norrvik Pumpverk',
      '1.27 kg',
      '1:2',
      '1/1',
      'A3',
      'Do not scale',
    ]) {
      expect(shown).toContain(t)
    }
  })

  it('leaves open fields empty and invents nothing', () => {
    const bare: Header = { units: 'mm', practice: 'ISO', projection: 'first angle', general: [], notes: [] }
    const {
      practice: _p,
      sheetOf,
      ...names
    } = titleWords('ISO') as ReturnType<typeof titleWords> & { practice?: string }
    const known = [
      ...Object.values(names).flatMap((v) => (typeof v === 'string' ? [v] : Object.values(v))),
      sheetOf(1, 1),
    ]
    for (const t of texts(block(bare).items)) expect([...known, '1:2', 'A3']).toContain(t.text)
  })

  it('keeps any text inside its frame, and says so when it had to be cut', () => {
    const text = fc.string({ minLength: 1, maxLength: 200 })
    fc.assert(
      fc.property(text, text, text, fc.boolean(), (a, b, c, asme) => {
        const header: Header = {
          ...(asme ? ascHeader : isoHeader),
          part: words(a),
          number: words(b),
          revision: words(c),
          material: words(`${a} ${b}`),
          coating: words(c),
          firm: words(`${b} ${c}`),
          documentType: words(a),
          drawn: { name: words(b), date: words(c) },
          edgeBreak: words(`${c} ${a}`),
        }
        const { box, items, marks } = block(header, 3)
        for (const t of texts(items)) {
          const width = textWidth(t.text, t.height, t.bold ? { bold: true } : {}) * (t.stretch ?? 1)
          const left = t.anchor === 'middle' ? t.at[0] - width / 2 : t.at[0]
          expect(left).toBeGreaterThanOrEqual(box.min[0])
          expect(left + width).toBeLessThanOrEqual(box.max[0] + 1e-6)
          expect(t.at[1]).toBeGreaterThanOrEqual(box.min[1])
          expect(t.at[1] + t.height).toBeLessThanOrEqual(box.max[1] + 1e-6)
          // ASME Y14.2-2014 Table 1: block headings 2.5 mm at the least; ISO 3098-1: smallest nominal height 1.8 mm (both from memory).
          expect(t.height).toBeGreaterThanOrEqual((asme ? 2.5 : 1.8) - 1e-9)
          if (t.text.endsWith('…') && ![a, b, c].some((s) => s.includes('…'))) {
            expect(marks.map((m) => m.rule)).toContain('title-block-text-cut')
          }
        }
      }),
      { numRuns: 150 },
    )
  })

  it('states general tolerances as typed, by the number of decimals', () => {
    // ASME custom: .XX ±.01; metric: X.X ±0.1 (common practice, no source).
    const lines = generalLines(ascHeader, titleWords('ASME')).map((l) => `${l.name} ${l.value}`.trim())
    expect(lines).toEqual([
      'DIMENSIONS ARE IN INCHES',
      'TOLERANCES',
      'FRACTIONS ±1/64',
      '.XX ±.01',
      '.XXX ±.005',
      'ANGLES ±1/2°',
      'BREAK EDGES .015 MAX',
      'SURFACES 125 µin',
      'PER ASME Y14.5-2018',
    ])
  })

  it.each([
    ['ASME', 'remove burrs', 'remove burrs'],
    ['ASME', 'break sharp edges .005', 'break sharp edges .005'],
    ['ISO', 'edges broken 0.2 to 0.5', 'edges broken 0.2 to 0.5'],
    ['ISO', '0.2 to 0.5', 'Edges 0.2 to 0.5'],
  ] as const)('names edges once: %s, %s', (practice, said, printed) => {
    const words = titleWords(practice)
    const edgeBreak = { text: said, span: { from: 0, to: said.length } }
    const lines = generalLines({ ...ascHeader, edgeBreak }, words).map((l) => `${l.name} ${l.value}`.trim())
    expect(lines).toContain(printed)
  })
})

describe('weight', () => {
  it('is given in the unit of the sheet to three figures', () => {
    // 1 lb = 0.45359237 kg exactly (NIST SP 811, Appendix B).
    expect(weightText(0.45359237, ascHeader)).toBe('1.00 LB')
    expect(weightText(0.2, ascHeader)).toBe('.441 LB')
    expect(weightText(12.3456, isoHeader)).toBe('12.3 kg')
    expect(weightText(0.385, isoHeader)).toBe('385 g')
    expect(weightText(1.27, { ...isoHeader, decimalSign: ',' })).toBe('1,27 kg')
    expect(weightText(1234.5, isoHeader)).toBe('1235 kg')
  })
})

describe('projection symbol', () => {
  const parts = (projection: 'first angle' | 'third angle') => {
    const strokes = projectionSymbol(projection, [0, 0], 3.5, { thick: 0.5, thin: 0.25 }).flatMap((i) =>
      i.item === 'stroke' ? [i] : [],
    )
    const circles = strokes.flatMap((s) => (s.curve.kind === 'arc' ? [s.curve] : []))
    const upright = strokes.flatMap((s) =>
      s.curve.kind === 'line' && s.width === 0.5 && s.curve.a[0] === s.curve.b[0] ? [s.curve] : [],
    )
    const [small, large] = upright.map((l) => ({ x: l.a[0], d: Math.abs(l.b[1] - l.a[1]) })).sort((a, b) => a.d - b.d)
    return { circles, small: small!, large: large! }
  }

  it('has a cone of 2h and h, 2h long, and circles of the same diameters', () => {
    // ISO 5456-2:1996 Annex A, from memory: large diameter 2h, small h, length 2h for lettering height h.
    for (const p of ['first angle', 'third angle'] as const) {
      const { circles, small, large } = parts(p)
      expect(circles.map((c) => 2 * c.r).sort((a, b) => a - b)).toEqual([3.5, 7])
      expect([small.d, large.d]).toEqual([3.5, 7])
      expect(Math.abs(large.x - small.x)).toBeCloseTo(7, 12)
    }
  })

  it('shows the view of the small end beside that end in third angle, beyond the large one in first', () => {
    // Descriptive geometry: the end view shows both circles only when looking at the small end.
    const third = parts('third angle')
    const c3 = third.circles[0]!.c[0]
    expect(Math.abs(c3 - third.small.x)).toBeLessThan(Math.abs(c3 - third.large.x))
    const first = parts('first angle')
    const c1 = first.circles[0]!.c[0]
    expect(Math.abs(c1 - first.large.x)).toBeLessThan(Math.abs(c1 - first.small.x))
  })
})

describe('border', () => {
  const zones = (name: string, practice: 'ASME' | 'ISO') => {
    const f = formatNamed(name)!
    const items = border(f, practiceFigures(practice, name))
    return { f, items, zones: texts(items).filter((t) => t.role === 'zone') }
  }

  it('letters ISO zones from the top and numbers them from the left', () => {
    // ISO 5457:1999 §4.4: A3 has fields 1 to 8 and A to F.
    const { f, zones: z } = zones('A3', 'ISO')
    const top = z.filter((t) => t.at[1] > f.height - 20).sort((a, b) => a.at[0] - b.at[0])
    expect(top.map((t) => t.text).join('')).toBe('12345678')
    const left = z.filter((t) => t.at[0] < 25).sort((a, b) => b.at[1] - a.at[1])
    expect(
      left
        .map((t) => t.text)
        .filter((t) => /[A-Z]/.test(t))
        .join(''),
    ).toBe('ABCDEF')
  })

  it('has the number of fields of the standard on every sheet', () => {
    // ISO 5457:1999 Table 2: A0 24 × 16, A1 16 × 12, A2 12 × 8, A3 8 × 6, A4 6 × 4.
    for (const [name, last] of [
      ['A0', ['24', 'R']],
      ['A1', ['16', 'M']],
      ['A2', ['12', 'H']],
      ['A3', ['8', 'F']],
      ['A4', ['4', 'F']],
    ] as const) {
      const names = new Set(zones(name, 'ISO').zones.map((t) => t.text))
      const figures = [...names].filter((t) => /\d/.test(t)).map(Number)
      expect(String(Math.max(...figures))).toBe(last[0])
      expect(
        [...names]
          .filter((t) => /[A-Z]/.test(t))
          .sort()
          .at(-1),
      ).toBe(last[1])
    }
  })

  it('counts ASME zones from the lower right', () => {
    // ASME Y14.1 §5, from memory: B size 4 by 2, D size 8 by 4.
    const { f, zones: z } = zones('D', 'ASME')
    const top = z.filter((t) => t.at[1] > f.height - 20).sort((a, b) => b.at[0] - a.at[0])
    expect(top.map((t) => t.text).join('')).toBe('12345678')
    const right = z.filter((t) => t.at[0] > f.width - 30).sort((a, b) => a.at[1] - b.at[1])
    expect(
      right
        .map((t) => t.text)
        .filter((t) => /[A-Z]/.test(t))
        .join(''),
    ).toBe('ABCD')
  })

  it('stays on the paper and marks the middles', () => {
    for (const [name, practice] of [
      ['A4', 'ISO'],
      ['A0', 'ISO'],
      ['A', 'ASME'],
      ['E', 'ASME'],
    ] as const) {
      const { f, items } = zones(name, practice)
      let middles = 0
      for (const i of items) {
        if (i.item !== 'stroke') continue
        const b = curveBox(i.curve)
        expect(b.min[0]).toBeGreaterThanOrEqual(-1e-9)
        expect(b.min[1]).toBeGreaterThanOrEqual(-1e-9)
        expect(b.max[0]).toBeLessThanOrEqual(f.width + 1e-9)
        expect(b.max[1]).toBeLessThanOrEqual(f.height + 1e-9)
        const upright = b.min[0] === f.width / 2 && b.max[0] === f.width / 2
        const level = b.min[1] === f.height / 2 && b.max[1] === f.height / 2
        if (upright || level) middles++
      }
      expect(middles).toBe(4)
    }
  })
})
