import type { Statement } from '../dimension.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'

/**
 * Flats in pairs have one size across two opposite ones, and the words say that it is that: `24 A/F`. All of them stand
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
    const lines = draft.callout.lines.map((line, i) =>
      i === 0 ? [...line, ` ${context.writing.habit.acrossFlats}`] : line,
    )
    return { ...draft, callout: { lines }, states: [...draft.states, alike] }
  })
}

const acrossOf = (feature: Context['part']['features'][number]['feature']) =>
  feature?.kind === 'flat-cut' ? feature.across.span : undefined
