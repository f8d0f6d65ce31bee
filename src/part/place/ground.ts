import type { Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { Origin } from '../find-name.ts'
import type { PartFeature } from '../part.ts'
import { axisOf, endSides, faceAxes } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

/** The flat ground that members are placed on. */
export interface Ground {
  readonly side: Side
  readonly at: number
  /** The middle of the face as it stands, used where nothing says where. */
  readonly middle: Vec3
  /** Round faces: members may sit about the part's axis. */
  readonly round: boolean
  /** The place along this axis is given already: an open slot's edge, a notch's. */
  readonly fixed?: { readonly axis: 0 | 1 | 2; readonly at: number }
  /** Half the width of a cut whose outer words (`lower side`, `left end`) mean its wall. */
  readonly half?: number
  /** Halves of a slot's or pocket's extent along each direction, where `left end`, `lower side` are said of its walls. */
  readonly halves?: ByAxis<number>
}

/** Something for each direction of space, where there is any. */
export type ByAxis<T> = Readonly<Partial<Record<0 | 1 | 2, T>>>

/** Data of the members' low and high walls, by the direction in which distances may reach those. */
export type Walls = ByAxis<{ readonly low: readonly string[]; readonly high: readonly string[] }>

export interface Placed {
  /** Centres on the worked face. */
  readonly points: readonly Vec3[]
  readonly pattern: NonNullable<PartFeature['pattern']>
  /** Records sizes and conditions once the members' axes (or middle planes) have ids; same order as `points`. */
  readonly choose: (ids: readonly string[], walls?: Walls) => void
}

/** Directions of space by their axis, in words. */
export const WORDS = ['left-right', 'front-rear', 'up-down']

/** The lowest and highest plane of the part along an axis of space. */
export function limitsAlong(shop: Workshop, axis: 0 | 1 | 2): readonly [Origin, Origin] | undefined {
  const found = endSides[axis]!.map((side): Origin | undefined => {
    const face = shop.faces.find((f) => f.name === side || f.name === `${side} face`)
    return face && { id: face.name, axis, at: face.at }
  })
  const [low, high] = found
  return low && high ? [low, high] : undefined
}

/** What `centred` refers to along an axis: the middle, and the two planes it lies between (none: the axis itself). */
export function centreAlong(shop: Workshop, ground: Ground, axis: 0 | 1 | 2): { at: number; between: string[] } {
  if (shop.contour && axis !== shop.contour.axis) return { at: 0, between: ['axis'] }
  const limits = limitsAlong(shop, axis)
  if (!limits) return { at: middleOf(shop, ground, axis), between: [] }
  const [low, high] = limits
  return { at: (low.at + high.at) / 2, between: [low.id, high.id] }
}

/** Where an arc bounds the face there is no plane to count from: the middle is that of the face's whole extent. */
function middleOf(shop: Workshop, ground: Ground, axis: 0 | 1 | 2): number {
  const { across, up } = faceAxes(axisOf[ground.side])
  const face = shop.faces.find((f) => f.side === ground.side && Math.abs(f.at - ground.at) < 1e-9)
  if (!face || (axis !== across && axis !== up)) return ground.middle[axis]
  const level = axis === across ? 0 : 1
  return (face.min[level] + face.max[level]) / 2
}

/** The middle of the face, or the point of the part's axis on it. */
export function centreOf(shop: Workshop, ground: Ground): Vec3 {
  const normal = axisOf[ground.side]
  const p: [number, number, number] = [0, 0, 0]
  const { across, up } = faceAxes(normal)
  p[normal] = ground.at
  for (const axis of [across, up]) p[axis] = centreAlong(shop, ground, axis).at
  return p
}
