import type { Dimension } from '../dimension.ts'
import type { Equation } from './condition.ts'
import { judgeJacobian } from './elimination.ts'
import { type Astray, equationsOf } from './equations.ts'
import { flushEnds } from './flush.ts'
import type { Model } from './model.ts'
import { tangencies } from './tangency.ts'
import { judgeTree, type Verdict } from './tree.ts'

/** The whole judgement on a solid and its sizes, before it is put into words. */
export interface Judgement {
  readonly equations: readonly Equation[]
  readonly astray: readonly Astray[]
  /** Unknowns left free, in sets that move together. */
  readonly loose: readonly (readonly number[])[]
  /** Size equations that fix nothing new. */
  readonly repeated: readonly { readonly equation: number; readonly with: readonly number[] }[]
  /** Numbers on the sheet that each fix a freedom. */
  readonly sizes: number
  /** Conditions without a number that each fix a freedom, by kind. */
  readonly conditions: ReadonlyMap<Equation['kind'] | 'square' | 'coaxial' | 'aligned', number>
  /** Blocks judged by the spanning tree and by the Jacobian. */
  readonly blocks: { readonly tree: number; readonly jacobian: number }
}

/**
 * Splits the unknowns into blocks that share no condition and judges each: by the spanning-tree theorem where all its
 * conditions are plain distances, by the rank of the constraint Jacobian where not.
 */
export function judge(model: Model, dimensions: readonly Pick<Dimension, 'id' | 'states' | 'reference'>[]): Judgement {
  const heard = equationsOf(model, dimensions)
  const equations = [...tangencies(model), ...flushEnds(model), ...heard.equations]
  const block = blocksOf(model, equations)
  const datums = datumsOf(model, equations)
  const gaugeRows = slidingGauge(model, datums)

  const inBlock = new Map<number, { unknowns: number[]; equations: number[]; plain: boolean; datums: number[] }>()
  const get = (root: number) => {
    let entry = inBlock.get(root)
    if (!entry) {
      entry = { unknowns: [], equations: [], plain: true, datums: [] }
      inBlock.set(root, entry)
    }
    return entry
  }
  for (const { id } of model.unknowns) get(block(id)).unknowns.push(id)
  equations.forEach((equation, i) => {
    const entry = get(block(equation.uses[0]!))
    entry.equations.push(i)
    if (!equation.pair) entry.plain = false
  })
  for (const datum of datums) if (datum !== undefined) get(block(datum)).datums.push(datum)

  const loose: (readonly number[])[] = []
  const repeated: { equation: number; with: readonly number[] }[] = []
  const used = new Map<Equation['kind'] | 'square' | 'coaxial' | 'aligned', number>()
  const blocks = { tree: 0, jacobian: 0 }
  for (const entry of inBlock.values()) {
    const order = inOrder(equations, entry.equations)
    let verdict: Verdict
    if (entry.plain) {
      blocks.tree++
      verdict = judgeTree(entry.unknowns, entry.datums, equations, order)
    } else {
      blocks.jacobian++
      const rows = entry.datums.map((d) => new Map([[d, 1]]))
      const own = new Set(entry.unknowns)
      const slides = gaugeRows.filter((row) => [...row.keys()].some((u) => own.has(u)))
      verdict = judgeJacobian(entry.unknowns, [...rows, ...slides], equations, order, model.values, model.scale)
    }
    loose.push(...verdict.loose)
    const dull = new Set(verdict.repeated.map((r) => r.equation))
    for (const index of entry.equations) {
      const { kind } = equations[index]!
      if (!dull.has(index)) used.set(kind, (used.get(kind) ?? 0) + 1)
    }
    for (const r of verdict.repeated) if (equations[r.equation]!.kind === 'size') repeated.push(r)
    // An R without a value that fixes nothing at all is one too many; one tangency of several may well be idle.
    for (const r of verdict.repeated) {
      const { kind, dimension } = equations[r.equation]!
      const idle = (i: number) => equations[i]!.kind !== kind || equations[i]!.dimension !== dimension || dull.has(i)
      const known = repeated.some((x) => equations[x.equation]!.dimension === dimension)
      if (kind === 'full round' && !known && entry.equations.every(idle)) repeated.push(r)
    }
  }
  const sizes = used.get('size') ?? 0
  used.delete('size')
  for (const kind of ['square', 'coaxial', 'aligned'] as const)
    if (model[kind] > 0) used.set(kind, (used.get(kind) ?? 0) + model[kind])
  return { equations, astray: heard.astray, loose, repeated, sizes, conditions: used, blocks }
}

/** Implied conditions of the shape first, then the words beside the sizes, then the sizes as they stand in the list. */
function inOrder(equations: readonly Equation[], own: readonly number[]): number[] {
  const rank = (i: number): number => {
    const { kind } = equations[i]!
    if (kind === 'tangent' || kind === 'full round' || kind === 'parallel') return 0
    return kind === 'size' ? 2 : 1
  }
  return [...own].sort((a, b) => rank(a) - rank(b) || a - b)
}

function blocksOf(model: Model, equations: readonly Equation[]): (unknown: number) => number {
  const parent = model.unknowns.map((_, i) => i)
  const find = (u: number): number => {
    while (parent[u] !== u) {
      parent[u] = parent[parent[u]!]!
      u = parent[u]!
    }
    return u
  }
  // One direction's positions are one block from the start, so that an unsized plane stands beside its datum.
  const first: (number | undefined)[] = [undefined, undefined, undefined]
  for (const unknown of model.unknowns) {
    if (unknown.kind !== 'position' || unknown.along === undefined) continue
    if (first[unknown.along] === undefined) first[unknown.along] = unknown.id
    else parent[find(unknown.id)] = find(first[unknown.along]!)
  }
  for (const { uses } of equations) for (const u of uses) parent[find(u)] = find(uses[0]!)
  return find
}

/** The position in each direction that most conditions count from; the part as a whole may stand anywhere. */
function datumsOf(model: Model, equations: readonly Equation[]): (number | undefined)[] {
  const uses = model.unknowns.map(() => 0)
  for (const equation of equations) for (const u of equation.uses) uses[u]!++
  return [0, 1, 2].map((k) => {
    const own = model.unknowns.filter((u) => u.kind === 'position' && u.along === k)
    return own.reduce<number | undefined>(
      (best, u) => (best === undefined || uses[u.id]! > uses[best]! ? u.id : best),
      undefined,
    )
  })
}

/** Where a direction has no plane or axis square to it, the part's sliding that way as a whole is taken out. */
function slidingGauge(model: Model, datums: readonly (number | undefined)[]): Map<number, number>[] {
  const rows: Map<number, number>[] = []
  for (const k of [0, 1, 2] as const) {
    if (datums[k] !== undefined) continue
    const row = new Map<number, number>()
    for (const reading of model.readings) {
      if (reading?.form !== 'plane' || reading.bar !== undefined) continue
      const slope = reading.normal(model.values)[k]
      if (Math.abs(slope) > 1e-9) row.set(reading.uses[reading.uses.length - 1]!, slope)
    }
    if (row.size > 0) rows.push(row)
  }
  return rows
}
