import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { along, cross, dot, norm } from '../../geometry/vec3.ts'
import type { Body, BodyFace } from '../../kernel/body.ts'
import { projectPoint } from '../project.ts'
import type { ExactView, View, ViewLine } from '../view.ts'
import { nearest } from './nearest.ts'

/** Paper mm by which a theoretical intersection stays clear of the outline (no figure in ISO 128-3; common practice). */
const CLEAR = 2

/** A view whose visible lines all lie on its bounding rectangle says nothing of the rounding between its faces. */
export function isBlank(lines: readonly ViewLine[], box: View['box'], tolerance: number): boolean {
  const { min, max } = box
  const corners: Vec2[] = [min, [max[0], min[1]], max, [min[0], max[1]]]
  const sides = corners.map((a, i) => ({ kind: 'line' as const, a, b: corners[(i + 1) % 4]! }))
  return lines.every(
    (l) =>
      l.kind !== 'visible' ||
      (l.curve.kind === 'line' &&
        sides.some((s) =>
          [l.curve.kind === 'line' ? l.curve.a : min, l.curve.kind === 'line' ? l.curve.b : max].every(
            (p) => nearest(s, p).distance <= tolerance,
          ),
        )),
  )
}

/**
 * Thin lines where the flat faces on both sides of a rounded edge would meet, clear of the outline (ISO 128-3; from
 * memory). Only for rounds that the viewer sees and that lie across the line of sight.
 */
export function theoreticalIntersections(body: Body, view: ExactView): ViewLine[] {
  const seen = new Set(
    view.curves.filter((c) => c.visible && c.kind === 'smooth').flatMap((c) => c.sources.flatMap((s) => s.faces)),
  )
  return body.faces.flatMap((face): ViewLine[] => {
    if (face.surface.kind !== 'cylinder' || !seen.has(face.id)) return []
    const axis = face.surface.axes.z
    if (Math.abs(dot(axis, view.frame.toViewer)) > 1e-9) return []
    const straight = face.loops
      .flat()
      .map((use) => body.edges[use.edge]!)
      .filter((e) => e.smooth && !e.seam && e.curve.kind === 'line')
    const planes = straight.flatMap((e) => {
      const other = body.faces[e.faces[0] === face.id ? (e.faces[1] ?? -1) : e.faces[0]]
      return other?.surface.kind === 'plane' ? [other] : []
    })
    const [p, q] = planes
    if (!p || !q || straight.length !== 2) return []
    const at = meeting(p, q, axis)
    if (!at) return []
    const reach = straight.flatMap((e) => (e.curve.kind === 'line' ? [dot(e.curve.a, axis), dot(e.curve.b, axis)] : []))
    const end = (s: number) => projectPoint(along(at, axis, s - dot(at, axis)), view.frame)
    return [
      {
        curve: { kind: 'line', a: end(Math.min(...reach)), b: end(Math.max(...reach)) },
        kind: 'intersection',
        sources: [{ faces: [face.id] }],
        overrun: [-CLEAR, -CLEAR],
      },
    ]
  })
}

/** A point where two planes meet, both along `axis`. */
function meeting(p: BodyFace, q: BodyFace, axis: Vec3): Vec3 | undefined {
  if (p.surface.kind !== 'plane' || q.surface.kind !== 'plane') return undefined
  const m = p.surface.axes.z
  const n = q.surface.axes.z
  const d = dot(cross(m, n), axis)
  if (norm(cross(m, n)) < 1e-9 || Math.abs(d) < 1e-9) return undefined
  const a = dot(p.surface.axes.origin, m)
  const b = dot(q.surface.axes.origin, n)
  // Cramer's rule for m·x = a, n·x = b, axis·x = 0.
  const sum = along(along([0, 0, 0], cross(n, axis), a), cross(axis, m), b)
  return [sum[0] / d, sum[1] / d, sum[2] / d]
}
