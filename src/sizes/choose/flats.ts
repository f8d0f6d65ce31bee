import { acrossFlatsCallout, squareCallout } from '../callout/shapes.ts'
import type { Statement } from '../dimension.ts'
import { type Context, mooringOf } from './context.ts'
import type { Draft } from './draft.ts'

/**
 * Flats in pairs have one size across two opposite ones: `□24` of a square (ASME Y14.5-2018 4.4.6, ISO 129-1:2018; from
 * memory), `24 A/F` of others. All of them stand
 * as far from the axis and evenly about it (common practice, no source).
 */
export function withFlats(context: Context, drafts: readonly Draft[]): Draft[] {
  const { part } = context
  const sets = part.features.filter((f) => f.kind === 'flat-cut' && f.members.length > 1)
  return drafts.map((draft): Draft => {
    const set = sets.find((f) => f.id === draft.feature)
    const said = draft.states[0]
    if (!set || !part.axis || said?.kind !== 'distance' || draft.span !== acrossOf(set.feature)) return draft
    const faces = set.members.flatMap((m) => part.body.faces.filter((f) => f.name === m.id).slice(0, 1))
    const alike: Statement = {
      kind: 'flats alike',
      faces: faces.map((f) => f.id),
      axis: part.axis.direction,
      at: part.axis.point,
    }
    const callout =
      faces.length === 4 ? squareCallout(draft.callout) : acrossFlatsCallout(draft.callout, context.writing)
    return { ...draft, callout, states: [...draft.states, alike] }
  })
}

/**
 * A straight keyseat in a bore stands evenly about the axis, as its centre line shows: no word says so (common practice,
 * no source).
 */
export function withBoreKeyseats(context: Context, drafts: readonly Draft[]): Draft[] {
  const { part } = context
  return drafts.map((draft): Draft => {
    const key = part.features.find((f) => f.id === draft.feature)?.feature
    const said = draft.states[0]
    if (key?.kind !== 'keyseat' || said?.kind !== 'distance' || draft.span !== key.width.span) return draft
    // round ends stand on the axis by themselves
    if (part.data.some((d) => d.kind === 'axis' && d.id.startsWith(`${draft.feature} `))) return draft
    const { direction, from: first, to: last } = said
    const own = part.implied.find((i) => i.kind === 'centred' && i.between[0] === draft.feature)?.between[1]
    const axis = part.axis
      ? { at: part.axis.point, name: 'axis' }
      : own === undefined
        ? undefined
        : mooringOf(context, own, direction)
    if (!axis) return draft
    return { ...draft, states: [...draft.states, { kind: 'centred', direction, first, last, between: [axis, axis] }] }
  })
}

const acrossOf = (feature: Context['part']['features'][number]['feature']) =>
  feature?.kind === 'flat-cut' ? feature.across.span : undefined
