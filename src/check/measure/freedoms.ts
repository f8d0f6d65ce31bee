import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot } from '../../geometry/vec3.ts'
import { across, type Element } from './elements.ts'

/**
 * A motion of the rigid part to first order: a turn (radians) about an axis through the origin, and a shift. What is said
 * of a motion is linear in it: six figures, turn first.
 */
type Motion = readonly number[]

const NEAR = 1e-6

/** No turn about `way`. */
const noTurn = (way: Vec3): Motion => [...way, 0, 0, 0]
/** A point of the part does not move along `way`; lengths over `size` so that turns and shifts weigh alike. */
const noShift = (point: Vec3, way: Vec3, size: number): Motion => [...cross(point, way).map((c) => c / size), ...way]

/**
 * What an element holds of a part that is laid to it: a plane two turns and a shift, an axis two turns and two shifts
 * (ASME Y14.5-2018 section 7, ISO 5459: degrees of freedom by the type of datum).
 */
export function heldBy({ kind, point, direction }: Element, size: number): Motion[] {
  const [a, b] = across(direction)
  const turns = [noTurn(a), noTurn(b)]
  return kind === 'plane'
    ? [...turns, noShift(point, direction, size)]
    : [...turns, noShift(point, a, size), noShift(point, b, size)]
}

/** Orientation alone: an element may shift but not tilt. */
export const turnsOf = ({ direction }: Element): Motion[] => across(direction).map(noTurn)

/** The turn about an axis through a point. */
export const turnAbout = (direction: Vec3): Motion => noTurn(direction)

/** Independent conditions, as an orthonormal basis. */
export function basisOf(conditions: readonly Motion[]): Motion[] {
  const basis: Motion[] = []
  for (const condition of conditions) {
    const rest = without(condition, basis)
    const long = Math.hypot(...rest)
    if (long > NEAR) basis.push(rest.map((c) => c / long))
  }
  return basis
}

/** What of a condition a basis does not hold. */
function without(condition: Motion, basis: readonly Motion[]): Motion {
  let rest = [...condition]
  // Twice, against rounding.
  for (const unit of [...basis, ...basis]) {
    const share = rest.reduce((sum, c, i) => sum + c * unit[i]!, 0)
    rest = rest.map((c, i) => c - share * unit[i]!)
  }
  return rest
}

const holds = (conditions: readonly Motion[], motion: Motion): boolean =>
  conditions.some((c) => Math.abs(c.reduce((sum, v, i) => sum + v * motion[i]!, 0)) > NEAR)

/** A motion that is left free and yet moves what must be located. */
export interface Free {
  readonly kind: 'shift' | 'turn'
  /** `left-right`, `front-rear`, `up-down`. */
  readonly way: string
}

const WAYS: readonly (readonly [string, Vec3])[] = [
  ['left-right', [1, 0, 0]],
  ['front-rear', [0, 1, 0]],
  ['up-down', [0, 0, 1]],
]

/**
 * The motions that `held` leaves free and `needed` does not allow: shifts along the part's own directions, turns about
 * them through `centre`. Empty where everything needed is held.
 * @param size mm, the part's own, as in `heldBy`
 */
export function freeOf(
  needed: readonly Motion[],
  held: readonly Motion[],
  centre: Vec3,
  size: number,
): { readonly all: boolean; readonly free: readonly Free[] } {
  const basis = basisOf(held)
  const all = needed.every((n) => Math.hypot(...without(n, basis)) < 1e-5)
  if (all) return { all, free: [] }
  const free = WAYS.flatMap(([way, axis]): Free[] => {
    const shift: Motion = [0, 0, 0, ...axis]
    // A turn about an axis through the centre: the origin goes along.
    const turn: Motion = [...axis.map((c) => c), ...cross(centre, axis).map((c) => c / size)]
    const left = (motion: Motion) => !holds(held, motion) && holds(needed, motion)
    return [
      ...(left(shift) ? [{ kind: 'shift', way } as const] : []),
      ...(left(turn) ? [{ kind: 'turn', way } as const] : []),
    ]
  })
  return { all, free }
}

/** Coordinates along a direction that the elements fix: of planes square to it, and axes that lie across it. */
export const coordinates = (elements: readonly Element[], way: Vec3): number[] =>
  elements.flatMap(({ kind, point, direction }) => {
    const along = Math.abs(dot(direction, way))
    return (kind === 'plane' ? along > 1 - NEAR : along < NEAR) ? [dot(point, way)] : []
  })
