import type { Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, along, cross, dot, negate, norm, sub, unit } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { type Axis, FRAMES } from '../frames.ts'

/** A feature beside the axis, worked along it: where its members stand round the axis, and how much it asks to be cut. */
interface Place {
  readonly id: string
  readonly directions: readonly Vec3[]
  /** 2: a floor, step or countersink; 1: a plain hole through; 0: the end view tells all. */
  readonly need: 0 | 1 | 2
}

/**
 * The two halves of an aligned section through the axis of a part of revolution (ASME Y14.3, ISO 128-3: the plane is
 * bent to pass through features at an angle, which are then turned into the plane of the section): unit directions from
 * the axis, the first standing for the upper half of the view, for its right one where the axis is upright. Undefined
 * where the straight plane cuts all that asks to be cut. `named`: what the section is asked to go through.
 */
export function alignedHalves(part: Part, side: Side, named?: PartFeature): readonly [Vec3, Vec3] | undefined {
  const axis = part.axis!
  const places = part.features.flatMap((f) => placeOf(f, part))
  const first = acrossAxis(axis.direction, side)
  const second = negate(first)
  const straight = (p: Place) => isCut(p, first) || isCut(p, second)
  const missing = missed(places, straight, named)
  if (missing.length === 0) return undefined
  const kept = places.filter((p) => p.need > 0 && straight(p))
  if (kept.length > 0) {
    if (kept.every((p) => isCut(p, first))) {
      const b = bestNear(missing, second)
      if (b) return [first, b]
    }
    if (kept.every((p) => isCut(p, second))) {
      const a = bestNear(missing, first)
      if (a) return [a, second]
    }
    if (!named) return undefined
  }
  const a = bestNear(missing, first)
  if (!a) return undefined
  // Straight on through the axis where something stands opposite.
  const opposite = missing.some((p) => isCut(p, negate(a)))
  return [a, opposite ? negate(a) : (bestNear(missing, second, a) ?? second)]
}

/**
 * The direction of sight, both ways of which see the section as it lies, where the plane is straight and the part is not
 * round about the axis: turned into another view its outline would have the size of another direction.
 */
export function unturned(part: Part, halves: readonly [Vec3, Vec3] | undefined): Axis | undefined {
  if (!halves || norm(add(...halves)) > 1e-9) return undefined
  const { min, max } = part.body.box
  const own = ([0, 1, 2] as const).filter((k) => Math.abs(part.axis!.direction[k]) < 1e-9)
  const [a, b] = own.map((k) => max[k] - min[k])
  if (own.length !== 2 || Math.abs(a! - b!) < 1e-6 * Math.max(a!, b!)) return undefined
  const sight = cross(part.axis!.direction, halves[0])
  const k = ([0, 1, 2] as const).find((i) => Math.abs(sight[i]) > 1 - 1e-9)
  return k === undefined ? undefined : (['x', 'y', 'z'] as const)[k]
}

/** Whether the feature stands beside the axis of a part of revolution and is worked along it. */
export const standsBesideAxis = (part: Part, feature: PartFeature): boolean => placeOf(feature, part).length > 0

/** The direction in the view, square to the axis, that its upper half lies in; the right one where the axis is upright. */
export function acrossAxis(axis: Vec3, side: Side): Vec3 {
  const { right, up } = FRAMES[side]
  return Math.abs(dot(axis, up)) > Math.abs(dot(axis, right)) ? right : up
}

function missed(places: readonly Place[], straight: (p: Place) => boolean, named?: PartFeature): readonly Place[] {
  if (named) return places.filter((p) => p.id === named.id && !straight(p))
  const stepped = places.filter((p) => p.need === 2)
  const missing = stepped.filter((p) => !straight(p))
  if (missing.length > 0) return missing
  const any = places.filter((p) => p.need > 0)
  return any.some(straight) ? [] : any
}

function placeOf(f: PartFeature, part: Part): Place[] {
  const { point, direction } = part.axis!
  if (!KINDS.has(f.kind) || Math.abs(dot(f.outward, direction)) < 1 - 1e-9) return []
  const directions = f.members.flatMap((m) => {
    const from = sub(m.point, point)
    const off = along(from, direction, -dot(from, direction))
    return norm(off) < 1e-6 ? [] : [unit(off)]
  })
  if (directions.length === 0) return []
  const surfaces = f.members.flatMap((m) => m.faces).flatMap((id) => part.body.faces[id]?.surface ?? [])
  const isStepped = surfaces.some(
    (s) => s.kind === 'cone' || (s.kind === 'plane' && Math.abs(dot(s.axes.z, direction)) > 1 - 1e-9),
  )
  return [{ id: f.id, directions, need: isStepped ? 2 : f.kind === 'hole' ? 1 : 0 }]
}

const KINDS: ReadonlySet<PartFeature['kind']> = new Set(['hole', 'slot', 'pocket'])

const isCut = (p: Place, half: Vec3) => p.directions.some((d) => dot(d, half) > 1 - 1e-9)

/** Of the places within a quarter turn of `toward` the direction that cuts most, then the nearest; a quarter turn from `other`. */
function bestNear(places: readonly Place[], toward: Vec3, other?: Vec3): Vec3 | undefined {
  const worth = (d: Vec3) => places.reduce((sum, p) => sum + (isCut(p, d) ? p.need || 1 : 0), 0)
  return places
    .flatMap((p) => p.directions)
    .filter((d) => dot(d, toward) > -1e-9 && (!other || dot(d, other) < 1e-9))
    .reduce<Vec3 | undefined>((best, d) => {
      if (!best) return d
      const more = worth(d) - worth(best)
      return more > 0 || (more === 0 && dot(d, toward) > dot(best, toward) + 1e-9) ? d : best
    }, undefined)
}
