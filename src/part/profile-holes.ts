import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { dot, sub } from '../geometry/vec3.ts'
import type { ProfileCurve } from './model.ts'
import type { Workshop } from './workshop.ts'

/** Coordinates of a point of space in the profile's plane. */
export function inProfile(shop: Workshop, p: Vec3): Vec2 {
  const { plane } = shop.profile!
  const d = sub(p, plane.origin)
  return [dot(d, plane.right), dot(d, plane.up)]
}

/** Whether a boss or the like already stands in the way of working in the flat profile. */
const flatStillWhole = (shop: Workshop) => !shop.steps.some((s) => s.kind === 'fuse')

/** Puts a through hole into the profile before it is thickened. False where it must be cut from the solid. */
export function addProfileCircle(shop: Workshop, p: Vec3, r: number, face: string): boolean {
  return addProfileLoop(shop, [{ curve: { kind: 'arc', c: inProfile(shop, p), r, from: 0, sweep: 2 * Math.PI }, face }])
}

/** Puts a closed loop into the profile; the caller has seen that it clears the outline and other loops. */
export function addProfileLoop(shop: Workshop, loop: ProfileCurve[]): boolean {
  if (!shop.profile || !flatStillWhole(shop)) return false
  shop.profile.holes.push(loop)
  return true
}
