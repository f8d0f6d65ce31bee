import type { BodyEdge } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import type { RoundCut } from './cuts.ts'
import { type Ligament, ligament } from './ligament.ts'

/** Least ligament among the members of each feature, with the member that has it. */
export function worstLigaments(
  part: Part,
  cuts: readonly RoundCut[],
  counts: (cut: RoundCut) => (edge: BodyEdge) => boolean,
): { readonly cut: RoundCut; readonly least: Ligament }[] {
  const worst = new Map<string, { cut: RoundCut; least: Ligament }>()
  for (const cut of cuts) {
    const least = ligament(part.body, cut, counts(cut))
    const known = worst.get(cut.of.id)
    if (least && (!known || least.mm < known.least.mm - 1e-9)) worst.set(cut.of.id, { cut, least })
  }
  return [...worst.values()]
}

/** What stands at an edge, in a drafter's words: the face beside the cut that is not the one it is worked in. */
export function beside(part: Part, cut: RoundCut, edge: BodyEdge): string {
  const names = edge.faces.flatMap((f) => {
    const face = f === undefined ? undefined : part.body.faces[f]
    return face?.name ? [face] : []
  })
  const wall = names.find((f) => {
    if (f.surface.kind !== 'plane') return true
    const n = f.surface.axes.z
    const c = Math.abs(n[0] * cut.inward[0] + n[1] * cut.inward[1] + n[2] * cut.inward[2])
    return c < 0.99
  })
  return wall?.name ?? names[0]?.name ?? 'edge'
}
