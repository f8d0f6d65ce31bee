import { describe, expect, it } from 'vitest'
import { formatNamed, inchFormats, metricFormats } from '../../src/standards/formats.ts'

const IN = 25.4

describe('metric sheets', () => {
  it('have the trimmed sizes of ISO 216', () => {
    // ISO 216:2007 §4 closed formula: side = 1000 · 2^(±1/4 − n/2) mm, rounded to the millimetre below a fifth.
    for (const [n, f] of [4, 3, 2, 1, 0].map((k, i) => [k, metricFormats[i]!] as const)) {
      const long = Math.floor(1000 * 2 ** (1 / 4 - n / 2) + 0.2)
      const short = Math.floor(1000 * 2 ** (-1 / 4 - n / 2) + 0.2)
      expect(f.name).toBe(`A${n}`)
      expect([f.width, f.height].sort((a, b) => b - a)).toEqual([long, short])
    }
  })

  it('have the drawing spaces of ISO 5457', () => {
    // ISO 5457:1999 Table 1, from memory: A0 821 × 1159, A1 574 × 811, A2 400 × 564, A3 277 × 390, A4 180 × 277.
    const spaces = Object.fromEntries(
      metricFormats.map((f) => [
        f.name,
        [f.width - f.margins.left - f.margins.right, f.height - f.margins.top - f.margins.bottom],
      ]),
    )
    expect(spaces).toEqual({ A4: [180, 277], A3: [390, 277], A2: [564, 400], A1: [811, 574], A0: [1159, 821] })
  })

  it('leave a filing margin of 20 mm and 10 mm elsewhere, in zones of 50 mm', () => {
    // ISO 5457:1999 §4.2 and §4.4, Table 2 (numbers of fields).
    const fields = { A4: [4, 6], A3: [8, 6], A2: [12, 8], A1: [16, 12], A0: [24, 16] }
    for (const f of metricFormats) {
      expect(f.margins).toEqual({ left: 20, right: 10, top: 10, bottom: 10 })
      expect([f.zones!.column, f.zones!.row]).toEqual([50, 50])
      expect([f.zones!.columns, f.zones!.rows]).toEqual(fields[f.name as keyof typeof fields])
    }
  })

  it('stand upright only as A4', () => {
    // ISO 5457:1999 §3.2.
    expect(metricFormats.filter((f) => f.height > f.width).map((f) => f.name)).toEqual(['A4'])
  })
})

describe('inch sheets', () => {
  it('double in area from A to E', () => {
    // ASME Y14.1 Table 1: A is 8.5 × 11 in, each next size doubles the short side.
    let [short, long] = [8.5, 11]
    for (const f of inchFormats) {
      expect(f.height / IN).toBeCloseTo(short, 9)
      expect(f.width / IN).toBeCloseTo(long, 9)
      ;[short, long] = [long, short * 2]
    }
  })

  it('have the frames of ASME Y14.1', () => {
    // ASME Y14.1-2012 Table 1 margins, from memory, as inner frames in inches.
    const frames = {
      A: [10.5, 7.74],
      B: [15.76, 10.24],
      C: [21, 15.5],
      D: [32, 21],
      E: [43, 32],
    }
    for (const f of inchFormats) {
      const [w, h] = frames[f.name as keyof typeof frames]
      expect((f.width - f.margins.left - f.margins.right) / IN).toBeCloseTo(w!, 9)
      expect((f.height - f.margins.top - f.margins.bottom) / IN).toBeCloseTo(h!, 9)
    }
  })

  it('count zones from the lower right, metric sheets from the upper left', () => {
    // ASME Y14.1 §5 (from memory); ISO 5457:1999 §4.4.
    expect(inchFormats.flatMap((f) => (f.zones ? [f.zones.origin] : []))).toEqual(Array(4).fill('lower right'))
    expect(metricFormats.map((f) => f.zones!.origin)).toEqual(Array(5).fill('upper left'))
  })
})

it('finds a format by any case of its name, and nothing for a wrong one', () => {
  expect(formatNamed(' a3 ')?.name).toBe('A3')
  expect(formatNamed('b')?.name).toBe('B')
  expect(formatNamed('A7')).toBeUndefined()
})
