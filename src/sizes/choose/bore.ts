import { cross, norm, sub } from '../../geometry/vec3.ts'
import type { PartFeature } from '../../part/part.ts'
import type { Context } from './context.ts'

/**
 * A single hole that a hole table leaves at the view (common practice, no source): one that a bolt circle stands about,
 * or that has no coordinate in numbers. Unless the whole part was asked for, also one with a tolerance of its own.
 */
export function isBore({ part }: Context, { id, members, feature }: PartFeature, whole: boolean): boolean {
  const [only, more] = members
  if (!only || more || feature?.kind !== 'hole') return false
  const isCentre = part.features.some(
    ({ pattern }) =>
      pattern?.kind === 'bolt circle' && norm(cross(sub(pattern.centre, only.point), pattern.normal)) < 1e-5,
  )
  const isPlaced = part.chosen.some((c) => c.group === id && (c.kind === 'distance' || c.kind === 'pitch'))
  return isCentre || !isPlaced || (!whole && feature.diameter.tolerance !== undefined)
}
