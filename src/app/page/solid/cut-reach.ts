import type { Vec3 } from '../../../geometry/vec.ts'
import { FRAMES } from '../../../views/frames.ts'
import { depthOf, type PlaneInHand, standingAt } from './cutting-plane.ts'
import { meshCut } from './mesh-cut.ts'

interface Box {
  readonly min: Vec3
  readonly max: Vec3
}

/** A plane that cuts nothing yet is looked at as if brought in by this share of the way. */
const FIRST_SHARE = 0.02

/**
 * How far the material reaches in the plane, mm: where the plane leaves the part. The part's own box where the plane
 * meets nothing.
 *
 * @param corners the part's triangles, nine numbers each
 */
export function cutReach(plane: PlaneInHand, box: Box, corners: Float32Array): Box {
  const deepest = depthOf(plane.side, box)
  const depth = Math.min(Math.max(plane.depth, FIRST_SHARE * deepest), (1 - FIRST_SHARE) * deepest)
  const normal = FRAMES[plane.side].toViewer
  const sign = normal.find((c) => c !== 0)!
  const pieces = meshCut(corners, normal, sign * standingAt({ ...plane, depth }, box))
  if (pieces.length === 0) return box
  const min = [Infinity, Infinity, Infinity]
  const max = [-Infinity, -Infinity, -Infinity]
  pieces.forEach((v, i) => {
    min[i % 3] = Math.min(min[i % 3]!, v)
    max[i % 3] = Math.max(max[i % 3]!, v)
  })
  return { min: min as unknown as Vec3, max: max as unknown as Vec3 }
}
