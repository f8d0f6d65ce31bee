import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { withCount, withLine } from '../callout/shapes.ts'
import type { Statement, Stretch } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import { type Context, type Mooring, mooringOf } from './context.ts'
import { type Draft, directionWords } from './draft.ts'
import { withBoreKeyseats, withFlats } from './flats.ts'
import { stretchOf } from './linear.ts'
import { withMirrored } from './mirror.ts'
import { isAlong, runOutOf } from './run-out.ts'
import { showLinear } from './show.ts'

/**
 * Puts on the sheet what the brief says without a number: `centred` goes as a word to the size it belongs to, a mirrored
 * pair and legs of one thickness as a count. Symmetry is never left for the reader to guess.
 */
export function withWords(context: Context, drafts: readonly Draft[]): Draft[] {
  let result = withBoreKeyseats(context, withFlats(context, drafts))
  const said = new Map<string, Set<string>>()
  for (const { kind, between } of context.part.implied)
    if (kind === 'equal') result = equal(context, equalSlopes(context, result, between), between)
  for (const implied of context.part.implied) {
    if (implied.kind !== 'centred') continue
    if (!isMirror(implied)) result = centred(context, result, implied, context.writing.habit.centred, said)
    else {
      const mirrored = withMirrored(context, result, implied)
      result = mirrored ?? centred(context, result, implied, context.writing.habit.symmetrical, said)
    }
  }
  return result
}

interface Said {
  readonly text: string
  readonly between: readonly string[]
}

const isMirror = ({ text }: Said): boolean => text.startsWith('mirrored')

/**
 * `word` beside the size that the condition belongs to. What is not centred has a number of its own, so that the word
 * alone is plain; where one note carries both directions it says so.
 */
function centred(
  context: Context,
  drafts: Draft[],
  said: Said,
  word: string,
  wordsAt: Map<string, Set<string>>,
): Draft[] {
  const direction = directionOf(context, said)
  if (!direction || runsOutAlong(context, said, direction)) return drafts
  const moorings = said.between.map((id) => mooringOf(context, id, direction))
  if (moorings.some((m) => !m) || moorings.length === 0) return drafts
  const known = moorings as Mooring[]
  const ownAxes = known.every((m) => m.axis) && said.between.at(-1) !== 'axis'
  const ends = ownAxes ? bordersOf(context, direction) : known.slice(said.between.at(-1) === 'axis' ? -1 : -2)
  const members = ownAxes ? known : known.slice(0, known.length - ends.length)
  const [first, last] = [members[0], members.at(-1)]
  if (!first || !last) return drafts
  const statement: Statement = {
    kind: 'centred',
    direction,
    first,
    last,
    between: [ends[0]!, ends.at(-1)!],
  }
  const at = carrierOf(context, drafts, members, direction, said)
  const draft = drafts[at]
  if (!draft) return centredStock(drafts, members, direction, statement, word)
  const { habit } = context.writing
  const key = `${draft.id} ${word}`
  const ways = wordsAt.get(key) ?? new Set<string>()
  const way = directionWords(direction)
  let { callout } = draft
  if (ways.size === 0) callout = withLine(callout, word)
  else if (!ways.has(way)) {
    const lines = callout.lines.filter((l) => !(l.length === 1 && l[0] === word))
    callout = withLine({ lines }, `${word} ${habit.bothWays}`)
  }
  wordsAt.set(key, ways.add(way))
  const mended: Draft = { ...draft, callout, states: [...draft.states, statement] }
  return drafts.map((d, i) => (i === at ? mended : d))
}

/** A slot without its ends has no middle along its way. */
function runsOutAlong(context: Context, said: Said, direction: Vec3): boolean {
  const feature = context.features.get(featureOf(context, said) ?? '')
  const out = feature && runOutOf(context, feature)
  return !!out && isAlong(out.direction, direction)
}

/** The outermost of the part either way: where an arc bounds it, no side stands there to be named. */
function bordersOf(context: Context, direction: Vec3): Mooring[] {
  const { min, max } = context.part.body.box
  const k = axisIndex(direction) ?? 0
  return [min, max].map((corner, i): Mooring => {
    const at: Vec3 = [corner[0], corner[1], corner[2]]
    const faces = context.part.body.faces.flatMap(({ id, surface }) => {
      if (surface.kind !== 'cylinder' || Math.abs(surface.axes.z[k]) > 1e-9) return []
      const crown = surface.axes.origin[k] + (i === 0 ? -surface.r : surface.r)
      return Math.abs(crown - corner[k]) < 1e-5 ? [id] : []
    })
    return { at, name: 'outermost', faces }
  })
}

/**
 * A wall of the stock that is centred (a tee's stem) and has its thickness from a size said for several: that size moves
 * to the wall, and the word goes with it.
 */
function centredStock(
  drafts: Draft[],
  members: readonly Mooring[],
  direction: Vec3,
  statement: Statement,
  word: string,
): Draft[] {
  const [first, last] = [members[0]!, members.at(-1)!]
  const joins = (s: Stretch) => [first, last].every((m) => s.from.name === m.name || s.to.name === m.name)
  return drafts.map((draft): Draft => {
    const [said, ...more] = draft.states
    if (said?.kind !== 'distance' || !said.also?.some(joins)) return draft
    const own = said.also.find(joins)!
    const { direction: d, from, to } = said
    const also = [{ direction: d, from, to }, ...said.also.filter((s) => s !== own)]
    return {
      ...draft,
      callout: withLine(draft.callout, word),
      direction: directionWords(direction),
      states: [{ kind: 'distance', ...own, also }, ...more, statement],
      shows: showLinear(first, last, direction),
    }
  })
}

/** Direction of a `centred`: across the planes it lies between, or between its members about an axis. */
function directionOf(context: Context, said: Said): Vec3 | undefined {
  const data = said.between.map((id) => context.data.get(id))
  const plane = data.findLast((d) => d?.kind === 'plane' || d?.kind === 'middle')
  if (plane && data.at(-1)?.kind !== 'axis') {
    const n = plane.normal
    const k = axisIndex(n)
    return k === undefined ? n : ([0, 1, 2].map((i) => (i === k ? 1 : 0)) as unknown as Vec3)
  }
  const word = /(left-right|front-rear|up-down)/.exec(said.text)?.[1]
  const k = ['left-right', 'front-rear', 'up-down'].indexOf(word ?? '')
  return k < 0 ? undefined : ([0, 1, 2].map((i) => (i === k ? 1 : 0)) as unknown as Vec3)
}

/** The size that the word belongs beside: between the members themselves, else the feature's note or any size of it. */
function carrierOf(
  context: Context,
  drafts: readonly Draft[],
  members: readonly Mooring[],
  direction: Vec3,
  said: Said,
): number {
  const spots = members.map((m) => dot(m.at, direction))
  const matches = (stretch: Stretch) => {
    if (Math.abs(dot(stretch.direction, direction)) < 1 - 1e-9) return false
    const ends = [stretch.from, stretch.to].map((r) => dot(r.at, direction)).sort((a, b) => a - b)
    const own = [...spots].sort((a, b) => a - b)
    return own.length > 1 && Math.abs(ends[0]! - own[0]!) < 1e-5 && Math.abs(ends[1]! - own.at(-1)!) < 1e-5
  }
  const feature = featureOf(context, said)
  const inFeature = (d: Draft) => d.feature === feature
  const between = drafts.findIndex(
    (d) =>
      (feature === undefined || inFeature(d)) &&
      d.states.some((s) => {
        if (s.kind === 'distance') return matches(s)
        if (s.kind !== 'pitch') return false
        return matches({ direction: s.direction, from: s.members[0]!, to: s.members.at(-1)! })
      }),
  )
  if (between >= 0) return between
  if (feature === undefined) return -1
  // A width or length whose middle is the member: notches, slots, pockets, keyseats.
  const across = drafts.findIndex(
    (d) =>
      inFeature(d) &&
      d.states.some((s) => {
        if (s.kind !== 'distance' || Math.abs(dot(s.direction, direction)) < 1 - 1e-9) return false
        const middle = (dot(s.from.at, direction) + dot(s.to.at, direction)) / 2
        return spots.length === 1 && Math.abs(middle - spots[0]!) < 1e-5 && /width|length|pitch/.test(d.id)
      }),
  )
  if (across >= 0) return across
  const note = drafts.findIndex((d) => inFeature(d) && d.id.endsWith('/note'))
  if (note >= 0) return note
  // beside a distance the word would speak of that distance's own direction
  const plain = drafts.findIndex((d) => inFeature(d) && d.states.every((s) => s.kind !== 'distance'))
  return plain >= 0 ? plain : drafts.findIndex(inFeature)
}

function featureOf(context: Context, said: Said): string | undefined {
  const [first] = said.between
  const found = context.part.features.find(
    (f) => f.id === first || f.members.some((m) => m.id === first || m.axes.includes(first ?? '')),
  )
  if (found) return found.id
  // Data of a feature carry its name in front: `notch 1 middle`.
  const named = context.part.features.filter((f) => first?.startsWith(`${f.id} `))
  if (named.length > 0) return named.reduce((a, b) => (b.id.length > a.id.length ? b : a)).id
  return context.part.features.find((f) => f.members.some((m) => first?.startsWith(`${m.id} `)))?.id
}

/** The sides of a centred vee lean alike: that goes with its angle or width. */
function equalSlopes(context: Context, drafts: Draft[], between: readonly string[]): Draft[] {
  const [p, q] = between.map((id) => context.data.get(id))
  if (between.length !== 2 || p?.kind !== 'plane' || q?.kind !== 'plane') return drafts
  if (axisIndex(p.normal) !== undefined) return drafts
  const [a, b] = between.map((id) => mooringOf(context, id, [0, 0, 0])?.faces[0])
  const feature = featureOf(context, { text: '', between })
  const at = drafts.findIndex(
    (d) => d.feature === feature && d.states.some((s) => s.kind === 'angle' || s.kind === 'distance'),
  )
  const draft = drafts[at]
  if (a === undefined || b === undefined || !draft) return drafts
  const k = ([0, 1, 2] as const).find(
    (i) => Math.abs(Math.abs(p.normal[i]) - Math.abs(q.normal[i])) < 1e-9 && Math.abs(p.normal[i]) > 1e-9,
  )
  if (k === undefined) return drafts
  const direction = [0, 1, 2].map((i) => (i === k ? 1 : 0)) as unknown as Vec3
  const mended: Draft = { ...draft, states: [...draft.states, { kind: 'equal slopes', faces: [a, b], direction }] }
  return drafts.map((d, i) => (i === at ? mended : d))
}

/** `2X 1/4 STK`: the thickness holds for every pair of planes that far apart which the stock says are equal. */
function equal(context: Context, drafts: Draft[], between: readonly string[]): Draft[] {
  const at = drafts.findIndex((d) => d.id.includes('/thickness/'))
  const draft = drafts[at]
  const said = draft?.states[0]
  if (said?.kind === 'distance' && !between.some((id) => id === said.from.name || id === said.to.name)) return drafts
  if (!draft?.size || said?.kind !== 'distance') return drafts
  const { stock } = context.part.brief
  // A formed bend keeps its thickness by the common centre of its two radii.
  if (stock?.kind === 'angle' && (stock.make ?? 'formed') === 'formed' && (stock.insideRadius?.mm ?? 0) > 0)
    return drafts
  const t = draft.value
  const also: Stretch[] = []
  const used = new Set<string>()
  const key = (p: Vec3, n: Vec3) =>
    `${axisIndex(n)}/${dot(p, [Math.abs(n[0]), Math.abs(n[1]), Math.abs(n[2])]).toFixed(4)}`
  used.add(key(said.from.at, said.direction))
  used.add(key(said.to.at, said.direction))
  const planes = [...context.data.values()].flatMap((d) => (d.kind === 'plane' ? [d] : []))
  for (const id of between) {
    const one = planes.find((p) => p.id === id)
    if (!one || used.has(key(one.point, one.normal))) continue
    const listed = planes.filter((p) => between.includes(p.id))
    const other = [...listed, ...planes].find(
      (p) =>
        p.id !== id &&
        Math.abs(Math.abs(dot(p.normal, one.normal)) - 1) < 1e-9 &&
        Math.abs(Math.abs(dot(p.point, one.normal) - dot(one.point, one.normal)) - t) < 1e-5 &&
        !used.has(key(p.point, p.normal)),
    )
    if (!other) continue
    used.add(key(one.point, one.normal))
    used.add(key(other.point, other.normal))
    const [a, b] = [mooringOf(context, one.id, one.normal), mooringOf(context, other.id, one.normal)]
    if (a && b) also.push(stretchOf(a, b, one.normal))
  }
  if (also.length === 0) return drafts
  const callout = withCount(draft.callout, context.writing, also.length + 1)
  const mended: Draft = { ...draft, callout, states: [{ ...said, also }, ...draft.states.slice(1)] }
  return drafts.map((d, i) => (i === at ? mended : d))
}
