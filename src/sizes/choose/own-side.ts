import { dot } from '../../geometry/vec3.ts'
import { isBlind } from '../../views/propose/blind.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'

/**
 * What is worked into one side and comes out nowhere is hidden from the other, even where another like it stands opposite
 * and its full lines are drawn at the same place: its sizes do not stand at those.
 */
export function fromOwnSide(context: Context, drafts: readonly Draft[]): Draft[] {
  const { part, features } = context
  return drafts.map((draft): Draft => {
    const feature = draft.feature === undefined ? undefined : features.get(draft.feature)
    if (!feature || !['hole', 'slot', 'pocket'].includes(feature.kind) || !isBlind(part, feature)) return draft
    return {
      ...draft,
      shows: (sight) => {
        const showing = draft.shows(sight)
        const { kind, frame } = sight.view
        const isBehind = kind === 'principal' && dot(frame.toViewer, feature.outward) < -1 + 1e-9
        return showing && isBehind ? { ...showing, score: Math.min(showing.score - 100, -1) } : showing
      },
    }
  })
}
