import { describe, expect, it } from 'vitest'
import { drillText, pipeDrill } from '../../src/brief/pipe-drill.ts'

describe('drills before pipe taps', () => {
  // ASME B1.20.1 table 2, from memory: outside diameter, threads per inch, length of hand-tight engagement, inches
  it.each([
    ['1/16', 0.3125, 27, 0.16],
    ['1/8', 0.405, 27, 0.1615],
    ['1/4', 0.54, 18, 0.2278],
    ['3/8', 0.675, 18, 0.24],
    ['1/2', 0.84, 14, 0.32],
    ['3/4', 1.05, 14, 0.339],
    ['1', 1.315, 11.5, 0.4],
    ['1-1/4', 1.66, 11.5, 0.42],
    ['1-1/2', 1.9, 11.5, 0.42],
    ['2', 2.375, 11.5, 0.436],
  ])('%s NPT lies between the crests at the mouth and those three threads past hand-tight', (size, d, n, l1) => {
    const p = 1 / n
    // E0 = D − (0.05 D + 1.1) p, E1 = E0 + 0.0625 L1, depth of thread 0.8 p (ASME B1.20.1 3.1, from memory)
    const e1 = d - (0.05 * d + 1.1) * p + 0.0625 * l1
    const mouth = e1 - 0.8 * p
    const drill = pipeDrill(`${size}-${n} NPT`)!
    expect(drill.unit).toBe('inch')
    expect(drill.size).toBeLessThan(mouth)
    expect(drill.size).toBeGreaterThan(mouth - (l1 + 3 * p) / 16)
  })

  // ISO 228-1 table 1, from memory: minor diameter of the inside thread, and its tolerance, mm
  it.each([
    ['1/8', 8.566, 0.282],
    ['1/4', 11.445, 0.445],
    ['3/8', 14.95, 0.445],
    ['1/2', 18.631, 0.541],
    ['3/4', 24.117, 0.541],
    ['1', 30.291, 0.64],
    ['1-1/4', 38.952, 0.64],
    ['1-1/2', 44.845, 0.64],
    ['2', 56.656, 0.64],
  ])('G%s and Rp lie within the minor diameter of the inside thread, Rc below it', (size, least, tolerance) => {
    for (const drill of [pipeDrill(`G${size}`)!, pipeDrill(`Rp ${size}`)!]) {
      expect(drill.size).toBeGreaterThanOrEqual(least)
      expect(drill.size).toBeLessThanOrEqual(least + tolerance)
    }
    expect(pipeDrill(`Rc ${size}`)!.size).toBeLessThan(least)
    expect(pipeDrill(`Rc ${size}`)!.size).toBeGreaterThan(0.95 * least)
  })

  it('knows no other threads', () => {
    for (const text of ['M8', '1/4-20 UNC-2B', 'R 1/4', 'G9', '7-8 NPT']) expect(pipeDrill(text)).toBeUndefined()
  })

  it('is written in the unit of the brief', () => {
    expect(drillText(pipeDrill('1/8-27 NPT')!, 'inch')).toBe('⌀.339')
    expect(drillText(pipeDrill('1/8-27 NPT')!, 'mm')).toBe('⌀8.6')
    expect(drillText(pipeDrill('G1/4')!, 'inch')).toBe('⌀11.8 mm')
  })
})
