import type { ChosenSize } from '../../part/part.ts'
import type { Statement } from '../dimension.ts'
import { angleDraft, boltCircleDrafts } from './angular.ts'
import { arcLengthDraft } from './arc-length.ts'
import { type Context, mooringOf } from './context.ts'
import { depthDraft } from './depth.ts'
import type { Draft } from './draft.ts'
import { holeDraft } from './hole.ts'
import { isKind } from './kinds.ts'
import { distanceDraft, extentDraft, pitchDraft } from './linear.ts'
import { rateDraft } from './rate.ts'
import { chamferDraft, diameterDraft, radiusDraft } from './round.ts'
import { placesAlong, runOutOf } from './run-out.ts'
import { slotDrafts } from './slot.ts'

/** The brief's numbers as sizes, each with what it states and how it would stand in each view. */
export function draftsOf(context: Context): Draft[] {
  const { part } = context
  const taken = new Set<ChosenSize>()
  const notes = new Map<string, Draft>()
  const slots: Draft[] = []
  for (const feature of part.features) {
    const own = part.chosen.filter((c) => c.group === feature.id && !taken.has(c))
    if (feature.feature?.kind === 'hole') {
      const parts = own.filter(
        (c) => c.kind === 'diameter' || c.kind === 'depth' || (c.kind === 'angle' && c.role !== undefined),
      )
      for (const c of parts) taken.add(c)
      notes.set(feature.id, holeDraft(context, feature, feature.feature, parts))
    }
    if (feature.feature?.kind === 'slot') {
      const parts = own.filter((c) => c.kind === 'width' || c.kind === 'length' || c.kind === 'depth')
      for (const c of parts) taken.add(c)
      const out = runOutOf(context, feature)
      if (out) for (const c of own) if (placesAlong(out, c)) taken.add(c)
      slots.push(...slotDrafts(context, feature, feature.feature, parts))
    }
  }
  const circles = part.chosen.filter((c) => isKind(c, 'bolt circle'))
  const round = boltCircleDrafts(context, circles, notes)
  const rest = part.chosen.flatMap((chosen): Draft[] => {
    if (taken.has(chosen)) return []
    const draft = draftOf(context, chosen)
    return draft ? [draft] : []
  })
  return inLine(context, distinctIds([...rest, ...round, ...notes.values(), ...slots]))
}

/** A distance of 0 is no size but says that two axes, or an axis and a plane, are drawn in line: it goes with the feature's own size. */
function inLine(context: Context, drafts: Draft[]): Draft[] {
  return context.part.chosen.reduce<Draft[]>((all, c) => {
    if (!isKind(c, 'distance') || c.size.mm !== 0) return all
    const [a, b] = [c.from, c.to].map((id) => mooringOf(context, id, c.direction))
    if (!a || !b || (a.normal && b.normal)) return all
    const own = all.filter((d) => d.feature !== undefined && d.feature === c.group)
    const bearer = own.find((d) => d.direction === 'diameter') ?? own[0]
    const said: Statement = { kind: 'aligned', direction: c.direction, reaches: [a, b] }
    return all.map((d) => (d === bearer ? { ...d, states: [...d.states, said] } : d))
  }, drafts)
}

function draftOf(context: Context, chosen: ChosenSize): Draft | undefined {
  if (isKind(chosen, 'distance')) return distanceDraft(context, chosen)
  if (isKind(chosen, 'thickness')) return distanceDraft(context, chosen)
  if (isKind(chosen, 'pitch')) return pitchDraft(context, chosen)
  if (isKind(chosen, 'diameter')) return diameterDraft(context, chosen)
  if (isKind(chosen, 'radius')) return radiusDraft(context, chosen)
  if (isKind(chosen, 'chamfer')) return chamferDraft(context, chosen)
  if (isKind(chosen, 'width')) return extentDraft(context, chosen, chosen.direction)
  if (isKind(chosen, 'length')) return extentDraft(context, chosen, chosen.direction)
  if (isKind(chosen, 'depth')) {
    const feature = context.features.get(chosen.of) ?? context.features.get(chosen.group ?? '')
    if (!feature) return undefined
    return feature.kind === 'pocket'
      ? depthDraft(context, chosen, feature)
      : extentDraft(context, chosen, feature.outward)
  }
  if (isKind(chosen, 'arc length')) return arcLengthDraft(context, chosen)
  if (isKind(chosen, 'angle')) {
    const isPolar = context.part.chosen.some(
      (c) => c.kind === 'bolt circle' && c.group === chosen.group && c.members.includes(chosen.to),
    )
    if (isPolar) return undefined
    return chosen.angle.rate ? rateDraft(context, chosen) : angleDraft(context, chosen)
  }
  return undefined
}

/** Ids stay as they are when other statements change; two alike get a number in the order written. */
export function distinctIds(drafts: readonly Draft[]): Draft[] {
  const counts = new Map<string, number>()
  return drafts.map((draft) => {
    const n = (counts.get(draft.id) ?? 0) + 1
    counts.set(draft.id, n)
    return n === 1 ? draft : { ...draft, id: `${draft.id} ${n}` }
  })
}
