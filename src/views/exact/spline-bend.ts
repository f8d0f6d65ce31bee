import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm } from '../../geometry/vec3.ts'
import type { FaceModel } from './face-model.ts'
import type { SurfacePoint } from './spline-patches.ts'

/** Curvature along the line of sight on an outline: positive where the solid bulges towards the line's own side. */
export function bendAlong(face: FaceModel, x: SurfacePoint, d: Vec3): number {
  const [e, f, g] = [dot(x.u, x.u), dot(x.u, x.v), dot(x.v, x.v)]
  const [m, n] = [dot(x.u, d), dot(x.v, d)]
  const det = e * g - f * f
  if (det === 0) return 0
  const a = (m * g - n * f) / det
  const b = (n * e - m * f) / det
  const normal = cross(x.u, x.v)
  const bend = a * a * dot(x.uu, normal) + 2 * a * b * dot(x.uv, normal) + b * b * dot(x.vv, normal)
  return (-face.sign * bend) / norm(normal)
}
