import { describe, expect, test } from 'vitest'
import { metricLimits, usualClass } from '../../src/tolerance/threads/metric-limits.ts'
import { coarsePitches, finePitches, metricDiameters } from '../../src/tolerance/threads/metric-series.ts'
import { positions, threadTolerance } from '../../src/tolerance/threads/metric-tolerances.ts'
import { readThread } from '../../src/tolerance/threads/read-thread.ts'
import { type MetricThread, threadText } from '../../src/tolerance/threads/thread.ts'

function metric(text: string): MetricThread {
  const read = readThread(text)
  if (!read.ok || read.value.kind !== 'metric')
    throw new Error(`${text}: ${read.ok ? 'not metric' : read.problem.text}`)
  return read.value
}
function screw(text: string) {
  const found = metricLimits(metric(text))
  if (!found.ok || found.value.of !== 'screw') throw new Error(text)
  return found.value
}
function hole(text: string) {
  const found = metricLimits(metric(text))
  if (!found.ok || found.value.of !== 'hole') throw new Error(text)
  return found.value
}

describe('ISO 965 limits', () => {
  // Looked up: a fastener maker's table "Limits for metric coarse threads according to ISO 965" (mastik.pt, page 711):
  // class, major max min, pitch max min. Above M6: from memory (ISO 965-2, the same in ASME B1.13M).
  const screws = `
    M1-6h 1.000 0.933 0.838 0.785
    M1.2-6h 1.200 1.133 1.038 0.985
    M1.4-6h 1.400 1.325 1.205 1.149
    M1.6-6g 1.581 1.496 1.354 1.291
    M1.8-6g 1.781 1.696 1.554 1.491
    M2-6g 1.981 1.886 1.721 1.654
    M2.5-6g 2.480 2.380 2.188 2.117
    M3-6g 2.980 2.874 2.655 2.580
    M3.5-6g 3.479 3.354 3.089 3.004
    M4-6g 3.978 3.838 3.523 3.433
    M5-6g 4.976 4.826 4.456 4.361
    M6-6g 5.974 5.794 5.324 5.212
    M8-6g 7.972 7.760 7.160 7.042
    M10-6g 9.968 9.732 8.994 8.862
    M12-6g 11.966 11.701 10.829 10.679
    M16-6g 15.962 15.682 14.663 14.503
    M20-6g 19.958 19.623 18.334 18.164
    M24-6g 23.952 23.577 22.003 21.803
    M30-6g 29.947 29.522 27.674 27.462
    M36-6g 35.940 35.465 33.342 33.118
    M42-6g 41.937 41.437 39.014 38.778
    M48-6g 47.929 47.399 44.681 44.431
    M56-6g 55.925 55.365 52.353 52.088
    M64-6g 63.920 63.320 60.023 59.743
    M8×1-6g 7.974 7.794 7.324 7.212
    M10×1.25-6g 9.972 9.760 9.160 9.042
    M12×1.25-6g 11.972 11.760 11.160 11.028`
  test('of screws match the printed table, 27 sizes', () => {
    const lines = screws.trim().split('\n')
    expect(lines.length).toBe(27)
    for (const line of lines) {
      const [text, ...printed] = line.trim().split(' ') as [string, ...string[]]
      const found = screw(text)
      expect([found.major.max, found.major.min, found.pitch.max, found.pitch.min], text).toEqual(printed.map(Number))
    }
  })
  // Looked up: a tap maker's guide, "Flank dia., tolerance 6H" (UNI 4535-64), coarse pitch: pitch min max.
  // The fine pitches and the minor diameters below: from memory (ISO 965-2).
  const holes = `
    M1.6-6H 1.373 1.458
    M1.8-6H 1.573 1.658
    M2-6H 1.740 1.830
    M2.2-6H 1.908 2.003
    M2.5-6H 2.208 2.303
    M3-6H 2.675 2.775
    M3.5-6H 3.110 3.222
    M4-6H 3.545 3.663
    M4.5-6H 4.013 4.131
    M5-6H 4.480 4.605
    M6-6H 5.350 5.500
    M7-6H 6.350 6.500
    M8-6H 7.188 7.348
    M9-6H 8.188 8.348
    M10-6H 9.026 9.206
    M11-6H 10.026 10.206
    M12-6H 10.863 11.063
    M14-6H 12.701 12.913
    M16-6H 14.701 14.913
    M18-6H 16.376 16.600
    M20-6H 18.376 18.600
    M24-6H 22.051 22.316
    M30-6H 27.727 28.007
    M36-6H 33.402 33.702
    M8×1-6H 7.350 7.500
    M10×1.25-6H 9.188 9.348
    M12×1.5-6H 11.026 11.216
    M16×1.5-6H 15.026 15.216
    M20×1.5-6H 19.026 19.216
    M24×2-6H 22.701 22.925`
  test('of holes match the printed table, 30 sizes', () => {
    const lines = holes.trim().split('\n')
    expect(lines.length).toBe(30)
    for (const line of lines) {
      const [text, ...printed] = line.trim().split(' ') as [string, ...string[]]
      const found = hole(text)
      expect([found.pitch.min, found.pitch.max], text).toEqual(printed.map(Number))
    }
  })
  test('minor diameters of holes, 6H', () => {
    const printed: [string, number, number][] = [
      ['M3', 2.459, 2.599],
      ['M4', 3.242, 3.422],
      ['M5', 4.134, 4.334],
      ['M6', 4.917, 5.153],
      ['M8', 6.647, 6.912],
      ['M10', 8.376, 8.676],
      ['M12', 10.106, 10.441],
      ['M16', 13.835, 14.21],
      ['M20', 17.294, 17.744],
      ['M24', 20.752, 21.252],
      ['M30', 26.211, 26.771],
      ['M36', 31.67, 32.27],
    ]
    for (const [text, min, max] of printed) expect(hole(`${text}-6H`).minor, text).toEqual({ min, max })
  })
  // ISO 965-1 tables 3 to 5, other grades, µm, from memory: pitches 0.5 0.75 1 1.25 1.5 1.75 2 2.5 3 3.5 4 4.5 5 5.5 6.
  test('other grades of crest diameters, and pitch diameters of M10, match the tables as recalled', () => {
    const pitches = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6]
    const row = (which: 'screw major' | 'hole minor', grade: number) =>
      pitches.map((pitch) => threadTolerance(which, grade, 100, pitch))
    expect(row('screw major', 4)).toEqual([67, 90, 112, 132, 150, 170, 180, 212, 236, 265, 300, 315, 335, 355, 375])
    expect(row('screw major', 6)).toEqual([106, 140, 180, 212, 236, 265, 280, 335, 375, 425, 475, 500, 530, 560, 600])
    expect(row('screw major', 8).slice(2)).toEqual([280, 335, 375, 425, 450, 530, 600, 670, 750, 800, 850, 900, 950])
    expect(row('hole minor', 4)).toEqual([90, 118, 150, 170, 190, 212, 236, 280, 315, 355, 375, 425, 450, 475, 500])
    expect(row('hole minor', 5)).toEqual([112, 150, 190, 212, 236, 265, 300, 355, 400, 450, 475, 530, 560, 600, 630])
    expect(row('hole minor', 7)).toEqual([180, 236, 300, 335, 375, 425, 475, 560, 630, 710, 750, 850, 900, 950, 1000])
    const m10 = (which: 'screw pitch' | 'hole pitch', from: number, to: number) =>
      Array.from({ length: to - from + 1 }, (_, i) => threadTolerance(which, from + i, 10, 1.5))
    expect(m10('screw pitch', 3, 9)).toEqual([67, 85, 106, 132, 170, 212, 265])
    expect(m10('hole pitch', 4, 8)).toEqual([112, 140, 180, 224, 280])
  })
  // Looked up: a tap maker's comparison of pitch diameter tolerances, µm (docs.steelcam.org, Yamawa): 4H, 5H, 6H, 6G, M1 to M5.
  test('other classes of holes match the printed tolerances', () => {
    const of = (text: string) => {
      const { pitch } = hole(text)
      return Math.round((pitch.max - pitch.min) * 1000)
    }
    expect([of('M1-4H'), of('M1-5H'), of('M1-6H')]).toEqual([45, 56, 71])
    expect([of('M1.4-6H'), of('M1.6-6H'), of('M2-6H'), of('M2.5-6H'), of('M3-6H')]).toEqual([75, 85, 90, 95, 100])
    // 6G: printed as shift and as upper limit from the basic size.
    expect(Math.round((hole('M3-6G').pitch.max - 2.675) * 1000)).toBe(120)
    expect(Math.round((hole('M4-6G').pitch.max - 3.545) * 1000)).toBe(140)
    expect(Math.round((hole('M5-6G').pitch.max - 4.48) * 1000)).toBe(149)
  })

  // ISO 965-1, formulas for tolerances and deviations (µm, d geometric mean of the diameter step); the standard rounds the
  // outcome to R 40, whose steps are 6 %, and to whole µm below 100;
  // one value lies nearly a step off (Td of pitch 4: 452 by the formula, 475 in the table).
  test('all tables follow the formulas of the standard within the rounding to R 40', () => {
    const near = (found: number, exact: number, what: string, share = 0.055) =>
      expect(Math.abs(found - exact), what).toBeLessThan(Math.max(1.3, share * exact))
    let cells = 0
    for (const pitch of [0.25, 0.35, 0.5, 0.75, 0.8, 1, 1.25, 1.5, 2, 3, 4, 6, 8]) {
      near(
        threadTolerance('screw major', 6, 100, pitch)!,
        180 * Math.cbrt(pitch * pitch) - 3.15 / Math.sqrt(pitch),
        `Td ${pitch}`,
      )
      near(
        threadTolerance('hole minor', 6, 100, pitch)!,
        pitch < 1 ? 433 * pitch - 190 * pitch ** 1.22 : 230 * pitch ** 0.7,
        `TD1 ${pitch}`,
      )
      near(positions.g.get(pitch)!, 15 + 11 * pitch, `g ${pitch}`)
      // Below 0.75 mm the standard gives e less than the formula.
      if (pitch >= 0.75) near(positions.e.get(pitch)!, 50 + 11 * pitch, `e ${pitch}`)
      if (pitch >= 0.35) near(positions.f.get(pitch)!, 30 + 11 * pitch, `f ${pitch}`)
      cells += 5
    }
    const steps = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180]
    for (let i = 1; i < steps.length; i++) {
      const mean = Math.sqrt(steps[i - 1]! * steps[i]!)
      for (const pitch of [
        0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5,
        6, 8,
      ]) {
        const found = threadTolerance('screw pitch', 6, steps[i]!, pitch)
        if (found === undefined) continue
        cells++
        near(found, 90 * pitch ** 0.4 * mean ** 0.1, `Td2 ${pitch} at ${steps[i]}`)
        near(
          threadTolerance('hole pitch', 6, steps[i]!, pitch)!,
          1.32 * 90 * pitch ** 0.4 * mean ** 0.1,
          `TD2 ${pitch} at ${steps[i]}`,
        )
        near(
          threadTolerance('screw pitch', 4, steps[i]!, pitch)!,
          0.63 * 90 * pitch ** 0.4 * mean ** 0.1,
          `Td2(4) ${pitch}`,
        )
        near(
          threadTolerance('hole pitch', 7, steps[i]!, pitch)!,
          1.7 * 90 * pitch ** 0.4 * mean ** 0.1,
          `TD2(7) ${pitch}`,
          0.07,
        )
      }
    }
    expect(cells).toBeGreaterThan(100)
  })
  test('the usual classes give limits for every thread of ISO 261 up to 180 mm that has a tolerance', () => {
    let missing = 0
    for (const diameter of metricDiameters) {
      for (const pitch of [
        ...(coarsePitches.has(diameter) ? [coarsePitches.get(diameter)!] : []),
        ...(finePitches.get(diameter) ?? []),
      ]) {
        const thread = metric(`M${diameter}×${pitch}`)
        const found = metricLimits(thread, usualClass(thread, 'hole'))
        if (found.ok && found.value.of === 'hole') expect(found.value.minor.max).toBeLessThan(found.value.pitch.min)
        else missing++
      }
    }
    // Fine pitches that ISO 261 lists but for whose diameter step ISO 965-1 tables no pitch diameter tolerance.
    expect(missing).toBeLessThanOrEqual(6)
  })
})

describe('metric designations', () => {
  test('are read in the ways they are written', () => {
    expect(metric('M6')).toMatchObject({ diameter: 6, pitch: 1, coarse: true, pitchTyped: false, leftHand: false })
    expect(metric('M8x1 - 6H')).toMatchObject({ pitch: 1, coarse: false, class: { text: '6H', internal: true } })
    expect(metric('M10×1,25')).toMatchObject({ pitch: 1.25 })
    expect(metric('m10x1.5-5g6g LH')).toMatchObject({
      class: { pitch: { grade: 5, position: 'g' }, crest: { grade: 6, position: 'g' } },
      leftHand: true,
    })
    expect(metric('M20×2 - 6H/6g')).toMatchObject({ class: { text: '6H' }, mate: { text: '6g' } })
    expect(metric('M6 LH')).toMatchObject({ leftHand: true })
  })
  test('are printed as the standard writes them', () => {
    expect(threadText(metric('M6'))).toBe('M6')
    expect(threadText(metric('m8x1-6h'))).toBe('M8×1 - 6h')
    expect(threadText(metric('M8x1.25-6H'))).toBe('M8×1.25 - 6H')
  })
  test('what does not exist is refused with the nearest that does', () => {
    const problem = (text: string) => {
      const read = readThread(text)
      return read.ok ? undefined : read.problem
    }
    expect(problem('M6.5')?.instead).toBe('M6')
    expect(problem('M8×1.3')).toMatchObject({ instead: '1.25', span: { from: 3, to: 6 } })
    expect(problem('M6-3H')).toMatchObject({ instead: '4H', span: { from: 3, to: 5 } })
    expect(problem('M6-5g')?.instead).toBe('5g4g')
    expect(problem('M6-6k')?.instead).toBe('6g')
    expect(problem('M15')?.instead).toBe('M15×1.5')
    expect(problem('M')).toBeDefined()
  })
})
