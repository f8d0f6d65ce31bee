import type { Part } from '../../part/part.ts'
import { withCount } from '../callout/shapes.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { alike, digitsOf } from './once.ts'

/**
 * A taper that a groove parts from a step of the diameter in which it ends: one size stands for both, `2X ⌀20`, at the step
 * (repetitive sizes, ASME Y14.5-2018 1.9.5, ISO 129-1, from memory).
 */
export function withGroovedTapers(context: Context, drafts: readonly Draft[]): Draft[] {
  let result = [...drafts]
  for (const end of drafts) {
    const [said, more] = end.states
    if (said?.kind !== 'cone diameter' || more || !end.id.startsWith('stock/diameter/')) continue
    const beyond = beyondGrooves(context.part, said.faces)
    const step = result.find(
      ({ states: [own, other], ...d }) =>
        own?.kind === 'radius' &&
        !other &&
        d.id.startsWith('stock/diameter/') &&
        own.faces.some((f) => beyond.includes(f)) &&
        !own.faces.some((f) => context.signed.has(f)),
    )
    const own = step?.states[0]
    if (!step || own?.kind !== 'radius' || digitsOf(step) !== digitsOf(end)) continue
    const both: Draft = {
      ...step,
      callout: withCount(step.callout, context.writing, 2),
      states: [own, { ...said, like: own.faces }],
      ...alike(step, end),
    }
    result = result.filter((d) => d !== end).map((d) => (d === step ? both : d))
  }
  return result
}

/** The faces of steps at the other sides of the grooves that these faces end at. */
function beyondGrooves({ body, features }: Part, faces: readonly number[]): number[] {
  const beside = (face: number) =>
    body.edges.flatMap((e) => (e.faces.includes(face) ? e.faces.filter((f) => f !== undefined && f !== face) : []))
  const bottoms = features
    .filter((f) => f.kind === 'groove')
    .flatMap((f) => f.members.flatMap((m) => m.faces))
    .filter((id) => body.faces.some((f) => f.id === id && f.surface.kind === 'cylinder'))
  return bottoms.flatMap((bottom) => {
    const around = beside(bottom).flatMap((side) => beside(side!).filter((f) => f !== bottom))
    return around.some((f) => faces.includes(f!)) ? around.flatMap((f) => (faces.includes(f!) ? [] : [f!])) : []
  })
}
