import type { SlotFeature } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { ChosenSize, PartFeature } from '../../part/part.ts'
import { sizeParts } from '../callout/numbers.ts'
import { fullRoundCallout, slotCallout } from '../callout/shapes.ts'
import type { Statement, Stretch } from '../dimension.ts'
import { endsOf } from '../proof/making.ts'
import type { Context } from './context.ts'
import { depthDraft } from './depth.ts'
import type { Draft } from './draft.ts'
import { oneOf } from './kinds.ts'
import { pairApart } from './levels.ts'
import { extentDraft, stretchOf } from './linear.ts'
import { endDrafts, runOutOf } from './run-out.ts'
import { showRadius } from './show.ts'

/** Sized by one note: closed at both ends, by the overall length. */
export const isNoted = (slot: SlotFeature): boolean => slot.measured === 'overall' && !slot.openTo

/**
 * Slots. Closed ones with their overall length take one note, width × length with the ends' R under it; others are
 * sized across and along, with R at an end. The ends' R has no value, for it
 * follows from the width: it says that they are round from side to side.
 */
export function slotDrafts(
  context: Context,
  feature: PartFeature,
  slot: SlotFeature,
  chosen: readonly ChosenSize[],
): Draft[] {
  const width = oneOf(chosen, 'width')
  const length = oneOf(chosen, 'length')
  const depth = oneOf(chosen, 'depth')
  const { members, outward } = feature
  const ends = members.flatMap((m) => endsOf(context.part, m.faces, outward))
  const round: Statement[] = ends.length > 0 ? [{ kind: 'full round', faces: ends }] : []
  const endShow = showRadius(ends, slot.width.mm / 2)
  const out = runOutOf(context, feature)
  if (width && length && isNoted(slot) && !out) {
    const states = [width, length].flatMap((c): Statement[] => {
      const stretches = members.flatMap((m): Stretch[] => {
        const pair = pairApart(context, m.faces, c.direction, c.size.mm, m.id)
        return pair ? [stretchOf(pair[0], pair[1], c.direction)] : []
      })
      const [first, ...also] = stretches
      return first ? [{ kind: 'distance', ...first, ...(also.length > 0 ? { also } : {}) }] : []
    })
    const below: Vec3 = [-outward[0], -outward[1], -outward[2]]
    if (depth) {
      const [first, ...also] = members.flatMap((m): Stretch[] => {
        const at = m.point
        const to: Vec3 = [
          at[0] + depth.size.mm * below[0],
          at[1] + depth.size.mm * below[1],
          at[2] + depth.size.mm * below[2],
        ]
        return [
          {
            direction: below,
            from: { at, name: `face at ${m.id}` },
            to: { at: to, name: `floor of ${m.id}`, faces: m.faces },
          },
        ]
      })
      if (first) states.push({ kind: 'distance', ...first, ...(also.length > 0 ? { also } : {}) })
    }
    const after = depth ? [' ↧ ', ...sizeParts(depth.size, context.writing)] : []
    const callout = slotCallout(slot.width, slot.length, context.writing, members.length, after)
    const rounds = fullRoundCallout(context.writing, 2 * members.length)
    return [
      {
        id: `${feature.id}/note`,
        callout: { lines: [...callout.lines, ...rounds.lines] },
        value: slot.width.mm,
        size: slot.width,
        direction: 'slot',
        states: [...states, ...round],
        shows: endShow,
        span: slot.width.span,
        feature: feature.id,
      },
    ]
  }
  const drafts = [width, out ? undefined : length].flatMap((c) => {
    const draft = c && extentDraft(context, c, c.direction)
    return draft ? [draft] : []
  })
  if (out) drafts.push(...endDrafts(context, out))
  if (depth) {
    const draft = depthDraft(context, depth, feature)
    if (draft) drafts.push(draft)
  }
  if (ends.length > 0) {
    drafts.push({
      id: `${feature.id}/ends`,
      // where the rim of another cut parts an end, it is one end still
      callout: fullRoundCallout(context.writing, new Set(ends.map((f) => context.model.elementOf.get(f))).size),
      value: slot.width.mm / 2,
      direction: 'radius',
      states: round,
      shows: endShow,
      span: slot.width.span,
      feature: feature.id,
    })
  }
  return drafts
}
