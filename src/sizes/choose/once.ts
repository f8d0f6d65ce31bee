import type { Mark } from '../../brief/mark.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Reach, Statement, Stretch } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import { reached } from '../proof/reach.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'

/**
 * Features in line on one face share one size: where two statements give the same distance, the sheet shows it once and
 * the centre line says the rest. Where they give it with different digits, or against what the solid measures, both
 * places are marked. The features of `apart`, which a table or a scheme of their own gives, share with none.
 */
export function onceEach(context: Context, drafts: readonly Draft[], apart: ReadonlySet<string> = new Set()): Draft[] {
  const kept: Draft[] = []
  const said = new Map<string, string>()
  for (const draft of drafts) {
    contradiction(context, draft, drafts)
    const alone = draft.reference || (draft.feature !== undefined && apart.has(draft.feature))
    const keys = alone ? undefined : keysOf(context, draft)
    const earlier = keys?.flatMap((key) => said.get(key) ?? [])
    if (!keys || !earlier || earlier.length < keys.length) {
      for (const key of keys ?? []) if (!said.has(key)) said.set(key, draft.id)
      kept.push(draft)
      continue
    }
    const at = kept.findIndex((d) => d.id === earlier[0])
    const first = kept[at]!
    if (digitsOf(first) === digitsOf(draft) && isCentred(first) && !isCentred(draft)) {
      // the other says by a number of its own where its row stands
      kept.push(draft)
      continue
    }
    if (digitsOf(first) === digitsOf(draft)) {
      kept[at] = { ...first, states: [...first.states, ...inLine(context, first, draft)], ...alike(first, draft) }
      continue
    }
    // Two features' axes may be level by chance; then each keeps its own number.
    if (first.feature === draft.feature || !keys[0]!.includes('axis'))
      context.marks.push(twice(draft, first), twice(first, draft))
    kept.push(draft)
  }
  return kept
}

/** The other feature's axes, or the outline's other corners, stand level with the first one's: what the one size now says of both. */
export function inLine(context: Context, first: Draft, other: Draft): Statement[] {
  const isOne = first.feature === other.feature
  const mine = first.states.flatMap(reachesOf)
  return other.states.flatMap(reachesOf).flatMap((r): Statement[] => {
    // One feature's axes share their place already.
    if (isOne && (!r.reach.corner || mine.some((m) => m.reach.name === r.reach.name))) return []
    const mate = mine.find(
      (m) =>
        same(dot(m.reach.at, r.direction), dot(r.reach.at, r.direction)) &&
        same(1, Math.abs(dot(m.direction, r.direction))),
    )
    return mate && !shareAPlace(context, mate.reach, r.reach, r.direction)
      ? [{ kind: 'aligned', direction: r.direction, reaches: [mate.reach, r.reach] }]
      : []
  })
}

/** Planes of the stock in one plane share their place already; axes, middles and a cut's own planes do not. */
function shareAPlace({ model }: Context, a: Reach, b: Reach, direction: Vec3): boolean {
  if (!a.middle && !b.middle && ('axis' in a || 'axis' in b)) return !('axis' in a && 'axis' in b)
  const [p, q] = [a, b].map((r) => reached(model, r, direction)?.uses)
  return !p || !q || [...p].sort().join() === [...q].sort().join()
}

const isCentred = ({ states }: Draft): boolean => states.some((s) => s.kind === 'centred')

const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-5

function reachesOf(said: Statement): { reach: Reach; direction: Vec3 }[] {
  if (said.kind === 'distance')
    return [said, ...(said.also ?? [])].flatMap(({ from, to, direction }) =>
      [from, to].map((reach) => ({ reach, direction })),
    )
  if (said.kind === 'pitch')
    return [said.members, ...(said.also ?? [])].flat().map((reach) => ({ reach, direction: said.direction }))
  return []
}

/** The sizes that `one` speaks for once it stands for `other` too. */
export function alike(one: Draft, other: Draft): Pick<Draft, 'alike'> {
  return other.size ? { alike: [...(one.alike ?? []), other.size] } : {}
}

/** What the brief typed for the size, tolerance and all. */
export const digitsOf = (draft: Draft): string =>
  `${draft.size?.text ?? plainText(draft.callout)} ${JSON.stringify(draft.size?.tolerance ?? '', (k, v: unknown) => (k === 'span' ? undefined : v))}`

function only(draft: Draft): Stretch | undefined {
  const [said, more] = draft.states
  return said?.kind === 'distance' && !more && !said.also ? said : undefined
}

/**
 * One key for each plain thing the size states, by the levels it joins and the face it belongs to; undefined for
 * anything else.
 */
function keysOf(context: Context, draft: Draft): string[] | undefined {
  // How wide, long or deep a feature is stays its own: another that stands at its border does so by chance.
  if (draft.feature && /\/(width|length|depth)\//.test(draft.id)) return undefined
  const feature = draft.feature === undefined ? undefined : context.features.get(draft.feature)
  const face = feature ? feature.outward.map((c) => c.toFixed(3)).join() : 'stock'
  // The sides and floor of a cut are placed for it alone; steps at one level are one line of the outline.
  const alone = feature?.feature && ['notch', 'keyseat', 'flat-cut', 'slot', 'pocket'].includes(feature.feature.kind)
  const keys: string[] = []
  for (const said of draft.states) {
    if (said.kind === 'distance' && !said.also) keys.push(levels([said.from, said.to], said.direction))
    else if (said.kind === 'pitch' && !said.also) {
      for (let i = 1; i < said.members.length; i++) keys.push(levels(said.members.slice(i - 1, i + 1), said.direction))
    } else if (said.kind === 'centred') {
      keys.push(`middle ${levels([said.first, said.last], said.direction)} of ${levels(said.between, said.direction)}`)
    } else return undefined
  }
  // Planes in one plane are one wherever they are seen; axes are in line only where one view shows them together.
  // What a frame makes exact for one feature leaves another, that no frame holds, without a tolerance.
  const hold = draft.size && context.basic.has(draft.size) ? 'exact ' : ''
  const owner = alone ? `${draft.feature} ` : ''
  return keys.length > 0 ? keys.map((k) => (k.includes('axis') ? `${hold}${face} ${k}` : owner + k)) : undefined
}

function levels(reaches: readonly Reach[], direction: Vec3): string {
  const k = axisIndex(direction)
  const kind = (r: Reach) => ('axis' in r ? 'axis' : 'plane')
  return `${k ?? direction.join()} ${reaches
    .map((r) => `${kind(r)} ${Math.abs(dot(r.at, direction)).toFixed(4)}`)
    .sort()
    .join(' ')}`
}

function twice(draft: Draft, earlier: Draft): Mark {
  const text = `${plainText(draft.callout)} and ${plainText(earlier.callout)} are two statements of one distance with different digits or tolerances.`
  return {
    rule: 'same-size-two-ways',
    weight: 'must change',
    text,
    ...(draft.span ? { span: draft.span } : {}),
    expected: earlier.size ? `${earlier.size.text}, as at the other place` : 'one statement only',
    ...(draft.span && earlier.size
      ? { mends: [{ label: 'Write it as at the other place', span: draft.span, text: earlier.size.text }] }
      : {}),
    source: 'ASME Y14.5-2018 4.1(c): each size once (from memory)',
  }
}

/** A number that the solid does not bear out, because other statements fix the same thing otherwise. */
function contradiction(context: Context, draft: Draft, all: readonly Draft[]): void {
  const stretch = only(draft)
  if (!stretch || !draft.size || draft.size.unknown) return
  const actual = Math.abs(dot(stretch.to.at, stretch.direction) - dot(stretch.from.at, stretch.direction))
  if (Math.abs(actual - draft.size.mm) < 1e-4 * Math.max(1, actual)) return
  const near = (r: { at: Stretch['from']['at'] }, s: Stretch) =>
    [s.from, s.to].some((q) => Math.abs(dot(q.at, stretch.direction) - dot(r.at, stretch.direction)) < 1e-5)
  const others = all.filter((d) => {
    const s = only(d)
    return d !== draft && s && Math.abs(dot(s.direction, stretch.direction)) > 0.999 && near(stretch.to, s)
  })
  const unit = draft.size.unit === 'inch' ? 25.4 : 1
  const measured = Math.round((actual / unit) * 1e4) / 1e4
  for (const span of [draft.span, ...others.map((o) => o.span)]) {
    context.marks.push({
      rule: 'sizes-contradict',
      weight: 'must change',
      text: `${plainText(draft.callout)} does not agree with ${others.map((o) => plainText(o.callout)).join(', ') || 'the other statements'}: the part measures ${measured} there.`,
      ...(span ? { span } : {}),
      expected: `${measured}, or a change at the other place`,
      source: 'ASME Y14.5-2018 4.1(c) (from memory)',
    })
  }
}
