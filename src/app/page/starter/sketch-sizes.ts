import type { Vec3 } from '../../../geometry/vec.ts'
import type { StockName } from './sketches.ts'

/** A size that stands on a sketch, to be written over. Points are the sketch's own. */
export interface SketchSize {
  readonly name: string
  readonly inch: string
  readonly mm: string
  /** Its line between two arrows, with the points of the part that it runs between; or a leader to one point. */
  readonly line: { readonly of: readonly [Vec3, Vec3]; readonly ends: readonly [Vec3, Vec3] } | { readonly to: Vec3 }
  /** Where its figures stand. */
  readonly at: Vec3
}

const plus = (p: Vec3, q: Vec3): Vec3 => [p[0] + q[0], p[1] + q[1], p[2] + q[2]]

type Figures = readonly [name: string, inch: string, mm: string]

/** The distance from a to b, its line moved off the part; the figures in its middle, or beside it where it is short. */
function across([name, inch, mm]: Figures, a: Vec3, b: Vec3, off: Vec3, beside?: Vec3): SketchSize {
  const ends = [plus(a, off), plus(b, off)] as const
  const middle: Vec3 = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2, (ends[0][2] + ends[1][2]) / 2]
  return { name, inch, mm, line: { of: [a, b], ends }, at: beside ? plus(middle, beside) : middle }
}

const leader = ([name, inch, mm]: Figures, to: Vec3, at: Vec3): SketchSize => ({ name, inch, mm, line: { to }, at })

/** Moves: toward the front, to the right end, to the left and to the right on paper. */
const FRONT: Vec3 = [0, -2.2, 0]
const END: Vec3 = [2.2, 0, 0]
const LEFT: Vec3 = [-1.2, -1.2, 0]
const RIGHT: Vec3 = [1.3, 1.3, 0]
const FARTHER_LEFT: Vec3 = [-1.5, -1.5, 0]

/** The few sizes of each stock, where they stand on its sketch. */
export const sketchSizes: Readonly<Record<StockName, readonly SketchSize[]>> = {
  plate: [
    across(['length', '4.00', '100'], [0, 0, 0], [9, 0, 0], FRONT),
    across(['width', '2.00', '60'], [9, 0, 0], [9, 6, 0], END),
    across(['thickness', '.25', '8'], [0, 0, 0], [0, 0, 0.7], LEFT, FARTHER_LEFT),
  ],
  block: [
    across(['length', '3.00', '80'], [0, 0, 0], [6, 0, 0], FRONT),
    across(['width', '2.00', '50'], [6, 0, 0], [6, 4.5, 0], END),
    across(['height', '1.50', '40'], [0, 0, 0], [0, 0, 4], LEFT),
  ],
  angle: [
    across(['length', '3.00', '80'], [0, 0, 0], [7, 0, 0], FRONT),
    across(['base', '2.00', '50'], [7, 0, 0], [7, 5, 0], END),
    across(['upright', '3.00', '80'], [7, 5, 0], [7, 5, 6], RIGHT),
    across(['thickness', '.188', '5'], [0, 4.2, 6], [0, 5, 6], [0, 0, 0.9], [0, 0, 1.2]),
    leader(['inside radius', '.19', '5'], [3.5, 4.2, 0.8], [2.3, 1.7, 0.8]),
  ],
  channel: [
    across(['length', '8.00', '200'], [0, 0, 0], [8, 0, 0], FRONT),
    across(['width', '1.50', '45'], [8, 0, 0], [8, 4, 0], END),
    across(['height', '3.00', '80'], [8, 4, 0], [8, 4, 6], RIGHT),
    across(['thickness', '.25', '6'], [0, 0, 5.3], [0, 0, 6], LEFT, FARTHER_LEFT),
  ],
  tee: [
    across(['length', '6.00', '120'], [0, 5, 5.1], [8, 5, 5.1], [0, 2.2, 0]),
    across(['width', '2.00', '50'], [0, 0, 5.1], [0, 5, 5.1], [-2.2, 0, 0]),
    across(['height', '2.00', '50'], [8, 5, 0], [8, 5, 5.1], RIGHT),
    across(['thickness', '.25', '6'], [0, 0, 4.4], [0, 0, 5.1], LEFT, FARTHER_LEFT),
  ],
  'flat bar': [
    across(['length', '8.00', '150'], [0, 0, 0], [11, 0, 0], FRONT),
    across(['width', '1.50', '40'], [11, 0, 0], [11, 2.6, 0], END),
    across(['thickness', '.25', '8'], [0, 0, 0], [0, 0, 0.7], LEFT, FARTHER_LEFT),
  ],
  'round bar': [
    across(['length', '5.00', '120'], [0, -1.06, -1.06], [9, -1.06, -1.06], FRONT),
    across(['diameter', '1.00', '25'], [9, 0, -1.5], [9, 0, 1.5], END),
  ],
  tube: [
    across(['length', '4.00', '100'], [0, -1.56, -1.56], [7, -1.56, -1.56], FRONT),
    across(['outside', '2.00', '60'], [7, 0, -2.2], [7, 0, 2.2], [3.4, 0, 0]),
    leader(['inside', '1.50', '45'], [7, 1.06, 1.06], [7, 4.8, 2.4]),
  ],
  disc: [
    across(['diameter', '4.00', '120'], [0, 0, -3.4], [0, 0, 3.4], [-6, 0, 0]),
    across(['thickness', '.50', '16'], [2.404, 0, -2.404], [2.404, 1, -2.404], [1.3, 0, -1.3], [1.1, 2, 0]),
  ],
  turned: [
    across(['left ⌀', '.75', '20'], [0, 0, -1.1], [0, 0, 1.1], [-3.6, 0, 0]),
    across(['left length', '1.00', '28'], [0, -0.8, -0.8], [3, -0.8, -0.8], [0, -3.4, 0]),
    leader(['collar ⌀', '1.25', '28'], [3.6, 1.41, 1.41], [3.6, 3, 4.2]),
    across(['collar length', '.25', '6'], [3, -1.41, -1.41], [4.2, -1.41, -1.41], [0, -2.79, 0.61], [0, -2.9, 0]),
    across(['right ⌀', '.88', '22'], [9, 0, -1.4], [9, 0, 1.4], END),
    across(['right length', '2.00', '58'], [4.2, -1, -1], [9, -1, -1], [0, -3.2, 0.2]),
  ],
  outline: [
    across(['length', '4.00', '120'], [0, 0, 0], [7, 0, 0], FRONT),
    across(['right height', '.75', '20'], [7, 0.8, 0], [7, 0.8, 1.6], RIGHT, [1.4, 1.4, 0]),
    across(['height', '3.00', '120'], [0, 0, 0], [0, 0, 6], LEFT),
    across(['top width', '.75', '20'], [0, 0.8, 6], [2, 0.8, 6], [0, 0, 1.1], [0, 0, 1.2]),
    across(['thickness', '.25', '8'], [7, 0, 0], [7, 0.8, 0], [1.3, 0, 0], [1.1, 0, -1]),
  ],
}
