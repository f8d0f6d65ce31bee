import type { SchemeRequest } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { computedText } from '../callout/numbers.ts'
import { lengthCallout } from '../callout/shapes.ts'
import { axisIndex } from '../proof/elements.ts'
import type { Context, Mooring } from './context.ts'
import { type Draft, directionWords } from './draft.ts'
import { stretchOf } from './linear.ts'
import { showLinear } from './show.ts'

/** Re-expresses linear sizes as the brief's schemes ask: baseline, chain or ordinate, for a feature or the whole part. */
export function withSchemes(context: Context, drafts: readonly Draft[]): Draft[] {
  let result = [...drafts]
  for (const request of context.part.brief.schemes) {
    if (request.scheme === 'hole table') continue
    const feature = request.of && featureNamed(context, request.of.text)
    if (request.of && !feature) {
      context.marks.push({
        rule: 'unknown-name',
        weight: 'must change',
        text: `There is no feature called “${request.of.text}” to size by ${request.scheme}.`,
        span: request.of.span,
        expected: context.part.features.map((f) => f.id).join(', '),
        source: 'common practice, no source',
      })
      continue
    }
    result = rearranged(context, result, request.scheme, feature)
  }
  return result
}

export function featureNamed(context: Context, text: string): string | undefined {
  const wanted = text.trim().toLowerCase()
  const singular = wanted.replace(/^(hole|slot|notche?|pocket)s\b/, '$1')
  return context.part.features.find(
    (f) =>
      f.id.toLowerCase() === wanted ||
      f.id.toLowerCase() === singular ||
      f.feature?.label?.text.toLowerCase() === wanted,
  )?.id
}

interface Stop {
  readonly at: number
  readonly mooring: Mooring
}

interface Link {
  readonly draft: Draft
  readonly stops: readonly Stop[]
}

function rearranged(
  context: Context,
  drafts: readonly Draft[],
  scheme: Exclude<SchemeRequest['scheme'], 'hole table'>,
  feature: string | undefined,
): Draft[] {
  const links = new Map<string, Link[]>()
  for (const draft of drafts) {
    if (feature !== undefined && draft.feature !== feature) continue
    const link = linkOf(draft)
    if (!link) continue
    const key = `${draft.feature && feature !== undefined ? draft.feature : 'part'}/${draft.direction}`
    links.set(key, [...(links.get(key) ?? []), link])
  }
  let result = [...drafts]
  for (const [key, set] of links) {
    const gone = new Set(set.map((l) => l.draft.id))
    const made = scheme === 'chain' ? chain(context, key, set) : fromDatum(context, key, set, scheme)
    if (!made) continue
    const first = result.findIndex((d) => gone.has(d.id))
    const rest = result.filter((d) => !gone.has(d.id))
    result = [...rest.slice(0, first), ...made, ...rest.slice(first)]
  }
  return result
}

/** A plain distance or a pitch along an axis of the part, free of other statements: what a scheme may re-express. */
function linkOf(draft: Draft): Link | undefined {
  const [said, more] = draft.states
  if (more || draft.reference || !draft.size || draft.size.tolerance || draft.size.unknown) return undefined
  if (said?.kind === 'distance' && !said.also) {
    if (axisIndex(said.direction) === undefined) return undefined
    return { draft, stops: [said.from, said.to].map((r) => stop(r as Mooring, said.direction)) }
  }
  if (said?.kind !== 'pitch' || said.also) return undefined
  return { draft, stops: said.members.map((r) => stop(r as Mooring, said.direction)) }
}

function stop(mooring: Mooring, direction: Vec3): Stop {
  const k = axisIndex(direction)!
  return { at: mooring.at[k], mooring }
}

const unitOf = (k: number): Vec3 => [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
const directionOf = (set: readonly Link[]): Vec3 => {
  const said = set[0]!.draft.states[0]!
  return unitOf(said.kind === 'distance' || said.kind === 'pitch' ? axisIndex(said.direction)! : 0)
}

/** Every stop once, each connected to the datum through the links. */
function fromDatum(
  context: Context,
  key: string,
  set: readonly Link[],
  scheme: 'baseline' | 'ordinate',
): Draft[] | undefined {
  const direction = directionOf(set)
  const starts = new Map<string, { stop: Stop; uses: number }>()
  for (const { draft, stops } of set) {
    if (draft.states[0]?.kind !== 'distance') continue
    for (const s of stops) {
      if (!s.mooring.normal) continue
      const at = s.at.toFixed(4)
      starts.set(at, { stop: s, uses: (starts.get(at)?.uses ?? 0) + 1 })
    }
  }
  const datum = [...starts.values()].sort((a, b) => b.uses - a.uses || a.stop.at - b.stop.at)[0]?.stop
  if (!datum) return undefined
  const reached = new Map<string, Stop>([[datum.at.toFixed(4), datum]])
  const used = new Set<Link>()
  for (let grew = true; grew; ) {
    grew = false
    for (const link of set) {
      if (used.has(link) || !link.stops.some((s) => reached.has(s.at.toFixed(4)))) continue
      used.add(link)
      grew = true
      for (const s of link.stops) if (!reached.has(s.at.toFixed(4))) reached.set(s.at.toFixed(4), s)
    }
  }
  const group = { id: `${key}/${scheme}`, scheme }
  const made = [...reached.values()]
    .filter((s) => s !== datum)
    .sort((a, b) => Math.abs(a.at - datum.at) - Math.abs(b.at - datum.at))
    .map((s): Draft => {
      const own = set.find(
        (l) => l.stops.length === 2 && l.stops.some((p) => near(p, datum)) && l.stops.some((p) => near(p, s)),
      )
      const size = own?.draft.size ?? computedSize(context, set, Math.abs(s.at - datum.at))
      return sized(context, own?.draft, `${key}/${scheme}/${s.mooring.name}`, datum, s, direction, size, group, set)
    })
  const leftOut = set.filter((l) => !used.has(l)).map((l) => l.draft)
  if (scheme === 'baseline') return [...made, ...leftOut]
  const zero: Draft = {
    id: `${key}/ordinate/datum`,
    callout: { lines: [['0']] },
    value: 0,
    direction: directionWords(direction),
    states: [],
    shows: asOrdinate(datum, datum, direction, set),
    group,
  }
  return [zero, ...made, ...leftOut]
}

const near = (a: Stop, b: Stop): boolean => Math.abs(a.at - b.at) < 1e-5

function sized(
  context: Context,
  own: Draft | undefined,
  id: string,
  from: Stop,
  to: Stop,
  direction: Vec3,
  size: Size,
  group: NonNullable<Draft['group']>,
  set: readonly Link[],
): Draft {
  const axis = to.mooring.axis ?? from.mooring.axis
  const feature = own?.feature ?? set.find((l) => l.stops.some((s) => near(s, to)))?.draft.feature
  const basic = set.some((l) => l.draft.size && context.basic.has(l.draft.size) && l.stops.some((s) => near(s, to)))
  return {
    id: own?.id ?? id,
    callout: lengthCallout(size, context.writing),
    value: size.mm,
    size,
    direction: directionWords(direction),
    states: [{ kind: 'distance', ...stretchOf(from.mooring, to.mooring, direction) }],
    shows:
      group.scheme === 'ordinate'
        ? asOrdinate(from, to, direction, set)
        : (own?.shows ?? showLinear(from.mooring, to.mooring, direction, axis ? { facing: axis } : {})),
    span: size.span,
    group,
    ...(basic && !own ? { basic } : {}),
    ...(feature ? { feature } : {}),
  }
}

function asOrdinate(datum: Stop, to: Stop, direction: Vec3, set: readonly Link[]): Draft['shows'] {
  // All of one set stand in the view that suits the farthest of them.
  const farthest = set
    .flatMap((l) => l.stops)
    .reduce((a, b) => (Math.abs(b.at - datum.at) > Math.abs(a.at - datum.at) ? b : a))
  const axis = set.flatMap((l) => l.stops).find((s) => s.mooring.axis)?.mooring.axis
  const wish = axis ? { facing: axis } : {}
  const whole = showLinear(datum.mooring, farthest.mooring, direction, wish)
  const linear = showLinear(datum.mooring, to.mooring, direction, wish)
  return (sight) => {
    const base = whole(sight)
    const own = linear(sight)
    const along = sight.inPlane(direction)
    if (!base || !own || !along || own.measured.kind !== 'linear') return undefined
    return {
      score: base.score,
      measured: { kind: 'ordinate', datum: own.measured.a, point: own.measured.b, along },
    }
  }
}

/** Neighbour to neighbour in one line, each with the number that the brief gives it. */
function chain(context: Context, key: string, set: readonly Link[]): Draft[] {
  const direction = directionOf(set)
  const group = { id: `${key}/chain`, scheme: 'chain' as const }
  return set.flatMap(({ draft, stops }): Draft[] => {
    if (stops.length === 2) return [{ ...draft, group }]
    return stops.slice(1).map((s, i) => {
      const own = i === 0 ? draft : undefined
      const id = `${draft.id}/${i + 1}`
      return { ...sized(context, own, id, stops[i]!, s, direction, draft.size!, group, set), id }
    })
  })
}

/** A sum of typed sizes carries as many decimals as the finest of them. */
function computedSize(context: Context, set: readonly Link[], mm: number): Size {
  const decimals = Math.max(...set.map((l) => l.draft.size?.decimals ?? 0))
  const { unit } = context.writing
  const finest = set.map((l) => l.draft.size!).find((s) => s.decimals === decimals)!
  const value = unit === 'inch' ? mm / 25.4 : mm
  const needed = [0, 1, 2, 3, 4].find((n) => Math.abs(value - Number(value.toFixed(n))) < 1e-6) ?? 4
  const places = Math.max(decimals, needed)
  const plain = computedText(mm, { ...context.writing, sign: '.' }, places)
  return {
    text: plain,
    value,
    form: places > 0 ? 'decimal' : 'whole',
    decimals: places,
    span: finest.span,
    unit,
    unitTyped: false,
    mm,
  }
}
