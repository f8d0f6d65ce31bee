import type { Equation } from './condition.ts'
import { gradient } from './elimination.ts'
import type { Expression, Model } from './model.ts'

/** How much a length changes for a change of 1 in what a condition says. */
export interface Lever {
  readonly equation: number
  readonly by: number
}

export interface Leverage {
  readonly levers: readonly Lever[]
  /** Something that the length rests on is fixed by no condition. */
  readonly loose: boolean
  /** Slopes of a condition by unknown. */
  readonly slopes: (equation: number) => ReadonlyMap<number, number>
}

/** Slopes smaller than this are rounding. */
const NOTHING = 1e-7

/**
 * By how much each condition moves a length of the solid, to first order: with J the conditions' slopes and g the
 * length's own, the l that solves Jᵀ l = g. For plain distances along an axis this is the loop of sizes, each +1 or −1;
 * angles, circles and middles get what they count.
 */
export function leverage(model: Model, equations: readonly Equation[], length: Omit<Expression, 'bar'>): Leverage {
  const own = connected(equations, length.uses)
  const known = new Map<number, ReadonlyMap<number, number>>()
  const slopes = (i: number) => {
    let row = known.get(i)
    if (!row) {
      row = slopesOf(model, equations[i]!)
      known.set(i, row)
    }
    return row
  }
  const wanted = new Map(slopesOf(model, length))
  const levers = new Map<number, number>()
  for (const pivot of eliminate(own.map((i) => [i, slopes(i)] as const))) {
    const factor = wanted.get(pivot.unknown)
    if (factor === undefined || Math.abs(factor) < NOTHING) continue
    for (const [u, v] of pivot.row) wanted.set(u, (wanted.get(u) ?? 0) - factor * v)
    for (const [e, v] of pivot.made) levers.set(e, (levers.get(e) ?? 0) + factor * v)
  }
  return {
    levers: [...levers]
      .filter(([, by]) => Math.abs(by) > 1e-6)
      .map(([equation, by]) => ({ equation, by: rounded(by) }))
      .sort((a, b) => a.equation - b.equation),
    // The part's place as a whole is nobody's to fix: what is left must be nothing, or nothing when all move together.
    loose: [...wanted.values()].some((v) => Math.abs(v) > 1e-5),
    slopes,
  }
}

const rounded = (v: number) => (Math.abs(v - Math.round(v * 1e4) / 1e4) < 1e-6 ? Math.round(v * 1e4) / 1e4 : v)

/** By how much a length or a condition changes for a change of 1 in each unknown, with its sign. */
export function slopesOf(model: Model, { uses, of }: Pick<Equation, 'uses' | 'of'>): ReadonlyMap<number, number> {
  return gradient({ uses, of, kind: 'size' }, model.values, model.scale)
}

interface Pivot {
  readonly unknown: number
  readonly row: ReadonlyMap<number, number>
  readonly made: ReadonlyMap<number, number>
}

/** Rows in echelon form, each with 1 at its unknown, and the conditions that it is made of. */
function eliminate(rows: readonly (readonly [number, ReadonlyMap<number, number>])[]): Pivot[] {
  const pivots: Pivot[] = []
  for (const [index, slopes] of rows) {
    const row = new Map(slopes)
    const made = new Map([[index, 1]])
    for (const pivot of pivots) {
      const factor = row.get(pivot.unknown)
      if (factor === undefined || factor === 0) continue
      for (const [u, v] of pivot.row) row.set(u, (row.get(u) ?? 0) - factor * v)
      row.delete(pivot.unknown)
      for (const [e, v] of pivot.made) made.set(e, (made.get(e) ?? 0) - factor * v)
    }
    let best: number | undefined
    for (const [u, v] of row) if (Math.abs(v) > Math.abs(best === undefined ? NOTHING : row.get(best)!)) best = u
    if (best === undefined) continue
    const lead = row.get(best)!
    for (const [u, v] of row) row.set(u, v / lead)
    for (const [e, v] of made) made.set(e, v / lead)
    pivots.push({ unknown: best, row, made })
  }
  return pivots
}

/** The conditions that share unknowns with these, directly or over others. */
function connected(equations: readonly Equation[], uses: readonly number[]): number[] {
  const around = new Map<number, number[]>()
  for (const [i, e] of equations.entries()) for (const u of e.uses) around.set(u, [...(around.get(u) ?? []), i])
  const seen = new Set(uses)
  const own = new Set<number>()
  const queue = [...uses]
  for (let u = queue.pop(); u !== undefined; u = queue.pop())
    for (const i of around.get(u) ?? []) {
      if (own.has(i)) continue
      own.add(i)
      for (const other of equations[i]!.uses)
        if (!seen.has(other)) {
          seen.add(other)
          queue.push(other)
        }
    }
  return [...own].sort((a, b) => a - b)
}
