import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PracticeName, practiceFigures } from '../../src/standards/practice-figures.ts'
import { fitChain, fitChainLoop } from '../../src/views/dashes/chain.ts'
import type { DashRun } from '../../src/views/dashes/dash-run.ts'
import { fitHidden, fitHiddenLoop } from '../../src/views/dashes/hidden.ts'
import { paperLines } from '../../src/views/dashes/paper-lines.ts'
import type { LineEnd } from '../../src/views/view.ts'

// ASME Y14.2-2014 and ISO 128-2:2022 by way of the practice figures; ISO 128-21 fits the dash, not the gap (from memory).
const practices: readonly PracticeName[] = ['ASME', 'ISO']
const sum = (run: DashRun) => (run.dashes ?? []).reduce((a, b) => a + b, 0) + run.lead + run.trail
const ends = fc.constantFrom<LineEnd>('corner', 'continues', 'free')
const lengths = fc.double({ min: 0.05, max: 900, noNaN: true })

/** State of the pen at a distance from the start. */
function isOn(run: DashRun, at: number): boolean {
  if (!run.dashes) return true
  let s = run.lead
  for (const [i, d] of run.dashes.entries()) {
    if (at >= s - 1e-9 && at <= s + d + 1e-9) return i % 2 === 0
    s += d
  }
  return false
}

describe.each(practices)('dashes of a hidden line, %s', (practice) => {
  const figure = practiceFigures(practice).dashes.hidden

  it('fill the line exactly and begin and end with a dash', () => {
    fc.assert(
      fc.property(lengths, ends, ends, (length, a, b) => {
        const run = fitHidden(length, figure, [a, b])
        if (!run.dashes) return length < 2 * figure.gap * 1.7
        expect(sum(run)).toBeCloseTo(length, 9)
        expect(run.dashes.length % 2).toBe(1)
        expect(Math.min(...run.dashes)).toBeGreaterThan(0)
        expect(run.lead > 0).toBe(a === 'continues')
        expect(run.trail > 0).toBe(b === 'continues')
        return true
      }),
    )
  })

  it('show at least two dashes and a gap wherever there is room for it', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const run = fitHidden(length, figure, ['corner', 'corner'])
        expect((run.dashes?.length ?? 0) >= 3).toBe(length >= 2 * figure.gap)
      }),
    )
  })

  it('keep the gap and hold the dash within its range on lines of two nominal dashes or more', () => {
    fc.assert(
      fc.property(fc.double({ min: 2 * figure.long + figure.gap, max: 900, noNaN: true }), (length) => {
        const { dashes } = fitHidden(length, figure, ['corner', 'corner'])
        for (const [i, d] of dashes!.entries()) {
          if (i % 2 === 1) expect(d).toBeCloseTo(figure.gap, 9)
          else {
            expect(d).toBeGreaterThanOrEqual(figure.longRange[0])
            expect(d).toBeLessThanOrEqual(figure.longRange[1])
          }
        }
      }),
    )
  })

  it('fill a circle with whole periods, alike in all quarters where the dash allows it', () => {
    fc.assert(
      fc.property(fc.double({ min: 4 * figure.gap, max: 900, noNaN: true }), (length) => {
        const run = fitHiddenLoop(length, figure)
        expect(sum(run)).toBeCloseTo(length, 9)
        expect(run.dashes!.length % 2).toBe(0)
        expect(new Set(run.dashes!.filter((_, i) => i % 2 === 0).map((d) => d.toFixed(9))).size).toBe(1)
        if (length > 8 * (figure.long + figure.gap)) expect((run.dashes!.length / 2) % 4).toBe(0)
      }),
    )
  })
})

it('fits a 40 mm ISO hidden line as ISO 128-21 does: n = round((l - 12d)/15d), dash = (l - 3d·n)/(n + 1)', () => {
  // d = 0.25: n = round((40 - 3)/3.75) = round(9.87) = 10; dash = (40 - 0.75·10)/11 = 2.954545…
  const { dashes } = fitHidden(40, practiceFigures('ISO').dashes.hidden, ['corner', 'corner'])
  expect(dashes).toHaveLength(21)
  expect(dashes![0]).toBeCloseTo(32.5 / 11, 12)
  expect(dashes![1]).toBe(0.75)
})

describe.each(practices)('dashes of a centre line, %s', (practice) => {
  const figures = practiceFigures(practice)
  const figure = figures.dashes.centre
  const on = figures.centreCross
  const short = (d: number) => Math.abs(d - figure.short) < 1e-9

  it('fill the line, begin and end with a long dash, long and short by turns', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const run = fitChain(length, figure)
        if (!run.dashes) return
        expect(sum(run)).toBeCloseTo(length, 9)
        const marks = run.dashes.filter((_, i) => i % 2 === 0)
        expect(marks.length % 2).toBe(1)
        marks.forEach((d, i) => {
          if (i % 2 === 1) expect(short(d)).toBe(true)
          else expect(d).toBeGreaterThanOrEqual(figure.longRange[0] / 2)
        })
      }),
    )
  })

  it('hold the long dash within its range on lines of two nominal long dashes or more', () => {
    fc.assert(
      fc.property(fc.double({ min: 2.4 * figure.long, max: 900, noNaN: true }), (length) => {
        const longs = fitChain(length, figure).dashes!.filter((_, i) => i % 4 === 0)
        expect(Math.min(...longs)).toBeGreaterThanOrEqual(figure.longRange[0])
        expect(Math.max(...longs)).toBeLessThanOrEqual(figure.longRange[1])
      }),
    )
  })

  it('lay the dash of the practice on every crossing', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 10, max: 80, noNaN: true }), { minLength: 2, maxLength: 6 }), (steps) => {
        const stops: number[] = []
        let s = 0
        for (const step of steps) stops.push((s += step))
        const length = stops.pop()!
        const run = fitChain(length, figure, stops, on)
        expect(sum(run)).toBeCloseTo(length, 9)
        for (const c of stops) {
          // The dash lies evenly about a short crossing, and reaches to both sides of a long one.
          const half = on === 'short' ? figure.short / 2 : figure.longRange[0] / 8
          expect(isOn(run, c - half + 1e-6) && isOn(run, c) && isOn(run, c + half - 1e-6)).toBe(true)
          if (on === 'short') expect(isOn(run, c + half + figure.gap / 2)).toBe(false)
        }
      }),
    )
  })

  it('lay no gap on a crossing, however close the crossings', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.5, max: 30, noNaN: true }), { minLength: 2, maxLength: 8 }), (steps) => {
        const stops: number[] = []
        let s = 0
        for (const step of steps) stops.push((s += step))
        const length = stops.pop()!
        const run = fitChain(length, figure, stops, on)
        for (const c of stops) expect(isOn(run, c)).toBe(true)
      }),
    )
  })

  it('close on themselves round a bolt circle, a dash of the practice on each hole', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 12 }), fc.double({ min: 12, max: 60, noNaN: true }), (count, step) => {
        const run = fitChainLoop(
          count * step,
          figure,
          Array.from({ length: count }, (_, i) => i * step),
          on,
        )
        expect(sum(run)).toBeCloseTo(count * step, 9)
        for (let i = 0; i < count; i++) expect(isOn(run, i * step)).toBe(true)
      }),
    )
  })
})

// Common practice, no source.
it('breaks a long ASME line through two narrow slots, their ends on long dashes: .219 in wide, 1.250 apart', () => {
  // 31.75 + 5.56 + 2·3 = 43.31 with crossings 5.78 from each end, where 1.5 + 1.5 leave 2.78: less than a short dash.
  const { dashes } = fitChain(43.31, practiceFigures('ASME').dashes.centre, [5.78, 37.53], 'short')
  expect(dashes!.map((d) => Number(d.toFixed(3)))).toEqual([18.655, 1.5, 3, 1.5, 18.655])
})

it('leaves a short ASME line unbroken where its long dashes would look like short ones', () => {
  // 12 = 2·3 + 2·1.5 + 3 would be three equal dashes; 15 has long ones of 4.5.
  expect(fitChain(12, practiceFigures('ASME').dashes.centre).dashes).toBeUndefined()
  expect(fitChain(15, practiceFigures('ASME').dashes.centre).dashes).toEqual([4.5, 1.5, 3, 1.5, 4.5])
})

it('leaves a centre line across a tiny circle unbroken (ASME Y14.2 §2.7)', () => {
  expect(fitChain(4, practiceFigures('ASME').dashes.centre, [2], 'short').dashes).toBeUndefined()
})

it('crosses ASME centre lines of a ⌀20 circle on short dashes: 10 mm long, 1.5 gap, 3 short', () => {
  // 20 mm and 3 mm past each side: 26 = 2 long + 2·1.5 + 3, so the long dash is 10.
  expect(fitChain(26, practiceFigures('ASME').dashes.centre, [13], 'short').dashes).toEqual([10, 1.5, 3, 1.5, 10])
})

describe.each(practices)('a centre line under an edge on paper, %s', (practice) => {
  it('is two dashes, from a gap past each end of the edge to the overrun', () => {
    const figures = practiceFigures(practice)
    const { gap } = figures.dashes.centre
    const curve = { kind: 'line', a: [0, 5], b: [20, 5] } as const
    const line = { curve, kind: 'centre', sources: [], features: ['hole'], overrun: [3, 3], covered: true } as const
    const told = paperLines([line], 2, figures).map((l) => l.curve.kind === 'line' && [l.curve.a, l.curve.b])
    expect(told).toEqual([
      [
        [-3, 10],
        [-gap, 10],
      ],
      [
        [40 + gap, 10],
        [43, 10],
      ],
    ])
    expect(paperLines([{ ...line, overrun: [0, 3] }], 2, figures)).toHaveLength(1)
  })
})
