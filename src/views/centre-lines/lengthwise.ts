import { along, dot } from '../../geometry/vec3.ts'
import { projectPoint } from '../project.ts'
import type { Frame, ViewLine } from '../view.ts'
import { isEndOn } from './end-on.ts'
import type { RoundAxis, RoundFeature } from './round-features.ts'

/** Axis lines of round features seen from the side or at a slant, past both ends of the feature by `overrun` paper mm. */
export function lengthwiseCentreLines(
  feature: RoundFeature,
  frame: Frame,
  overrun: number,
  shown: (axis: RoundAxis) => boolean = () => true,
): ViewLine[] {
  return feature.members
    .flatMap((m) => m.axes)
    .filter((axis) => !isEndOn(axis, frame) && shown(axis))
    .map((axis): ViewLine => {
      const at = (s: number) => projectPoint(along(axis.point, axis.direction, s), frame)
      return {
        curve: { kind: 'line', a: at(axis.reach[0]), b: at(axis.reach[1]) },
        kind: 'centre',
        sources: [],
        features: [feature.feature],
        overrun: [overrun, overrun],
      }
    })
}

/** True where the axis lies in the plane through `point` across `normal`. */
export function liesInPlane(
  axis: RoundAxis,
  point: readonly [number, number, number],
  normal: readonly [number, number, number],
) {
  const off = dot([axis.point[0] - point[0], axis.point[1] - point[1], axis.point[2] - point[2]], normal)
  return Math.abs(off) < 1e-6 && Math.abs(dot(axis.direction, normal)) < 1e-9
}
