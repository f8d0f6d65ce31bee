import { fullRoundCallout, radiusCallout } from '../callout/shapes.ts'
import { fullRounds, pocketEnds } from '../proof/full-round.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { showRadius } from './show.ts'

/**
 * Corners rounded to half the width make one round end, and its radius follows from the width: `R` stands there without a
 * value, once for each end (fully rounded ends, ASME Y14.5-2018 and ISO 129-1, from memory). A radius with a tolerance of
 * its own stays a number, which the width then repeats.
 */
export function withFullRounds(context: Context, drafts: readonly Draft[]): Draft[] {
  const ends = [...fullRounds(context.part), ...pocketEnds(context.part)]
  if (ends.length === 0) return [...drafts]
  return drafts.flatMap((draft): Draft[] => {
    const [said] = draft.states
    const { size } = draft
    if (said?.kind !== 'radius' || !size || !draft.feature) return [draft]
    const own = ends.filter((e) => e.faces.some((f) => said.faces.includes(f)))
    if (own.length === 0) return [draft]
    const round = own.flatMap((e) => e.faces)
    if (size.tolerance) return [{ ...draft, states: [said, { kind: 'full round', faces: round }] }]
    const { size: _, ...plain } = draft
    const full: Draft = {
      ...plain,
      id: `${draft.feature}/ends`,
      callout: fullRoundCallout(context.writing, own.length),
      states: [{ kind: 'full round', faces: round }],
      shows: showRadius(round, draft.value),
    }
    const rest = said.faces.filter((f) => !round.includes(f))
    if (rest.length === 0) return [full]
    return [
      {
        ...draft,
        callout: radiusCallout(size, context.writing, rest.length),
        states: [{ kind: 'radius', faces: rest }],
        shows: showRadius(rest, draft.value),
      },
      full,
    ]
  })
}
