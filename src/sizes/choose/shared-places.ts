import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Reach, Statement, Stretch } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import { judge } from '../proof/judge.ts'
import type { Context } from './context.ts'
import { type Draft, showings } from './draft.ts'
import { alike, digitsOf, inLine } from './once.ts'

/**
 * Features of whatever kind and face whose centres or sides are drawn level with each other, and whose places the brief
 * gives by the same number from the same side, show it once: what is drawn in line is in line (ASME Y14.5-2018 4.1(j)
 * and (k), ISO 129-1:2018: each size once; from memory). Not where one of them is hidden in that view or stands in
 * another, where a tolerance or a frame parts them, or where the proof would find something open or said twice.
 */
export function sharedPlaces(context: Context, drafts: readonly Draft[], apart: ReadonlySet<string>): Draft[] {
  let kept: Draft[] = []
  const byKey = new Map<string, Draft[]>()
  for (const draft of drafts) {
    const key = keyOf(context, draft, apart)
    const known = (key !== undefined && byKey.get(key)) || []
    const earlier = known.filter((d) => d.feature !== draft.feature)
    const joined = earlier.flatMap((one) => joinedWith(context, [...kept, draft], drafts, one, draft) ?? [])[0]
    kept = joined ? kept.map((d) => (d === joined.of ? joined.draft : d)) : [...kept, draft]
    if (key !== undefined) byKey.set(key, [...known.filter((d) => d !== joined?.of), joined?.draft ?? draft])
  }
  return kept
}

/** What the two would have to agree in: digits and tolerance, exact or not, and the levels that they join. */
function keyOf(context: Context, draft: Draft, apart: ReadonlySet<string>): string | undefined {
  const { feature, size, id } = draft
  if (!feature || !size || size.unknown || draft.reference || apart.has(feature)) return undefined
  if (SIZE_OF_ITS_OWN.test(id)) return undefined
  if (context.part.brief.places.some((p) => p.kind === 'size' && p.size.text === id)) return undefined
  const places = draft.states.filter(isPlace)
  const isPlain = draft.states.every((s) => isPlace(s) || s.kind === 'equal slopes' || s.kind === 'aligned')
  if (!isPlain || !places.some((s) => s.kind !== 'centred')) return undefined
  const exact = context.basic.has(size) ? 'exact ' : ''
  return `${exact}${plainText(draft.callout)} ${digitsOf(draft)} ${places.flatMap(levelsOf).sort().join()}`
}

/** How wide, long or deep a cut is and how far a flat stands across is the cut's own size, not its place. */
const SIZE_OF_ITS_OWN = /\/(width|length|depth|note|ends)\b| floor$|\/flat [\d.]+$|to flat [\d.]+$/

type Place = Extract<Statement, { kind: 'distance' | 'pitch' | 'centred' }>

const isPlace = (s: Statement): s is Place => s.kind === 'distance' || s.kind === 'pitch' || s.kind === 'centred'

/** What each number or word joins, by level; a centre is in line with a centre, a side with a side. */
function levelsOf(said: Place): string[] {
  const name = (reaches: readonly Reach[], way: Vec3) => {
    const at = reaches.map((r) => `${'axis' in r || r.middle ? 'centre' : 'side'} ${levelAt(r, way).toFixed(4)}`)
    return `${said.kind} ${axisIndex(way) ?? way.join()} ${at.sort().join(' ')}`
  }
  if (said.kind === 'centred')
    return [`${name([said.first, said.last], said.direction)} of ${name(said.between, said.direction)}`]
  if (said.kind === 'pitch') return [said.members, ...(said.also ?? [])].map((row) => name(row, said.direction))
  return [said, ...(said.also ?? [])].map(({ from, to, direction }: Stretch) => name([from, to], direction))
}

/** The same level whichever way along its line the size runs. */
function levelAt({ at, middle }: Reach, direction: Vec3): number {
  const k = axisIndex(direction)
  const way: Vec3 = k === undefined ? direction : [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
  return middle ? (dot(middle[0], way) + dot(middle[1], way)) / 2 : dot(at, way)
}

/** `one` speaking for `other` too; undefined where they are not shown level in one view, or the proof is against it. */
function joinedWith(
  context: Context,
  kept: readonly Draft[],
  all: readonly Draft[],
  one: Draft,
  other: Draft,
): { readonly of: Draft; readonly draft: Draft } | undefined {
  const [a, b] = [one, other].map((d) => showings(d, context.sights)[0])
  if (!a || !b || a.sight !== b.sight || a.showing.hidden || b.showing.hidden) return undefined
  // at a centre line that is drawn the others are seen to be in line; the middle of a notch has none
  const [lead, second] = hasAxis(other) && !hasAxis(one) ? [other, one] : [one, other]
  const more = second.states.filter((s) => !isPlace(s))
  const states = [...lead.states, ...inLine(context, lead, second), ...more]
  const spans = [...(lead.alike ?? []), ...(alike(lead, second).alike ?? []), ...(second.alike ?? [])]
  const joined = { ...lead, states, alike: [...new Set(spans)] }
  const rest = all.filter((d) => !kept.some((k) => k.id === d.id))
  const before = [...kept, ...rest]
  const after = before.flatMap((d) => (d.id === other.id ? [] : [d.id === one.id ? joined : d]))
  return faults(context, after) <= faults(context, before) ? { of: one, draft: joined } : undefined
}

const hasAxis = ({ states }: Draft): boolean =>
  states.some((s) => s.kind === 'distance' && ('axis' in s.from || 'axis' in s.to))

/** What is left open or said twice. */
function faults(context: Context, drafts: readonly Draft[]): number {
  const plain = drafts.map((d) => ({ id: d.id, states: d.states, reference: d.reference === true }))
  const { loose, repeated, astray } = judge(context.model, plain)
  return loose.length + repeated.length + astray.length
}
