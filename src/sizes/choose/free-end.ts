import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, norm, scale, sub } from '../../geometry/vec3.ts'
import type { Context } from './context.ts'

/**
 * Of a turned step, a place beyond the end from which its diameter can be taken without crossing a larger step
 * (extension lines clear of the outline, common practice, no source). Undefined: larger steps stand on both sides.
 */
export function freeEnd(
  context: Context,
  faces: readonly number[],
  origin: Vec3,
  axis: Vec3,
  r: number,
): Vec3 | undefined {
  const rims = context.part.body.edges.flatMap(({ curve, faces: sides }) => {
    if (curve.kind !== 'circle' || norm(cross(curve.axes.z, axis)) > 1e-7) return []
    const out = sub(curve.axes.origin, origin)
    if (norm(cross(out, axis)) > 1e-5) return []
    return [{ at: dot(out, axis), r: curve.r, own: sides.some((f) => f !== undefined && faces.includes(f)) }]
  })
  const own = rims.filter((rim) => rim.own).map((rim) => rim.at)
  if (own.length === 0) return undefined
  const [low, high] = [Math.min(...own), Math.max(...own)]
  const larger = rims.filter((rim) => rim.r > r + 1e-6)
  const below = larger.some((rim) => rim.at < low + 1e-6)
  const above = larger.some((rim) => rim.at > high - 1e-6)
  if (below && above) return undefined
  // With nothing larger on either side, the end of the part that is nearer.
  const [first, last] = [Math.min(...rims.map((rim) => rim.at)), Math.max(...rims.map((rim) => rim.at))]
  const atHigh = below || (!above && last - high < low - first)
  return add(origin, scale(axis, atHigh ? high + 1e4 : low - 1e4))
}
