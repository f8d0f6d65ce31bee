import type { Side } from '../brief/brief.ts'
import type { Vec3 } from '../geometry/vec.ts'
import type { Frame } from './view.ts'

/** The six principal views (ISO 5456-2, ASME Y14.3): the part's own sides as seen in the front view. */
export const FRAMES: Readonly<Record<Side, Frame>> = {
  front: { right: [1, 0, 0], up: [0, 0, 1], toViewer: [0, -1, 0] },
  rear: { right: [-1, 0, 0], up: [0, 0, 1], toViewer: [0, 1, 0] },
  top: { right: [1, 0, 0], up: [0, 1, 0], toViewer: [0, 0, 1] },
  bottom: { right: [1, 0, 0], up: [0, -1, 0], toViewer: [0, 0, -1] },
  right: { right: [0, 1, 0], up: [0, 0, 1], toViewer: [1, 0, 0] },
  left: { right: [0, -1, 0], up: [0, 0, 1], toViewer: [-1, 0, 0] },
}

const half = Math.SQRT1_2
const third = 1 / Math.sqrt(3)
const sixth = 1 / Math.sqrt(6)

/** Isometric view from the right, front and top: all three axes equally shortened (ISO 5456-3). */
export const ISOMETRIC: Frame = {
  right: [half, half, 0],
  up: [-sixth, sixth, 2 * sixth],
  toViewer: [third, -third, third],
}

export type Axis = 'x' | 'y' | 'z'
export const AXES: Readonly<Record<Axis, Vec3>> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }

/** The axis along which a side is seen. */
export const axisOf: Readonly<Record<Side, Axis>> = {
  front: 'y',
  rear: 'y',
  top: 'z',
  bottom: 'z',
  right: 'x',
  left: 'x',
}

/** The principal side whose outward direction this is, or undefined for an inclined one. */
export function sideOf(outward: Vec3): Side | undefined {
  for (const side of Object.keys(FRAMES) as Side[]) {
    const n = FRAMES[side].toViewer
    if (n[0] * outward[0] + n[1] * outward[1] + n[2] * outward[2] > 1 - 1e-9) return side
  }
  return undefined
}
