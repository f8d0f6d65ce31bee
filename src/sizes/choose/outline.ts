import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Reach, Statement } from '../dimension.ts'
import { SAME } from '../proof/elements.ts'
import { judge } from '../proof/judge.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { alike, digitsOf } from './once.ts'
import { type Centre, halfRounds, tangentCentre } from './outline-arcs.ts'
import { sharedSizes } from './shared.ts'

/**
 * An outline as a drawing gives it. Arcs of one radius share it (`2X R20`); corners, sides and centres of arcs that stand
 * level and have one number from one side show it once. The moves must say where each arc ends; where an arc runs on
 * smoothly from its neighbours, some of these numbers follow from its radius, and what follows is not a size of the
 * drawing: points of tangency go first (common practice, no source), then the moves made last.
 */
export function outlineDrafts(context: Context, drafts: readonly Draft[]): Draft[] {
  const { stock } = context.part.brief
  if (stock?.kind !== 'outline' || !stock.moves.some((m) => m.kind === 'arc')) return [...drafts]
  const loose = (list: readonly Draft[]) => judge(context.model, list.map(plain)).loose.length
  const spare = (list: readonly Draft[]) => {
    const { equations, repeated } = judge(context.model, list.map(plain))
    return repeated.some((r) => isMove(list.find((d) => d.id === equations[r.equation]!.dimension)))
  }
  let kept = levelled(context, withHalfRounds(context, sharedSizes(context, drafts, 'radius')))
  if (!spare(kept)) return kept
  const free = loose(kept)
  const rank = (d: Draft) => (endsInTangency(context, d) ? 0 : 1)
  // A number with a tolerance of its own is meant to stand.
  const candidates = kept.filter((d) => isMove(d) && d.direction !== 'radius' && !d.size?.tolerance).reverse()
  candidates.sort((a, b) => rank(a) - rank(b))
  for (const one of candidates) {
    const less = kept.filter((d) => d !== one)
    if (loose(less) > free) continue
    kept = less
    if (!spare(kept)) break
  }
  return kept
}

const plain = (d: Draft) => ({ id: d.id, states: d.states, reference: d.reference === true })

const isMove = (d: Draft | undefined): boolean =>
  !!d && !d.feature && !d.reference && (d.id.startsWith('stock/distance/') || d.id.startsWith('stock/radius/'))

/** A half round's centre stands on the side it is cut in: its R says so. */
function withHalfRounds(context: Context, drafts: readonly Draft[]): Draft[] {
  const halves = halfRounds(context.model)
  return drafts.map((draft) => {
    const [said] = draft.states
    if (said?.kind !== 'radius' || !isMove(draft)) return draft
    const own = halves.filter((h) => h.centre.faces.some((f) => said.faces.includes(f)))
    const on = own.map(
      ({ centre, side, direction }): Statement => ({
        kind: 'aligned',
        direction,
        reaches: [{ ...centre, name: 'centre of the half round' }, side],
      }),
    )
    return on.length > 0 ? { ...draft, states: [...draft.states, ...on] } : draft
  })
}

/**
 * One size where the brief gives one number to two things of the outline that stand level: a corner and a side, or the
 * tangent point of an arc and the axis of a hole about its centre. That they are level is then counted as aligned.
 */
function levelled(context: Context, drafts: readonly Draft[]): Draft[] {
  const kept: Draft[] = []
  for (const draft of drafts) {
    const at = kept.findIndex((d) => isOneLevel(context, d, draft))
    if (at < 0) {
      kept.push(draft)
      continue
    }
    // A size between sides is seen better than one at a corner, and a hole's better than one at its arc.
    const [one, other] = plainness(draft) > plainness(kept[at]!) ? [draft, kept[at]!] : [kept[at]!, draft]
    kept[at] = { ...one, states: [...one.states, ...alignments(context, one, other)], ...alike(one, other) }
  }
  return kept
}

type Stretch = Extract<Statement, { kind: 'distance' }>

/** The plain distance that the draft states, whatever words stand with it. */
function stretchOf(draft: Draft): Stretch | undefined {
  const [said] = draft.states
  return said?.kind === 'distance' && !said.also && !said.from.middle && !said.to.middle ? said : undefined
}

const plainness = (draft: Draft): number => {
  const said = stretchOf(draft)!
  return (draft.feature ? 2 : 0) - [said.from, said.to].filter((r) => r.corner).length
}

function isOneLevel(context: Context, a: Draft, b: Draft): boolean {
  const [p, q] = [stretchOf(a), stretchOf(b)]
  if (!p || !q || !(isMove(a) || isMove(b)) || a.reference || b.reference || digitsOf(a) !== digitsOf(b)) return false
  const pairs = matched(p, q)
  if (!pairs) return false
  const apart = pairs.filter(([r, s]) => !isSame(r, s))
  if (isMove(a) && isMove(b)) return apart.length > 0 && apart.every(([r, s]) => r.corner || s.corner)
  return (
    apart.length === 1 &&
    apart.every(([r, s]) => {
      const [corner, axis] = r.corner ? [r, s] : [s, r]
      const centre = corner.corner && tangentCentre(context.model, corner.at, p.direction)
      return centre && (axis.faces ?? []).length > 0 && isOnAxis(centre, axis.at)
    })
  )
}

/** The ends of two stretches that stand level with each other. */
function matched(p: Stretch, q: Stretch): [Reach, Reach][] | undefined {
  if (Math.abs(dot(p.direction, q.direction)) < 1 - 1e-9) return undefined
  const level = (r: Reach) => dot(r.at, p.direction)
  const same = (r: Reach, s: Reach) => Math.abs(level(r) - level(s)) < SAME
  if (same(p.from, q.from) && same(p.to, q.to))
    return [
      [p.from, q.from],
      [p.to, q.to],
    ]
  if (same(p.from, q.to) && same(p.to, q.from))
    return [
      [p.from, q.to],
      [p.to, q.from],
    ]
  return undefined
}

const isSame = (r: Reach, s: Reach): boolean => r.name === s.name

/** What the one size says of the other's ends: they are level with its own. */
function alignments(context: Context, one: Draft, other: Draft): Statement[] {
  const [p, q] = [stretchOf(one)!, stretchOf(other)!]
  return matched(p, q)!.flatMap(([r, s]): Statement[] => {
    if (isSame(r, s)) return []
    const centre = one.feature || other.feature ? tangentCentre(context.model, s.at, p.direction) : undefined
    const reach: Reach = centre ? { ...centre, name: `centre at ${s.name}` } : s
    return [{ kind: 'aligned', direction: p.direction, reaches: [r, reach] }]
  })
}

function isOnAxis(centre: Centre, at: Vec3): boolean {
  return norm(cross(sub(at, centre.at), centre.axis)) < SAME
}

/** One end of the size is where two sides run into each other without a corner. */
function endsInTangency(context: Context, draft: Draft): boolean {
  const [said] = draft.states
  return said?.kind === 'distance' && [said.from, said.to].some((r) => isTangent(context, r))
}

function isTangent(context: Context, reach: Reach): boolean {
  if ((reach.faces ?? []).length > 0) return false
  return context.part.body.edges.some(({ curve, smooth }) => {
    if (!smooth || curve.kind !== 'line') return false
    const along = sub(curve.b, curve.a)
    const out = sub(reach.at, curve.a)
    const t = dot(out, along) / dot(along, along)
    return t > -1e-6 && t < 1 + 1e-6 && norm(cross(out, along)) / norm(along) < 1e-5
  })
}
