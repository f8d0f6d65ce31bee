import { pointAt } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { add, cross, dot, negate, norm, scale, unit } from '../geometry/vec3.ts'
import type { HalfSpace } from '../kernel/kernel.ts'
import { FRAMES } from './frames.ts'
import { projectPoint } from './project.ts'
import { acrossAxis } from './propose/aligned.ts'
import type { PlannedSection } from './propose/plan.ts'
import type { CuttingPlane, Frame, View, ViewLine } from './view.ts'

/** Paper mm by which the cutting-plane line passes the outline, room for the arrows (common practice, no source). */
const CUTTING_PLANE_OVERRUN = 10

/** Where along a curve it is looked whether it lies on a line: a whole circle has its ends and its middle on its diameter. */
const STATIONS = [0, 0.25, 0.5, 0.75, 1]

/** What the section keeps. A half section takes one quarter out: below a level axis, right of an upright one. */
export function keptBy(
  section: PlannedSection,
  axis: Vec3 | undefined,
): { readonly planes: readonly HalfSpace[]; readonly keep: 'intersection' | 'union' } {
  const { toViewer } = FRAMES[section.side]
  const behind: HalfSpace = { point: section.point, normal: toViewer }
  if (section.extent === 'full') return { planes: [behind], keep: 'intersection' }
  return { planes: [behind, { point: section.point, normal: outsideHalf(section, axis) }], keep: 'union' }
}

/** Direction from the half that stays whole toward the half in section. */
export function outsideHalf(section: PlannedSection, axis: Vec3 | undefined): Vec3 {
  const frame = FRAMES[section.side]
  return isUpright(axis, frame) ? frame.right : negate(frame.up)
}

function isUpright(axis: Vec3 | undefined, frame: Frame): boolean {
  if (!axis) return true
  const [u, v] = projectPoint(axis, frame)
  return Math.abs(v) > Math.abs(u)
}

/** The line between the halves of a half section is the centre line: the cut's own border there is not drawn (ASME Y14.3, ISO 128-3). */
export function withoutDivision(
  lines: readonly ViewLine[],
  section: PlannedSection,
  axis: Vec3 | undefined,
  tolerance: number,
): ViewLine[] {
  if (section.extent === 'full') return [...lines]
  const frame = FRAMES[section.side]
  const at = projectPoint(section.point, frame)
  const k = isUpright(axis, frame) ? 0 : 1
  return lines.filter((l) => !STATIONS.every((t) => Math.abs(pointAt(l.curve, t)[k]! - at[k]!) <= tolerance))
}

/**
 * The cutting-plane line in the view that sees the plane edge-on: straight across the outline for a full section, with
 * a corner on the axis for a half section. `sight` is the way the section is looked at.
 */
export function cuttingPlaneIn(
  section: PlannedSection,
  parent: Frame,
  box: View['box'],
  axis: Vec3 | undefined,
): { readonly plane: CuttingPlane; readonly lines: readonly ViewLine[] } {
  if (section.aligned && axis) return alignedPlaneIn(section, section.aligned, parent, box, axis)
  const { toViewer } = FRAMES[section.side]
  const sight = projectPoint(negate(toViewer), parent)
  const u: Vec2 = [-sight[1], sight[0]]
  const c = projectPoint(section.point, parent)
  const corners: Vec2[] = [box.min, box.max, [box.min[0], box.max[1]], [box.max[0], box.min[1]]]
  const reach = (d: Vec2) => Math.max(...corners.map((p) => (p[0] - c[0]) * d[0] + (p[1] - c[1]) * d[1]))
  const end = (d: Vec2): Vec2 => [c[0] + reach(d) * d[0], c[1] + reach(d) * d[1]]
  const back: Vec2 = [-u[0], -u[1]]
  let path: readonly Vec2[] = [end(back), end(u)]
  if (section.extent === 'half') {
    const cutAway = projectPoint(outsideHalf(section, axis), parent)
    const toward: Vec2 = Math.abs(cutAway[0]) + Math.abs(cutAway[1]) < 1e-9 ? u : cutAway
    path = [end(toward), c, end([-sight[0], -sight[1]])]
  }
  return { plane: { letter: section.letter, path, sight }, lines: linesAlong(path) }
}

const linesAlong = (path: readonly Vec2[]) =>
  path.slice(1).map(
    (b, i): ViewLine => ({
      curve: { kind: 'line', a: path[i]!, b },
      kind: 'cutting plane',
      sources: [],
      overrun: [i === 0 ? CUTTING_PLANE_OVERRUN : 0, i === path.length - 2 ? CUTTING_PLANE_OVERRUN : 0],
    }),
  )

/** From the outline along one half to the axis, and on along the other; each end is looked at square to its half. */
function alignedPlaneIn(
  { letter, side, point }: PlannedSection,
  halves: readonly [Vec3, Vec3],
  parent: Frame,
  box: View['box'],
  axis: Vec3,
): { readonly plane: CuttingPlane; readonly lines: readonly ViewLine[] } {
  const first = acrossAxis(axis, side)
  const c = projectPoint(point, parent)
  // The outline is round about the axis.
  const reach = Math.max(box.max[0] - box.min[0], box.max[1] - box.min[1]) / 2
  const end = (half: Vec3): Vec2 => {
    const d = projectPoint(half, parent)
    return [c[0] + reach * d[0], c[1] + reach * d[1]]
  }
  const sense = dot(cross(axis, first), FRAMES[side].toViewer)
  const sightOf = (half: Vec3, sign: number) => projectPoint(unit(scale(cross(axis, half), -sense * sign)), parent)
  const straight = norm(add(halves[0], halves[1])) < 1e-9
  const path = straight ? [end(halves[0]), end(halves[1])] : [end(halves[0]), c, end(halves[1])]
  const [sight, farSight] = [sightOf(halves[0], 1), sightOf(halves[1], -1)]
  return { plane: { letter, path, sight, farSight }, lines: linesAlong(path) }
}
