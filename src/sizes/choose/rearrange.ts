import type { SchemeRequest } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import { computedText } from '../callout/numbers.ts'
import { lengthCallout } from '../callout/shapes.ts'
import type { Callout, Statement } from '../dimension.ts'
import { reached } from '../proof/reach.ts'
import type { Context } from './context.ts'
import { type Draft, directionWords } from './draft.ts'
import { stretchOf } from './linear.ts'
import { isCentred, type Link, type Located, near, type Stop, unitOf } from './located.ts'
import { showLinear } from './show.ts'

/** Everything that stands at one level: the size to the first locates the others in line with it. */
interface Level {
  readonly at: number
  readonly stops: readonly Stop[]
}

/** Sizes by a scheme, and those with a tolerance of their own that had to stay as they were. */
export interface Rearranged {
  readonly drafts: readonly Draft[]
  readonly stayed: readonly Draft[]
}

/** The sizes with a set's places given by the scheme; undefined where it has no face to count from. */
export function rearranged(
  context: Context,
  drafts: readonly Draft[],
  scheme: Exclude<SchemeRequest['scheme'], 'hole table'>,
  set: Located,
): Rearranged | undefined {
  const { datum, links } = set
  if (!datum) return undefined
  const levels = levelsOf(context, set, datum)
  const kept = scheme === 'chain' ? overall(links, levels) : undefined
  const made =
    scheme === 'chain' ? chain(context, set, levels, datum, kept) : fromDatum(context, set, levels, datum, scheme)
  const stayed = links.flatMap(({ strict, draft }) =>
    strict && draft !== kept && !made.some((d) => d.id === draft.id) ? [draft] : [],
  )
  if (stayed.length > 0) {
    const others = links.filter((l) => !stayed.includes(l.draft))
    if (others.every((l) => l.strict)) return { drafts, stayed }
    const next = rearranged(context, drafts, scheme, { ...set, links: others })
    return next && { drafts: next.drafts, stayed: [...stayed, ...next.stayed] }
  }
  const gone = new Set(links.flatMap((l) => (l.whole && l.draft !== kept ? [l.draft.id] : [])))
  const worded = new Set(links.flatMap((l) => (l.whole ? [] : [l.draft.id])))
  const at = drafts.findIndex((d) => gone.has(d.id) || worded.has(d.id))
  const plain = (list: readonly Draft[]) =>
    list.flatMap((d): Draft[] => {
      if (gone.has(d.id)) return []
      return [worded.has(d.id) ? withoutWord(context, d, set) : d]
    })
  return { drafts: [...plain(drafts.slice(0, at)), ...made, ...plain(drafts.slice(at))], stayed: [] }
}

function levelsOf(context: Context, { links, k }: Located, datum: Stop): Level[] {
  const found = new Map<string, { at: number; stops: Stop[]; keys: Set<string> }>()
  const direction = unitOf(k)
  for (const stop of [datum, ...links.flatMap((l) => l.stops)]) {
    const level = found.get(stop.at.toFixed(4)) ?? { at: stop.at, stops: [], keys: new Set<string>() }
    found.set(stop.at.toFixed(4), level)
    const { mooring } = stop
    const { at, name, middle, normal, faces } = mooring
    const reach = middle ? { at, name, middle } : { at, name, ...(normal ? { faces } : {}) }
    const bar = reached(context.model, reach, direction)?.bar
    const key = bar === undefined ? `${name} ${middle ? 'middle' : ''}` : String(bar)
    if (level.keys.has(key)) continue
    level.keys.add(key)
    level.stops.push(stop)
  }
  return [...found.values()].sort((a, b) => a.at - b.at)
}

function fromDatum(
  context: Context,
  set: Located,
  levels: readonly Level[],
  datum: Stop,
  scheme: 'baseline' | 'ordinate',
): Draft[] {
  const direction = unitOf(set.k)
  const group = { id: `${set.key}/${scheme}`, scheme }
  const made = levels
    .filter(({ at }) => !same(at, datum.at))
    .sort((a, b) => Math.abs(a.at - datum.at) - Math.abs(b.at - datum.at))
    .map((level) => sized(context, set, datum, level, group))
  const atDatum = levels.find(({ at }) => same(at, datum.at))
  const inLine = atDatum ? inLineWith(datum, atDatum, set) : []
  if (scheme === 'baseline') return inLine.length > 0 ? withStates(made, inLine) : made
  const zero: Draft = {
    id: `${set.key}/ordinate/datum`,
    callout: { lines: [['0']] },
    value: 0,
    direction: directionWords(direction),
    states: inLine,
    shows: asOrdinate(context, datum, datum, set),
    group,
  }
  return [zero, ...made]
}

const withStates = ([first, ...rest]: readonly Draft[], more: readonly Statement[]): Draft[] =>
  first ? [{ ...first, states: [...first.states, ...more] }, ...rest] : []

/** Neighbour to neighbour in one line. With the overall size beside it, the last step away from the datum follows. */
function chain(
  context: Context,
  set: Located,
  levels: readonly Level[],
  datum: Stop,
  whole: Draft | undefined,
): Draft[] {
  const group = { id: `${set.key}/chain`, scheme: 'chain' as const }
  const steps = levels.slice(1).map((level, i) => ({ from: levels[i]!, to: level }))
  if (whole) {
    const fromTop = same(levels.at(-1)!.at, datum.at)
    if (fromTop) steps.shift()
    else steps.pop()
  }
  const first = levels[0]
  const inLine = first ? inLineWith(first.stops[0]!, first, set) : []
  const made = steps.map(({ from, to }) => sized(context, set, from.stops[0]!, to, group))
  return inLine.length > 0 ? withStates(made, inLine) : made
}

/** The one size of the set that joins its outermost levels. */
function overall(links: readonly Link[], levels: readonly Level[]): Draft | undefined {
  const [low, high] = [levels[0]?.at ?? 0, levels.at(-1)?.at ?? 0]
  if (levels.length < 3) return undefined
  return links.find(({ pairs: [pair, more] }) => {
    if (!pair || more) return false
    return same(Math.min(...pair), low) && same(Math.max(...pair), high)
  })?.draft
}

/** What stands in line with a place that a size reaches, said of each. */
function inLineWith(one: Stop, level: Level, { k }: Located): Statement[] {
  return level.stops.flatMap((other): Statement[] =>
    other === one ? [] : [{ kind: 'aligned', direction: unitOf(k), reaches: [one.mooring, other.mooring] }],
  )
}

function sized(context: Context, set: Located, from: Stop, level: Level, group: NonNullable<Draft['group']>): Draft {
  const { links, k } = set
  const direction = unitOf(k)
  const to = level.stops[0]!
  const joining = links.filter(({ pairs }) => pairs.some(([a, b]) => isStep(a, b, from, to)))
  // One that a frame makes exact cannot be told by another's number.
  const typed = joining.find(({ draft }) => draft.size && context.basic.has(draft.size)) ?? joining[0]
  const own = typed?.pairs.length === 1 ? typed : undefined
  const holder = own ?? links.find(({ stops }) => stops.some((s) => near(s, to)))
  const size = typed?.draft.size ?? computedSize(context, set, Math.abs(to.at - from.at), [from, to])
  const axis = to.mooring.axis ?? from.mooring.axis
  const basic = links.some(
    ({ draft, stops }) => draft.size && context.basic.has(draft.size) && stops.some((s) => near(s, to)),
  )
  const shows = own?.draft.shows ?? showLinear(from.mooring, to.mooring, direction, axis ? { facing: axis } : {})
  const feature = holder?.draft.feature
  return {
    id: own?.draft.id ?? `${group.id}/${to.mooring.name}`,
    callout: lengthCallout(size, context.writing),
    value: size.mm,
    size,
    direction: directionWords(direction),
    states: [{ kind: 'distance', ...stretchOf(from.mooring, to.mooring, direction) }, ...inLineWith(to, level, set)],
    shows: group.scheme === 'ordinate' ? asOrdinate(context, from, to, set) : preferring(context, shows, set.view),
    span: (holder?.draft ?? typed?.draft)?.span ?? size.span,
    group,
    ...(own?.draft.alike ? { alike: own.draft.alike } : {}),
    ...(basic && !own ? { basic } : {}),
    ...(feature ? { feature } : {}),
  }
}

const isStep = (a: number, b: number, from: Stop, to: Stop): boolean =>
  (same(a, from.at) && same(b, to.at)) || (same(b, from.at) && same(a, to.at))

const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-5

/** The view of the set first; others only at the drafter's wish. */
function preferring(context: Context, shows: Draft['shows'], view: string): Draft['shows'] {
  const there = context.sights.find((s) => s.view.id === view)
  if (!there || !shows(there)) return shows
  return (sight) => {
    const showing = shows(sight)
    return showing && sight !== there ? { ...showing, score: showing.score - 500 } : showing
  }
}

function asOrdinate(context: Context, datum: Stop, to: Stop, { links, k, view }: Located): Draft['shows'] {
  const direction = unitOf(k)
  const axis = links.flatMap((l) => l.stops).find((s) => s.mooring.axis)?.mooring.axis
  const linear = showLinear(datum.mooring, to.mooring, direction, axis ? { facing: axis } : {})
  return preferring(
    context,
    (sight) => {
      const own = linear(sight)
      const along = sight.inPlane(direction)
      if (!own || !along || own.measured.kind !== 'linear') return undefined
      return {
        score: own.score,
        measured: { kind: 'ordinate', datum: own.measured.a, point: own.measured.b, along },
      }
    },
    view,
  )
}

/** The size without the word that the scheme's numbers replace. */
export function withoutWord(context: Context, draft: Draft, { k }: Pick<Located, 'k'>): Draft {
  const { centred, bothWays, symmetrical } = context.writing.habit
  const states = draft.states.filter((s) => !isCentred(s, k))
  const lines = draft.callout.lines.flatMap((line): Callout['lines'][number][] => {
    const [word] = line
    if (line.length > 1 || typeof word !== 'string') return [line]
    for (const one of [centred, symmetrical]) {
      if (word === one) return []
      if (word === `${one} ${bothWays}`) return [[one]]
    }
    return [line]
  })
  return { ...draft, states, callout: { lines } }
}

/**
 * A sum or difference of typed sizes carries as many decimals as the finest of those that place its ends; of fractions
 * and whole inches it is a fraction again, and falls under their tolerance.
 */
function computedSize(context: Context, { links, k }: Located, mm: number, ends: readonly Stop[]): Size {
  const typed = (list: readonly Link[]) => list.flatMap(({ whole, draft }) => (whole && draft.size ? [draft.size] : []))
  const touching = links.filter(({ stops }) => stops.some((s) => ends.some((e) => near(s, e))))
  const counted = links.filter((l) => touching.some((t) => t.bases.some((b) => l.stops.some((s) => near(s, b)))))
  const own = typed([...touching, ...counted])
  const sizes = own.length > 0 ? own : typed(links)
  const decimals = Math.max(0, ...sizes.map((s) => s.decimals))
  const finest = sizes.find((s) => s.decimals === decimals)
  const { unit } = context.writing
  const value = unit === 'inch' ? mm / 25.4 : mm
  const needed = [0, 1, 2, 3, 4].find((n) => Math.abs(value - Number(value.toFixed(n))) < 1e-6) ?? 4
  const places = Math.max(decimals, needed)
  const fraction = asFraction(value, sizes.length > 0 ? sizes : stockSizes(context, k))
  return {
    text: fraction ?? computedText(mm, { ...context.writing, sign: '.' }, places),
    value,
    form: fraction ? 'fraction' : places > 0 ? 'decimal' : 'whole',
    decimals: fraction ? 0 : places,
    span: finest?.span ?? touching[0]?.draft.span ?? { from: 0, to: 0 },
    unit,
    unitTyped: false,
    mm,
  }
}

/** The stock's own sizes along the axis, of which a place said to be centred is a half. */
const stockSizes = ({ part }: Context, k: Located['k']): Size[] =>
  part.chosen.flatMap((c) =>
    c.kind === 'distance' && (c.group ?? 'stock') === 'stock' && Math.abs(c.direction[k]) > 1 - 1e-9 ? [c.size] : [],
  )

/** `3-1/2` for 3.5, of fractions and whole inches as fine, or of their halves; undefined where none fits or a decimal has part. */
function asFraction(value: number, sizes: readonly Size[]): string | undefined {
  if (!sizes.some((s) => s.form === 'fraction') || sizes.some((s) => s.form === 'decimal')) return undefined
  const finest = Math.max(1, ...sizes.map((s) => Number(/\/(\d+)/.exec(s.text)?.[1] ?? 1)))
  for (let under = 2; under <= 2 * finest; under *= 2) {
    const over = Math.round(value * under)
    if (Math.abs(value * under - over) > 1e-6) continue
    const [whole, rest] = [Math.floor(over / under), over % under]
    if (rest === 0) return undefined
    return `${whole > 0 ? `${whole}-` : ''}${rest}/${under}`
  }
  return undefined
}
