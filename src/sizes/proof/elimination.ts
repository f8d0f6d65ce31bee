import type { Equation } from './condition.ts'
import type { Values } from './model.ts'
import type { Verdict } from './tree.ts'

/** A row counts as new when this much of it is left after all earlier rows are taken out. */
const LEFT = 1e-6

/** Partial derivatives by central differences; unknowns are of the part's own size, in mm. */
export function gradient(equation: Equation, values: readonly number[], scale: number): Map<number, number> {
  const row = new Map<number, number>()
  if (equation.pair) {
    const [a, b] = equation.pair
    if (a === b) return row
    row.set(a, -1)
    if (b !== undefined) row.set(b, 1)
    return row
  }
  const x: number[] = []
  for (const u of equation.uses) x[u] = values[u]!
  const step = scale * 1e-5
  for (const u of equation.uses) {
    const at = values[u]!
    x[u] = at + step
    const more = equation.of(x as Values)
    x[u] = at - step
    const less = equation.of(x as Values)
    x[u] = at
    const slope = (more - less) / (2 * step)
    if (Math.abs(slope) > 1e-9) row.set(u, slope)
  }
  return row
}

interface Pivot {
  readonly unknown: number
  /** Row with 1 at the pivot's unknown. */
  readonly row: Map<number, number>
  /** The equations whose weighted sum the row is. */
  readonly made: Map<number, number>
}

/**
 * Judges a block by elimination on the constraint Jacobian, row by row in the order given (implied conditions before
 * sizes): rank, unknowns that can still move, and for each row that adds nothing the rows that already say it.
 */
export function judgeJacobian(
  unknowns: readonly number[],
  gauge: readonly ReadonlyMap<number, number>[],
  equations: readonly Equation[],
  order: readonly number[],
  values: readonly number[],
  scale: number,
): Verdict {
  const pivots: Pivot[] = []
  const at = new Map<number, Pivot>()
  const repeated: { equation: number; with: number[] }[] = []
  let rank = 0
  const take = (row: Map<number, number>, index: number): boolean => {
    const size = Math.sqrt([...row.values()].reduce((sum, v) => sum + v * v, 0))
    if (size === 0) {
      if (index >= 0) repeated.push({ equation: index, with: [] })
      return false
    }
    const made = new Map<number, number>([[index, 1]])
    for (const pivot of pivots) {
      const factor = row.get(pivot.unknown)
      if (factor === undefined) continue
      row.delete(pivot.unknown)
      if (Math.abs(factor) < 1e-13 * size) continue
      for (const [u, v] of pivot.row) if (u !== pivot.unknown) row.set(u, (row.get(u) ?? 0) - factor * v)
      for (const [e, v] of pivot.made) made.set(e, (made.get(e) ?? 0) - factor * v)
    }
    let best = -1
    let most = 0
    for (const [u, v] of row) {
      if (Math.abs(v) > most) {
        most = Math.abs(v)
        best = u
      }
    }
    if (most <= LEFT * size) {
      const weights = [...made].filter(([e, v]) => e >= 0 && e !== index && Math.abs(v) > 1e-5)
      if (index >= 0) repeated.push({ equation: index, with: weights.map(([e]) => e) })
      return false
    }
    const lead = row.get(best)!
    for (const [u, v] of row) {
      if (Math.abs(v) <= most * 1e-12) row.delete(u)
      else row.set(u, v / lead)
    }
    for (const [e, v] of made) made.set(e, v / lead)
    const pivot = { unknown: best, row, made }
    pivots.push(pivot)
    at.set(best, pivot)
    return true
  }
  gauge.forEach((row, i) => {
    take(new Map(row), -1 - i)
  })
  for (const index of order) if (take(gradient(equations[index]!, values, scale), index)) rank++

  const loose: number[][] = []
  for (const u of unknowns) {
    if (at.has(u)) continue
    // Let this one move by 1 and see which pivots must follow.
    const moves = new Map<number, number>([[u, 1]])
    const set = [u]
    for (let i = pivots.length - 1; i >= 0; i--) {
      const { unknown, row } = pivots[i]!
      let sum = 0
      for (const [v, weight] of row) if (v !== unknown) sum -= weight * (moves.get(v) ?? 0)
      if (Math.abs(sum) > LEFT) {
        moves.set(unknown, sum)
        set.push(unknown)
      }
    }
    loose.push(set)
  }
  return { rank, loose, repeated }
}
