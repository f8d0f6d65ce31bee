import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { dot, sub } from '../geometry/vec3.ts'
import type { Profile } from './model.ts'

/** Coordinates of a point of space in the profile's plane. */
export function inProfile({ plane }: Profile, p: Vec3): Vec2 {
  const d = sub(p, plane.origin)
  return [dot(d, plane.right), dot(d, plane.up)]
}

/** Puts a through hole into the profile before it is thickened. */
export function addProfileCircle(profile: Profile, p: Vec3, r: number, face: string): void {
  profile.holes.push([{ curve: { kind: 'arc', c: inProfile(profile, p), r, from: 0, sweep: 2 * Math.PI }, face }])
}
