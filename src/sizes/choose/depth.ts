import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { PartFeature } from '../../part/part.ts'
import { depthCallout } from '../callout/shapes.ts'
import type { LeaderTarget } from '../dimension.ts'
import type { Context } from './context.ts'
import type { Draft, Showing } from './draft.ts'
import type { Chosen } from './kinds.ts'
import { extentDraft } from './linear.ts'
import type { Sight } from './sight.ts'

/**
 * Depth of a pocket or slot: a plain distance where a section or an open end shows the floor's edge visible; else `↧` and
 * the depth in the view that shows the true shape, on a leader that ends with a dot on the floor (ASME Y14.5-2018 6.3.14
 * depth symbol; ISO 128-2 and ASME Y14.2, leaders that end within an outline; from memory). Never at a hidden line
 * while one of these serves.
 */
export function depthDraft(context: Context, chosen: Chosen<'depth'>, feature: PartFeature): Draft | undefined {
  const plain = extentDraft(context, chosen, feature.outward)
  if (!plain) return undefined
  const floors = feature.members.map((m) => m.faces.filter((f) => isFloor(context, f, feature.outward)))
  const callout = depthCallout(chosen.size, context.writing, feature.members.length)
  return {
    ...plain,
    shows: (sight) => {
      const linear = plain.shows(sight)
      if (linear && linear.score >= 0) return linear
      if (dot(sight.view.frame.toViewer, feature.outward) < 1 - 1e-9) return linear
      const targets = floors.flatMap((faces) => onFloor(context, sight, faces))
      if (targets.length === 0) return linear
      const showing: Showing = { score: 20 - 2 * sight.order, measured: { kind: 'leader', targets }, callout }
      return showing
    },
  }
}

function isFloor(context: Context, face: number, outward: Vec3): boolean {
  const surface = context.part.body.faces.find((f) => f.id === face)?.surface
  return surface?.kind === 'plane' && Math.abs(dot(surface.axes.z, outward)) > 1 - 1e-9
}

/** Places of the floor clear of its middle, where its centre lines cross, and of circles drawn within it. */
function onFloor(context: Context, sight: Sight, faces: readonly number[]): LeaderTarget[] {
  const corners = context.part.body.edges.flatMap(({ curve, faces: sides }): Vec2[] => {
    if (!sides.some((f) => f !== undefined && faces.includes(f)) || curve.kind !== 'line') return []
    return [sight.flat(curve.a), sight.flat(curve.b)]
  })
  if (corners.length === 0) return []
  const [xs, ys] = [corners.map((p) => p[0]), corners.map((p) => p[1])]
  const at = (list: readonly number[], t: number) => Math.min(...list) + t * (Math.max(...list) - Math.min(...list))
  const places = [0.75, 0.25].flatMap((v) => [0.75, 0.25].map((u): Vec2 => [at(xs, u), at(ys, v)]))
  const clear = places.filter((p) => !sight.withinCircle(p))
  return (clear.length > 0 ? clear : places).map((p) => ({ kind: 'point', at: p, within: true }))
}
