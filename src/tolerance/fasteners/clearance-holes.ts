import { bad, good, type Outcome } from '../../brief/outcome.ts'
import { standardTolerance } from '../iso286/grades.ts'

export type ClearanceFit = 'close' | 'normal' | 'loose'

/** A clearance hole: limits in inches with the drill's shop name, or in mm. */
export interface ClearanceHole {
  readonly screw: string
  readonly unit: 'inch' | 'mm'
  readonly drill: string
  /** Smallest diameter, which is the nominal one of metric holes. */
  readonly min: number
  readonly max: number
}

// ASME B18.2.8-1999 table 1, inch fasteners, from memory: drill, least and largest diameter in thousandths; close, normal, loose.
const inchTable = `
  #0 #51 67 71 #48 76 82 3/32 94 104
  #1 #46 81 85 #43 89 95 #37 104 114
  #2 3/32 94 98 #38 102 108 #32 116 126
  #3 #36 106 110 #32 116 122 #30 128 140
  #4 #31 120 124 #30 128 135 #27 144 156
  #5 9/64 141 145 5/32 156 163 11/64 172 184
  #6 #23 154 159 #18 170 177 #13 185 197
  #8 #15 180 185 #9 196 203 #3 213 225
  #10 #5 206 211 #2 221 228 B 238 250
  1/4 17/64 266 272 9/32 281 290 19/64 297 311
  5/16 21/64 328 334 11/32 344 353 23/64 359 373
  3/8 25/64 391 397 13/32 406 416 27/64 422 438
  7/16 29/64 453 460 15/32 469 479 31/64 484 500
  1/2 17/32 531 538 9/16 562 572 39/64 609 625
  5/8 21/32 656 663 11/16 688 698 47/64 734 754
  3/4 25/32 781 789 13/16 812 824 29/32 906 926
  7/8 29/32 906 914 15/16 938 950 1-1/32 1031 1051
  1 1-1/32 1031 1039 1-3/32 1094 1106 1-5/32 1156 1181
  1-1/8 1-5/32 1156 1164 1-7/32 1219 1235 1-5/16 1312 1337
  1-1/4 1-9/32 1281 1291 1-11/32 1344 1360 1-7/16 1438 1463
  1-3/8 1-7/16 1438 1448 1-1/2 1500 1516 1-39/64 1609 1634
  1-1/2 1-9/16 1562 1572 1-5/8 1625 1641 1-47/64 1734 1759`

// ISO 273:1979, mm, from memory: fine (H12), medium (H13), coarse (H14). ASME B18.2.8 has the same metric holes as
// close, normal and loose from M1.6 to M100.
const metricTable = `
  1 1.1 1.2 1.3
  1.2 1.3 1.4 1.5
  1.4 1.5 1.6 1.8
  1.6 1.7 1.8 2
  1.8 2 2.1 2.2
  2 2.2 2.4 2.6
  2.5 2.7 2.9 3.1
  3 3.2 3.4 3.6
  3.5 3.7 3.9 4.2
  4 4.3 4.5 4.8
  4.5 4.8 5 5.3
  5 5.3 5.5 5.8
  6 6.4 6.6 7
  7 7.4 7.6 8
  8 8.4 9 10
  10 10.5 11 12
  12 13 13.5 14.5
  14 15 15.5 16.5
  16 17 17.5 18.5
  18 19 20 21
  20 21 22 24
  22 23 24 26
  24 25 26 28
  27 28 30 32
  30 31 33 35
  33 34 36 38
  36 37 39 42
  39 40 42 45
  42 43 45 48
  45 46 48 52
  48 50 52 56
  52 54 56 62
  56 58 62 66
  60 62 66 70
  64 66 70 74
  68 70 74 78
  72 74 78 82
  76 78 82 86
  80 82 86 91
  85 87 91 96
  90 93 96 101
  95 98 101 107
  100 104 107 112
  105 109 112 117
  110 114 117 122
  115 119 122 127
  120 124 127 132
  125 129 132 137
  130 134 137 144
  140 144 147 155
  150 155 158 165`

const fits: readonly ClearanceFit[] = ['close', 'normal', 'loose']

/** Tolerance of a metric hole by its fit: H12, H13, H14. */
export const clearanceGrade: Readonly<Record<ClearanceFit, '12' | '13' | '14'>> = {
  close: '12',
  normal: '13',
  loose: '14',
}

const inchRows = new Map(
  inchTable
    .trim()
    .split('\n')
    .map((line) => {
      const [screw, ...cells] = line.trim().split(' ') as [string, ...string[]]
      return [screw, cells] as const
    }),
)
const metricRows = new Map(
  metricTable
    .trim()
    .split('\n')
    .map((line) => {
      const [screw, ...cells] = line.trim().split(' ').map(Number) as [number, number, number, number]
      return [screw, cells] as const
    }),
)

/** Inch screw sizes of ASME B18.2.8, smallest first. */
export const inchScrews: readonly string[] = [...inchRows.keys()]
/** Metric screw sizes of ISO 273, mm. */
export const metricScrews: readonly number[] = [...metricRows.keys()]

/** Clearance hole of an inch screw, named as in `inchScrews` (`#10`, `1/4`), by ASME B18.2.8; inches. */
export function inchClearance(screw: string, fit: ClearanceFit): Outcome<ClearanceHole> {
  const row = inchRows.get(screw)
  if (!row)
    return bad({
      text: `ASME B18.2.8 has no clearance hole for ${screw}.`,
      expected: `one of ${inchScrews.join(', ')}`,
    })
  const [drill, min, max] = row.slice(fits.indexOf(fit) * 3, fits.indexOf(fit) * 3 + 3) as [string, string, string]
  return good({ screw, unit: 'inch', drill, min: Number(min) / 1000, max: Number(max) / 1000 })
}

/**
 * Clearance hole of a metric screw by ISO 273, toleranced H12, H13 or H14; mm. The series fine, medium and coarse are called
 * close, normal and loose.
 */
export function metricClearance(diameterMm: number, fit: ClearanceFit): Outcome<ClearanceHole> {
  const row = metricRows.get(diameterMm)
  if (!row)
    return bad({
      text: `ISO 273 has no clearance hole for M${diameterMm}.`,
      expected: `one of M${metricScrews.join(', M')}`,
    })
  const min = row[fits.indexOf(fit)]!
  const width = standardTolerance(clearanceGrade[fit], min)!
  return good({
    screw: `M${diameterMm}`,
    unit: 'mm',
    drill: `${min} mm`,
    min,
    max: Math.round(min * 1000 + width) / 1000,
  })
}
