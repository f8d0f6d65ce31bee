import { pointAt } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Datum } from '../../part/part.ts'
import { nearest } from '../conventions/nearest.ts'
import { projectPoint } from '../project.ts'
import type { Frame, View, ViewLine } from '../view.ts'

/**
 * The line of symmetry where a middle plane that the brief speaks of is seen edge-on and the view's outline really is
 * the same on both sides of it: a centre line must not claim a symmetry that is not there.
 */
export function middleLine(
  middle: Extract<Datum, { kind: 'middle' }>,
  outline: readonly ViewLine[],
  box: View['box'],
  frame: Frame,
  overrun: number,
  tolerance: number,
): ViewLine | undefined {
  if (Math.abs(dot(middle.normal, frame.toViewer)) > 1e-9) return undefined
  const n: Vec2 = [dot(middle.normal, frame.right), dot(middle.normal, frame.up)]
  const c = projectPoint(middle.point, frame)
  if (!isSymmetric(outline, c, n, tolerance)) return undefined
  const u: Vec2 = [-n[1], n[0]]
  const corners: Vec2[] = [box.min, box.max, [box.min[0], box.max[1]], [box.max[0], box.min[1]]]
  const along = corners.map((p) => (p[0] - c[0]) * u[0] + (p[1] - c[1]) * u[1])
  const at = (s: number): Vec2 => [c[0] + s * u[0], c[1] + s * u[1]]
  return {
    curve: { kind: 'line', a: at(Math.min(...along)), b: at(Math.max(...along)) },
    kind: 'centre',
    sources: [],
    overrun: [overrun, overrun],
  }
}

/** True where the mirror image of every visible and hidden line lies on lines of the same kind. */
export function isSymmetric(lines: readonly ViewLine[], c: Vec2, n: Vec2, tolerance: number): boolean {
  const drawn = lines.filter((l) => l.kind === 'visible' || l.kind === 'hidden')
  return drawn.every((line) =>
    [0, 0.29, 0.61, 1].every((t) => {
      const p = pointAt(line.curve, t)
      const off = 2 * ((p[0] - c[0]) * n[0] + (p[1] - c[1]) * n[1])
      const image: Vec2 = [p[0] - off * n[0], p[1] - off * n[1]]
      return drawn.some((l) => l.kind === line.kind && nearest(l.curve, image).distance <= 10 * tolerance)
    }),
  )
}
