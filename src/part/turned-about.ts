import type { Vec3 } from '../geometry/vec.ts'
import { add, cross, scale } from '../geometry/vec3.ts'

/** Turned about a unit axis square to it, right-handed; quarter turns stay exact. */
export function turnedAbout(v: Vec3, axis: Vec3, degrees: number): Vec3 {
  const quarter = degrees / 90
  const [c, s] = Number.isInteger(quarter)
    ? [[1, 0, -1, 0][quarter % 4]!, [0, 1, 0, -1][quarter % 4]!]
    : [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return add(scale(v, c), scale(cross(axis, v), s))
}
