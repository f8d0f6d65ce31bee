import { bad, good, type Outcome } from '../../brief/outcome.ts'

// Socket head cap screws and their counterbores: ASME B18.3 and ASME B18.3.1M with the counterbore tables of Machinery's
// Handbook, from memory. Flat (countersunk) heads: ASME B18.3 table of hexagon socket flat countersunk head cap screws,
// looked up (boltport.com); ISO 10642, from memory.

/** A counterbore for a socket head cap screw, in the unit of the screw. */
export interface Counterbore {
  readonly screw: string
  readonly unit: 'inch' | 'mm'
  readonly headDiameter: number
  /** Equal to the screw's diameter in both standards: the least depth that buries the head. */
  readonly headHeight: number
  readonly diameter: number
  /** The same by DIN 974-1 series 1, mm, which is what ISO drawings usually show; metric screws M3 to M24 only. */
  readonly din974?: number
  /** Countersink under the head that clears its fillet. */
  readonly countersink: number
}

const inchRows = `
  #0 .060 .096 .125 .074
  #1 .073 .118 .15625 .087
  #2 .086 .140 .1875 .102
  #3 .099 .161 .21875 .115
  #4 .112 .183 .21875 .130
  #5 .125 .205 .25 .145
  #6 .138 .226 .28125 .158
  #8 .164 .270 .3125 .188
  #10 .190 .312 .375 .218
  1/4 .250 .375 .4375 .278
  5/16 .3125 .469 .53125 .346
  3/8 .375 .562 .625 .415
  7/16 .4375 .656 .71875 .483
  1/2 .500 .750 .8125 .552
  5/8 .625 .938 1 .689
  3/4 .750 1.125 1.1875 .828
  7/8 .875 1.312 1.375 .963
  1 1 1.500 1.625 1.100
  1-1/4 1.25 1.875 2 1.370
  1-1/2 1.5 2.250 2.375 1.640`

const metricRows = `
  M1.6 1.6 3 3.5 2
  M2 2 3.8 4.4 2.6
  M2.5 2.5 4.5 5.4 3.1
  M3 3 5.5 6.5 3.6
  M4 4 7 8.25 4.7
  M5 5 8.5 9.75 5.7
  M6 6 10 11.25 6.8
  M8 8 13 14.25 9.2
  M10 10 16 17.25 11.2
  M12 12 18 19.25 14.2
  M14 14 21 22.25 16.2
  M16 16 24 25.5 18.2
  M20 20 30 31.5 22.4
  M24 24 36 37.5 26.4
  M30 30 45 47.5 33.4
  M36 36 54 56.5 39.4
  M42 42 63 66 45.6
  M48 48 72 75 52.6`

// DIN 974-1 series 1 (no washer), mm, from memory.
const din974: ReadonlyMap<string, number> = new Map([
  ['M3', 6.5],
  ['M4', 8],
  ['M5', 10],
  ['M6', 11],
  ['M8', 15],
  ['M10', 18],
  ['M12', 20],
  ['M14', 24],
  ['M16', 26],
  ['M20', 33],
  ['M24', 40],
])

/** A flat head: its theoretical sharp diameter is the least countersink that takes it flush. */
export interface FlatHead {
  readonly screw: string
  readonly unit: 'inch' | 'mm'
  /** Included angle, degrees. */
  readonly angle: 82 | 90
  readonly headDiameter: number
  readonly headHeight: number
}

const inchFlat = `
  #0 .138 .044
  #1 .168 .054
  #2 .197 .064
  #3 .226 .073
  #4 .255 .083
  #5 .281 .090
  #6 .307 .097
  #8 .359 .112
  #10 .411 .127
  1/4 .531 .161
  5/16 .656 .198
  3/8 .781 .234
  7/16 .844 .234
  1/2 .938 .251
  5/8 1.188 .324
  3/4 1.438 .396`

const metricFlat = `
  M3 6.72 1.86
  M4 8.96 2.48
  M5 11.2 3.1
  M6 13.44 3.72
  M8 17.92 4.96
  M10 22.4 6.2
  M12 26.88 7.44
  M14 30.8 8.4
  M16 33.6 8.8
  M20 40.32 10.16`

function cells(rows: string): (readonly [string, readonly number[]])[] {
  return rows
    .trim()
    .split('\n')
    .map((line) => {
      const [screw, ...numbers] = line.trim().split(/\s+/) as [string, ...string[]]
      return [screw, numbers.map(Number)] as const
    })
}

export const counterbores: readonly Counterbore[] = [
  ...cells(inchRows).map((row) => ({ row, unit: 'inch' as const })),
  ...cells(metricRows).map((row) => ({ row, unit: 'mm' as const })),
].map(({ row: [screw, [height, head, diameter, countersink]], unit }) => ({
  screw,
  unit,
  headDiameter: head!,
  headHeight: height!,
  diameter: diameter!,
  ...(din974.has(screw) ? { din974: din974.get(screw)! } : {}),
  countersink: countersink!,
}))

export const flatHeads: readonly FlatHead[] = [
  ...cells(inchFlat).map((row) => ({ row, unit: 'inch' as const, angle: 82 as const })),
  ...cells(metricFlat).map((row) => ({ row, unit: 'mm' as const, angle: 90 as const })),
].map(({ row: [screw, [head, height]], unit, angle }) => ({
  screw,
  unit,
  angle,
  headDiameter: head!,
  headHeight: height!,
}))

/** Counterbore for a socket head cap screw (`#10`, `1/4`, `M6`). */
export function counterboreFor(screw: string): Outcome<Counterbore> {
  return find(counterbores, screw, 'counterbore')
}

/** Countersink for a hexagon socket flat head cap screw (`#10`, `1/4`, `M6`). */
export function flatHeadFor(screw: string): Outcome<FlatHead> {
  return find(flatHeads, screw, 'flat head')
}

function find<T extends { readonly screw: string }>(rows: readonly T[], screw: string, what: string): Outcome<T> {
  const found = rows.find((row) => row.screw === screw)
  return found
    ? good(found)
    : bad({ text: `There is no ${what} in the table for ${screw}.`, expected: rows.map((row) => row.screw).join(', ') })
}
