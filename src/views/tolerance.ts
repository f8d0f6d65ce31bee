import type { Curve2 } from '../geometry/curve2.ts'
import { boxOfCurves } from '../geometry/evaluate.ts'

/** Distance in mm under which two points of a view are one: a millionth of the view's diagonal, never under 10⁻⁷ mm. */
export function toleranceOf(curves: readonly Curve2[]): number {
  if (curves.length === 0) return 1e-7
  const { min, max } = boxOfCurves(curves)
  return Math.max(1e-7, 1e-6 * Math.hypot(max[0] - min[0], max[1] - min[1]))
}
