import type { Lie, Side } from '../brief/brief.ts'
import type { Vec3 } from '../geometry/vec.ts'

export const SIDES = ['left', 'right', 'front', 'rear', 'top', 'bottom'] as const satisfies readonly Side[]

/** Direction out of the part's own side: x right, y to the rear, z up. */
export const outwardOf: Readonly<Record<Side, Vec3>> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  front: [0, -1, 0],
  rear: [0, 1, 0],
  top: [0, 0, 1],
  bottom: [0, 0, -1],
}

export { oppositeOf } from '../brief/opposite-side.ts'

/** Which axis of space a side is square to. */
export const axisOf: Readonly<Record<Side, 0 | 1 | 2>> = { left: 0, right: 0, front: 1, rear: 1, top: 2, bottom: 2 }

export const lieAxis: Readonly<Record<Lie, 0 | 1 | 2>> = { 'left-right': 0, 'front-rear': 1, 'up-down': 2 }
export const axisLie: readonly [Lie, Lie, Lie] = ['left-right', 'front-rear', 'up-down']
export const unitAxis: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

/** The side at the low and the high end of each axis. */
export const endSides: readonly (readonly [Side, Side])[] = [
  ['left', 'right'],
  ['front', 'rear'],
  ['bottom', 'top'],
]

/** Across and up of a face square to an axis: across is left-right (front-rear on left and right faces). */
export function faceAxes(axis: 0 | 1 | 2): { readonly across: 0 | 1; readonly up: 1 | 2 } {
  if (axis === 0) return { across: 1, up: 2 }
  if (axis === 1) return { across: 0, up: 2 }
  return { across: 0, up: 1 }
}

/** Right and up as one sees them facing a side. */
export const facing: Readonly<Record<Side, { readonly right: Vec3; readonly up: Vec3 }>> = {
  front: { right: [1, 0, 0], up: [0, 0, 1] },
  rear: { right: [-1, 0, 0], up: [0, 0, 1] },
  right: { right: [0, 1, 0], up: [0, 0, 1] },
  left: { right: [0, -1, 0], up: [0, 0, 1] },
  top: { right: [1, 0, 0], up: [0, 1, 0] },
  bottom: { right: [1, 0, 0], up: [0, -1, 0] },
}

export function sideOfDirection(v: Vec3): Side {
  const side = SIDES.find((s) => {
    const o = outwardOf[s]
    return o[0] * v[0] + o[1] * v[1] + o[2] * v[2] > 0.999999
  })
  return side ?? 'front'
}

/** The direction in which radii are drawn in the half section about an axis. */
export const squareUp = (axis: 0 | 1 | 2): Vec3 => (axis === 2 ? [1, 0, 0] : [0, 0, 1])
