import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Reach } from '../dimension.ts'
import { judge } from '../proof/judge.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { sharedSizes } from './shared.ts'

/**
 * An outline as a drawing gives it. Arcs of one radius share it (`2X R20`). The moves must say where each arc ends; where
 * an arc runs on smoothly from its neighbours, some of these numbers follow from its radius, and what follows is not a
 * size of the drawing: points of tangency go first (common practice, no source), then the moves made last.
 */
export function outlineDrafts(context: Context, drafts: readonly Draft[]): Draft[] {
  const { stock } = context.part.brief
  if (stock?.kind !== 'outline' || !stock.moves.some((m) => m.kind === 'arc')) return [...drafts]
  const loose = (list: readonly Draft[]) => judge(context.model, list.map(plain)).loose.length
  const spare = (list: readonly Draft[]) => {
    const { equations, repeated } = judge(context.model, list.map(plain))
    return repeated.some((r) => isMove(list.find((d) => d.id === equations[r.equation]!.dimension)))
  }
  let kept = sharedSizes(context, drafts, 'radius')
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
