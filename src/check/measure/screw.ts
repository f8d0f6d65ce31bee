import type { HoleFeature } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import {
  type ClearanceHole,
  inchClearance,
  inchScrews,
  metricClearance,
  metricScrews,
} from '../../tolerance/fasteners/clearance-holes.ts'
import { type Counterbore, counterbores, type FlatHead, flatHeads } from '../../tolerance/fasteners/screw-heads.ts'

/** A screw by its name in the tables (`M8`, `#10`, `1/4`), with its diameter in mm. */
export interface Screw {
  readonly name: string
  readonly unit: 'inch' | 'mm'
  readonly mm: number
}

const mmOf = (value: number, unit: 'inch' | 'mm') => (unit === 'inch' ? value * 25.4 : value)

function screwNamed(name: string): Screw | undefined {
  const metric = /^M(\d+(?:\.\d+)?)$/i.exec(name)
  if (metric) {
    const mm = Number(metric[1])
    return metricScrews.includes(mm) ? { name: `M${mm}`, unit: 'mm', mm } : undefined
  }
  if (!inchScrews.includes(name)) return undefined
  const number = /^#(\d+)$/.exec(name)
  if (number) return { name, unit: 'inch', mm: 25.4 * (0.06 + 0.013 * Number(number[1])) }
  const [whole, fraction] = name.includes('-') ? name.split('-') : name.includes('/') ? ['0', name] : [name, '0/1']
  const [top, bottom] = fraction!.split('/').map(Number)
  return { name, unit: 'inch', mm: 25.4 * (Number(whole) + top! / bottom!) }
}

/** The screw of a thread's designation: `M8×1` is M8, `1/4-20 UNC-2B` is 1/4. */
export function screwOfThread(thread: string): Screw | undefined {
  const metric = /^M\d+(?:[.,]\d+)?/i.exec(thread)
  if (metric) return screwNamed(metric[0].replace(',', '.'))
  const inch = /^(#\d{1,2}|\d+-\d+\/\d+|\d+\/\d+|\d+)-\d{1,2}\s?UN/i.exec(thread)
  return inch ? screwNamed(inch[1]!) : undefined
}

/** Clearance holes of a screw, close to loose. */
export function clearancesOf(screw: Screw): ClearanceHole[] {
  return (['close', 'normal', 'loose'] as const).flatMap((fit) => {
    const found = screw.unit === 'inch' ? inchClearance(screw.name, fit) : metricClearance(screw.mm, fit)
    return found.ok ? [found.value] : []
  })
}

/** The screw whose standard clearance hole this is to the digits typed; undefined where none fits. Threads have none. */
export function screwFor(hole: HoleFeature): Screw | undefined {
  if (hole.thread || hole.diameter.tolerance) return undefined
  const metric = metricScrews.map((d) => screwNamed(`M${d}`)!)
  const inch = inchScrews.map((s) => screwNamed(s)!)
  const own = hole.diameter.unit === 'inch' ? inch : metric
  // The normal fit first: ⌀7 is a loose hole for M6, ⌀6.6 the usual one.
  for (const fit of [1, 0, 2]) {
    const found = own.find((screw) => {
      const hit = clearancesOf(screw)[fit]
      return hit !== undefined && isSame(hole.diameter, hit.min)
    })
    if (found) return found
  }
  return undefined
}

/** Same to half a unit of the last digit typed, or to the thousandth that the table is rounded to. */
const isSame = (size: Size, value: number) =>
  Math.abs(size.value - value) <= 0.0006 || Math.abs(size.value - value) < 1e-9

export function counterboreOf(
  screw: Screw,
): { readonly head: number; readonly high: number; readonly bore: number } | undefined {
  const row: Counterbore | undefined = counterbores.find((c) => c.screw === screw.name)
  if (!row) return undefined
  const mm = (v: number) => mmOf(v, row.unit)
  return { head: mm(row.headDiameter), high: mm(row.headHeight), bore: row.din974 ?? mm(row.diameter) }
}

/** Least countersink that takes the flat head flush, and its angle. */
export function countersinkOf(screw: Screw): { readonly wide: number; readonly angle: number } | undefined {
  const row: FlatHead | undefined = flatHeads.find((h) => h.screw === screw.name)
  return row && { wide: mmOf(row.headDiameter, row.unit), angle: row.angle }
}

export interface NamedScrew {
  readonly screw: Screw
  /** Letter of the holes that it is for; absent: the only holes there are. */
  readonly label?: string
  readonly head?: 'socket' | 'flat'
  readonly span: { readonly from: number; readonly to: number }
}

/** Screws that the notes name: `Holes A for M8 socket head cap screws.` */
export function screwsNamed(
  notes: readonly { readonly text: string; readonly span: NamedScrew['span'] }[],
): NamedScrew[] {
  return notes.flatMap(({ text, span }): NamedScrew[] => {
    if (!/\b(screw|bolt|stud)s?\b/i.test(text)) return []
    const found = /(?:^|[\s(])(M\d+(?:\.\d+)?|#\d{1,2}|\d-\d\/\d|\d\/\d{1,2})(?=[\s-])/i.exec(text)
    const screw = found && screwNamed(found[1]!.toUpperCase())
    if (!screw) return []
    const label = /\bholes?\s+([A-Z])\b/i.exec(text)?.[1]
    const head = /\bsocket head\b/i.test(text)
      ? 'socket'
      : /\b(flat head|countersunk)\b/i.test(text)
        ? 'flat'
        : undefined
    return [{ screw, span, ...(label ? { label } : {}), ...(head ? { head } : {}) }]
  })
}

/** The hole statements that a named screw goes through. */
export function holesFor(named: NamedScrew, holes: readonly HoleFeature[]): HoleFeature[] {
  const plain = holes.filter((h) => !h.thread)
  if (named.label)
    return plain.filter((h) => h.label?.text.trim().split(/\s+/).pop()?.toUpperCase() === named.label!.toUpperCase())
  return plain.length === 1 ? plain : []
}
