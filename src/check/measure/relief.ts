import type { Feature, GrooveFeature, TurnedStep } from '../../brief/brief.ts'

/** Grooves in a step that start at one of the shoulders beside it; one further off relieves nothing. */
export function groovesAt(
  features: readonly Feature[],
  step: TurnedStep,
  shoulders: readonly TurnedStep[],
): GrooveFeature[] {
  const own = step.name.text.toLowerCase()
  return features.flatMap((f) => {
    if (f.kind !== 'groove') return []
    const from = f.anchor.from.text.toLowerCase()
    const here =
      f.face.text.toLowerCase() === own &&
      f.anchor.distance.mm < 1e-6 &&
      // The shoulder may go by the name of either step that meets there.
      [step, ...shoulders].some((s) => from.includes(s.name.text.toLowerCase()))
    return here ? [f] : []
  })
}
