import { bad, good, type Outcome } from '../../brief/outcome.ts'
import { standardTolerance } from './grades.ts'
import { boreJ, shaftJ, shaftK, shaftLower, shaftUpper } from './shaft-table.ts'
import { readToleranceClass, type ToleranceClass, zones } from './symbol.ts'

/** Limit deviations of a tolerance class at a nominal size. */
export interface FitLimits {
  readonly symbol: string
  readonly of: 'hole' | 'shaft'
  /** Nominal size, mm. */
  readonly size: number
  /** Upper and lower limit deviation, mm. */
  readonly upper: number
  readonly lower: number
  /** The same in µm, as the tables print them. */
  readonly upperMicrons: number
  readonly lowerMicrons: number
}

/**
 * Limit deviations of an ISO 286 tolerance class (`H7`, `k6`) at a nominal size in mm.
 * ISO 286-1:2010 tables 1 to 5 with the delta rule for K, M, N up to IT8 and P to ZC up to IT7.
 * JS and js are exactly ±IT/2; some national tables round odd values of grades 7 to 11 down to even ones.
 */
export function fitLimits(symbol: string, sizeMm: number): Outcome<FitLimits> {
  const read = readToleranceClass(symbol)
  return read.ok ? classLimits(read.value, sizeMm) : read
}

/** Limit deviations of a tolerance class already read. */
function classLimits(wanted: ToleranceClass, sizeMm: number): Outcome<FitLimits> {
  if (!(sizeMm > 0 && sizeMm <= 3150)) {
    return bad({
      text: `ISO 286 covers sizes up to 3150 mm, not ${sizeMm} mm.`,
      expected: 'a size above 0 up to 3150 mm',
    })
  }
  const width = standardTolerance(wanted.grade, sizeMm)
  if (width === undefined) return refuse(wanted, sizeMm, `IT${wanted.grade} is given up to 500 mm only.`)
  if (tooCoarse(wanted.grade, sizeMm)) return refuse(wanted, sizeMm, 'Grades 14 to 18 are not used up to 1 mm.')
  const deviation = fundamental(wanted, sizeMm)
  if (deviation === undefined) return refuse(wanted, sizeMm, `ISO 286 gives no ${wanted.symbol} at ${sizeMm} mm.`)
  const { at, value } = deviation
  if (at === 'both') return good(limits(wanted, sizeMm, width / 2, -width / 2))
  return good(
    at === 'upper' ? limits(wanted, sizeMm, value, value - width) : limits(wanted, sizeMm, value + width, value),
  )
}

function limits(of: ToleranceClass, size: number, upper: number, lower: number): FitLimits {
  return {
    symbol: of.symbol,
    of: of.of,
    size,
    upper: upper / 1000,
    lower: lower / 1000,
    upperMicrons: upper,
    lowerMicrons: lower,
  }
}

/** The fundamental deviation, µm, and the limit at which it stands. */
interface Deviation {
  readonly at: 'upper' | 'lower' | 'both'
  readonly value: number
}

function fundamental({ of, zone, grade }: ToleranceClass, sizeMm: number): Deviation | undefined {
  if (zone === 'js') return { at: 'both', value: 0 }
  if (isClearance(zone)) {
    // a and b are not used up to 1 mm.
    const value = sizeMm <= 1 && (zone === 'a' || zone === 'b') ? undefined : shaftUpper(zone, sizeMm)
    if (value === undefined) return undefined
    return of === 'shaft' ? { at: 'upper', value } : { at: 'lower', value: 0 - value }
  }
  const value = of === 'shaft' ? shaftTight(zone, grade, sizeMm) : holeTight(zone, grade, sizeMm)
  return value === undefined ? undefined : { at: of === 'shaft' ? 'lower' : 'upper', value }
}

/** Lower limit deviation of j, k … zc. */
function shaftTight(zone: string, grade: string, sizeMm: number): number | undefined {
  if (zone === 'k') return shaftK(Number(grade), sizeMm)
  return zone === 'j' ? shaftJ(grade, sizeMm) : shaftLower(zone, sizeMm)
}

/** Upper limit deviation of J, K … ZC. */
function holeTight(zone: string, grade: string, sizeMm: number): number | undefined {
  if (zone === 'j') return boreJ(grade, sizeMm)
  const n = grade === '01' ? -1 : Number(grade)
  const eased = sizeMm > 3 && sizeMm <= 500 && n <= (zone === 'k' || zone === 'm' || zone === 'n' ? 8 : 7)
  if (eased && n < 3) return undefined
  if (zone === 'k' && n > 8 && sizeMm > 3 && sizeMm <= 500) return undefined
  if (zone === 'n' && n > 8 && sizeMm <= 500) {
    // N9 and coarser end at the zero line; up to 3 mm they keep −4 µm, and up to 1 mm they are not used.
    if (sizeMm <= 1) return undefined
    return sizeMm <= 3 ? -4 : 0
  }
  // ISO 286-1 special case: M6 above 250 up to 315 mm has −9 µm, not −11.
  if (zone === 'm' && n === 6 && sizeMm > 250 && sizeMm <= 315) return -9
  // K mirrors the k of grades 4 to 7, whatever its own grade.
  const mirrored = zone === 'k' ? shaftK(5, sizeMm) : shaftLower(zone, sizeMm)
  return mirrored === undefined ? undefined : 0 - mirrored + (eased ? delta(n, sizeMm) : 0)
}

/** Δ = ITn − IT(n−1), by which a hole of the same letter is eased so that a fit has the same clearance on either basis. None up to 3 mm. */
export function delta(grade: number, sizeMm: number): number {
  if (sizeMm <= 3 || sizeMm > 500) return 0
  return standardTolerance(String(grade), sizeMm)! - standardTolerance(String(grade - 1), sizeMm)!
}

function isClearance(zone: string): boolean {
  return zones.indexOf(zone) <= zones.indexOf('h')
}

function dressed(of: 'hole' | 'shaft', zone: string, grade: string): ToleranceClass {
  return { of, zone, grade, symbol: (of === 'hole' ? zone.toUpperCase() : zone) + grade }
}

function tooCoarse(grade: string, sizeMm: number): boolean {
  return sizeMm <= 1 && Number(grade) >= 14
}

/** Refuses a class that is not given at a size and offers the nearest grade of its zone that is, else the nearest zone. */
function refuse(wanted: ToleranceClass, sizeMm: number, text: string): Outcome<never> {
  const n = wanted.grade === '01' ? -1 : Number(wanted.grade)
  const near = Array.from({ length: zones.length }, (_, i) => i + 1)
  const here = zones.indexOf(wanted.zone)
  const otherGrades = near.flatMap((step) => [n - step, n + step]).filter((grade) => grade >= 1 && grade <= 18)
  const otherZones = near
    .flatMap((step) => [zones[here - step], zones[here + step]])
    .filter((zone) => zone !== undefined)
  const legal = (c: ToleranceClass) =>
    standardTolerance(c.grade, sizeMm) !== undefined &&
    !tooCoarse(c.grade, sizeMm) &&
    fundamental(c, sizeMm) !== undefined
  const candidates = [
    ...otherGrades.map((grade) => dressed(wanted.of, wanted.zone, String(grade))),
    ...otherZones.map((zone) => dressed(wanted.of, zone, wanted.grade)),
    ...otherZones.flatMap((zone) => otherGrades.map((grade) => dressed(wanted.of, zone, String(grade)))),
  ]
  const instead = candidates.find(legal)!.symbol
  return bad({ text, expected: `${instead}, the nearest that is given`, instead })
}
