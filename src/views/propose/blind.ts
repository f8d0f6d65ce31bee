import { dot } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'

/** Whether what is worked into a side comes out nowhere on the opposite one, so that it is not seen from there. */
export function isBlind({ body }: Part, { members, outward }: PartFeature): boolean {
  const own = new Set(members.flatMap((m) => m.faces))
  return !body.edges.some(({ faces }) => {
    if (!faces.some((f) => f !== undefined && own.has(f))) return false
    return faces.some((f) => {
      const face = f === undefined || own.has(f) ? undefined : body.faces[f]
      if (face?.surface.kind !== 'plane') return false
      return dot(face.surface.axes.z, outward) * (face.reversed ? -1 : 1) < -1 + 1e-9
    })
  })
}
