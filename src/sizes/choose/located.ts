import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { PartFeature } from '../../part/part.ts'
import type { Reach, Statement } from '../dimension.ts'
import { type AxisIndex, axisIndex } from '../proof/elements.ts'
import { type Context, type Mooring, mooringOf } from './context.ts'
import { type Draft, directionWords, showings } from './draft.ts'

/** A place along the direction that sizes locate. */
export interface Stop {
  readonly at: number
  readonly mooring: Mooring
}

/** What one size says of places along a direction. */
export interface Link {
  readonly draft: Draft
  /** Places that it locates. */
  readonly stops: readonly Stop[]
  /** Faces and axes that it counts from. */
  readonly bases: readonly Stop[]
  /** Pairs of levels that its number joins. */
  readonly pairs: readonly (readonly [number, number])[]
  /** It says nothing else and gives way to the scheme; otherwise only its word does. */
  readonly whole: boolean
  /** Its tolerance is its own: it can stand in the scheme as it is, or not at all. */
  readonly strict: boolean
}

/** Places in one direction that stand in one view. */
export interface Located {
  readonly k: AxisIndex
  readonly way: string
  readonly view: string
  readonly links: readonly Link[]
  /** The face that most of them count from. */
  readonly datum?: Stop
  /** Stem of the ids of the sizes made. */
  readonly key: string
}

/** Everything that locates the features, or the whole part, by direction and view. */
export function locatedSets(
  context: Context,
  drafts: readonly Draft[],
  features: readonly string[] | undefined,
): Located[] {
  const found = new Map<string, { k: AxisIndex; view: string; links: Link[] }>()
  for (const draft of drafts) {
    if (draft.reference || (features && !features.includes(draft.feature ?? ''))) continue
    for (const k of [0, 1, 2] as const) {
      const link = linkOf(context, draft, k)
      if (!link) continue
      const view = showings(draft, context.sights)[0]?.sight.view.id
      if (view === undefined) continue
      const key = `${k} ${view}`
      const set = found.get(key) ?? { k, view, links: [] }
      found.set(key, { ...set, links: [...set.links, link] })
    }
  }
  const sets = joined(context, [...found.values()])
  // The whole part counts from one datum each way, whatever view its places stand in.
  const datumAlong = (k: AxisIndex) => datumOf(sets.flatMap((s) => (s.k === k ? s.links : [])))
  const seen = new Set<AxisIndex>()
  return sets.flatMap(({ k, view, links }): Located[] => {
    // One size of the stock alone is no scheme.
    const levels = new Set(links.flatMap((l) => l.stops).map((s) => s.at.toFixed(4)))
    if (!features && levels.size < 3 && links.every((l) => l.draft.feature === undefined)) return []
    const way = directionWords(unitOf(k))
    const key = `${features?.join(', ') ?? 'part'}/${way}${seen.has(k) ? ` ${view}` : ''}`
    seen.add(k)
    const datum = features ? datumOf(links) : (datumAlong(k) ?? datumOf(links))
    return [{ k, way, view, links, key, ...(datum ? { datum } : {}) }]
  })
}

interface Gathered {
  readonly k: AxisIndex
  readonly view: string
  readonly links: readonly Link[]
}

/** Sizes of the stock alone go with the largest set of their direction, where its view shows them. */
function joined(context: Context, sets: readonly Gathered[]): Gathered[] {
  const isStock = ({ links }: Gathered) => links.every((l) => l.draft.feature === undefined)
  const count = ({ links }: Gathered) => links.reduce((n, l) => n + l.stops.length, 0)
  let result = [...sets]
  for (const stock of sets.filter(isStock)) {
    const hosts = result.filter((s) => s.k === stock.k && !isStock(s)).sort((a, b) => count(b) - count(a))
    const host = hosts.find(({ view }) =>
      stock.links.every(({ draft }) =>
        showings(draft, context.sights).some(({ sight, showing }) => sight.view.id === view && showing.score >= 0),
      ),
    )
    if (!host) continue
    const both = { ...host, links: [...stock.links, ...host.links] }
    result = result.flatMap((s) => (s === stock ? [] : s === host ? [both] : [s]))
  }
  return result
}

function datumOf(links: readonly Link[]): Stop | undefined {
  const starts = new Map<string, { stop: Stop; uses: number }>()
  for (const { draft, stops, bases } of links) {
    const isDistance = draft.states[0]?.kind === 'distance'
    const own = draft.feature === undefined ? stops : []
    for (const stop of [...bases, ...own]) {
      if (!stop.mooring.normal || stop.mooring.middle) continue
      const at = stop.at.toFixed(4)
      starts.set(at, { stop: starts.get(at)?.stop ?? stop, uses: (starts.get(at)?.uses ?? 0) + (isDistance ? 1 : 0) })
    }
  }
  return [...starts.values()].sort((a, b) => b.uses - a.uses || a.stop.at - b.stop.at)[0]?.stop
}

/**
 * A size with plain distances, pitches and `centred` along the axis `k` of the part and nothing else, or one with
 * `centred` beside other things. A width, length or depth is a size of its feature and stays with it.
 */
function linkOf(context: Context, draft: Draft, k: AxisIndex): Link | undefined {
  const along = draft.states.filter((s) => isAlong(s, k))
  if (along.length === 0) return undefined
  const feature = draft.feature === undefined ? undefined : context.features.get(draft.feature)
  const extent = /\/(?:width|length|depth|note|ends)\b/.test(draft.id) || isOfSeveral(draft)
  const whole = !extent && along.length === draft.states.length
  const used = whole ? along : along.filter((s) => s.kind === 'centred')
  if (used.length === 0) return undefined
  // A thickness said for several legs holds its word with it.
  if (!whole && !extent) return undefined
  const strict = whole && (!draft.size || !!draft.size.tolerance || draft.size.unknown === true)
  const stops: Stop[] = []
  const bases: Stop[] = []
  for (const said of used) {
    const { own, from } = endsOf(said)
    for (const reach of own) {
      const stop = stopOf(context, reach, k, feature)
      const counted = feature && said.kind !== 'aligned' && !belongs(stop.mooring, feature)
      ;(counted ? bases : stops).push(stop)
    }
    for (const reach of from) bases.push(stopOf(context, reach, k))
  }
  return { draft, stops, bases, whole, strict, pairs: whole ? pairsOf(used, k) : [] }
}

/** A thickness said for several legs. */
const isOfSeveral = ({ id, states }: Draft): boolean =>
  id.includes('/thickness/') && states.some((s) => s.kind !== 'distance' || s.also !== undefined)

function isAlong(said: Statement, k: AxisIndex): boolean {
  if (said.kind === 'distance') return [said, ...(said.also ?? [])].every(({ direction }) => axisIndex(direction) === k)
  return (
    (said.kind === 'pitch' || said.kind === 'centred' || said.kind === 'aligned') && axisIndex(said.direction) === k
  )
}

/** What the size's number joins: two ends, or each step of a row. */
function pairsOf(used: readonly Statement[], k: AxisIndex): (readonly [number, number])[] {
  return used.flatMap((said): (readonly [number, number])[] => {
    if (said.kind === 'distance')
      return [said, ...(said.also ?? [])].map(({ from, to }) => [levelOf(from, k), levelOf(to, k)])
    if (said.kind !== 'pitch') return []
    return [said.members, ...(said.also ?? [])].flatMap((row) =>
      row.slice(1).map((r, i) => [levelOf(row[i]!, k), levelOf(r, k)] as const),
    )
  })
}

const levelOf = ({ at, middle }: Reach, k: AxisIndex): number => (middle ? (middle[0][k] + middle[1][k]) / 2 : at[k])

function endsOf(said: Statement): { readonly own: readonly Reach[]; readonly from: readonly Reach[] } {
  switch (said.kind) {
    case 'distance':
      return { own: [said, ...(said.also ?? [])].flatMap(({ from, to }) => [from, to]), from: [] }
    case 'pitch':
      return { own: [said.members, ...(said.also ?? [])].flat(), from: [] }
    case 'centred':
      return { own: [said.first, said.last], from: said.between }
    case 'aligned':
      return { own: said.reaches, from: [] }
    default:
      return { own: [], from: [] }
  }
}

function stopOf(context: Context, reach: Reach, k: AxisIndex, feature?: PartFeature): Stop {
  const at = levelOf(reach, k)
  const plain: Mooring = { faces: [], ...reach }
  if ('axis' in plain || 'normal' in plain || !feature) return { at, mooring: plain }
  // The far one of a mirrored pair is given by its place alone.
  const twin = feature.members
    .flatMap((m) => m.axes.flatMap((id) => mooringOf(context, id, unitOf(k)) ?? []))
    .find((m) => Math.abs(levelOf(m, k) - at) < NEAR)
  return { at, mooring: twin ?? plain }
}

const NEAR = 1e-5

/** The place is the feature's own and not one that its sizes count from. */
function belongs(mooring: Mooring, { id, members }: PartFeature): boolean {
  if (mooring.faces.some((f) => members.some((m) => m.faces.includes(f)))) return true
  return [id, ...members.map((m) => m.id)].some((stem) => mooring.name === stem || mooring.name.startsWith(`${stem} `))
}

export const unitOf = (k: number): Vec3 => [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]

/** Whether the two stand at one level. */
export const near = (a: Stop, b: Stop): boolean => Math.abs(a.at - b.at) < NEAR

/** The word `centred` said along the axis. */
export const isCentred = (said: Statement, k: AxisIndex): boolean =>
  said.kind === 'centred' && Math.abs(dot(said.direction, unitOf(k))) > 1 - 1e-9
