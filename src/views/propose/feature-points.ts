import type { Vec3 } from '../../geometry/vec.ts'
import type { Part, PartFeature } from '../../part/part.ts'

/** Points of the feature's edges that tell how far it reaches: ends of lines, middles of round edges, poles of others; mm. */
export function featurePoints(feature: PartFeature, part: Part): readonly Vec3[] {
  return feature.members
    .flatMap((m) => m.faces)
    .flatMap((id) => part.body.faces[id]?.loops.flat() ?? [])
    .flatMap((use): readonly Vec3[] => {
      const { curve } = part.body.edges[use.edge]!
      if (curve.kind === 'line') return [curve.a, curve.b]
      if (curve.kind === 'spline') return curve.poles
      return [curve.axes.origin]
    })
}
