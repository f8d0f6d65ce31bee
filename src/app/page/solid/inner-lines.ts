import type { Vec2, Vec3 } from '../../../geometry/vec.ts'
import { along, cross } from '../../../geometry/vec3.ts'
import type { PracticeFigures } from '../../../standards/practice-figures.ts'
import { fitChain } from '../../../views/dashes/chain.ts'
import type { HandAxis, SolidPicture } from '../engine/messages.ts'
import type { CentreOf } from '../sheet/centre-of.ts'
import { type Board, onBoard } from './pose.ts'

/** A chain line on the slip, px. */
export interface ChainLine {
  readonly a: Vec2
  readonly b: Vec2
  readonly dashes?: readonly number[]
}

/**
 * What a centre line of a view stands for, drawn on the pictorial: the axes of its features as far as they go, or the
 * middle plane where it leaves the part.
 *
 * @param px px for a paper mm
 */
export function innerLines(
  centre: CentreOf,
  solid: SolidPicture,
  board: Board,
  figures: PracticeFigures,
  px: number,
): ChainLine[] {
  const over = (figures.centreOverrun * px) / board.scale
  const line = (p: Vec3, q: Vec3): ChainLine[] => {
    const [a, b] = [onBoard(board, p), onBoard(board, q)]
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]) / px
    if (long < 0.5) return []
    const dashes = fitChain(long, figures.dashes.centre).dashes?.map((d) => d * px)
    return [{ a, b, ...(dashes ? { dashes } : {}) }]
  }
  const axes = axesOf(centre, solid.axes)
  if (axes.length > 0)
    return axes.flatMap(({ point, direction, from, to }) =>
      line(along(point, direction, from - over), along(point, direction, to + over)),
    )
  const corners = frameIn(centre, solid.box, over)
  return corners.flatMap((p, i) => line(p, corners[(i + 1) % corners.length]!))
}

const axesOf = (centre: CentreOf, axes: readonly HandAxis[]): readonly HandAxis[] =>
  axes.filter((a) => a.of.some((id) => centre.features.includes(id)))

/** The middle plane where it leaves the box, a little beyond. */
function frameIn({ plane }: CentreOf, { min, max }: SolidPicture['box'], over: number): Vec3[] {
  if (!plane) return []
  const { point, normal } = plane
  const right: Vec3 = Math.abs(normal[2]) < 0.9 ? cross([0, 0, 1], normal) : [1, 0, 0]
  const up = cross(normal, right)
  const reach = (d: Vec3): [number, number] => {
    const all = [0, 1, 2, 3, 4, 5, 6, 7].map((k) =>
      [0, 1, 2].reduce((sum, c) => sum + ((k >> c) & 1 ? max[c]! : min[c]!) * d[c]! - point[c]! * d[c]!, 0),
    )
    return [Math.min(...all) - over, Math.max(...all) + over]
  }
  const [u, v] = [reach(right), reach(up)]
  const at = (s: number, t: number) => along(along(point, right, s), up, t)
  return [at(u[0], v[0]), at(u[1], v[0]), at(u[1], v[1]), at(u[0], v[1])]
}
