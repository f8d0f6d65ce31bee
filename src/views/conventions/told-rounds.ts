import { sweepParameter } from '../../geometry/evaluate.ts'
import { along, cross, dot, norm, sub, unit } from '../../geometry/vec3.ts'
import type { BodyEdge, Curve3 } from '../../kernel/body.ts'
import { projectPoint } from '../project.ts'
import type { Source } from '../view.ts'
import type { CutBySection, Showing, ShownView } from './showing.ts'

type Circle = Extract<Curve3, { kind: 'circle' }>

/**
 * Says of a circular edge, or of a face of revolution, whether a section shows its radius and its ends and the sheet
 * tells where its axis is: then a hidden line of it adds nothing to `view`. What crosses the face on its way, a hole or a
 * keyseat, has lines of its own; the edge in which two such faces meet is told with them.
 */
export function roundsToldBySection(view: ShownView, showing: Showing, tolerance: number): (source: Source) => boolean {
  const { body, sections } = showing
  if (sections.length === 0) return () => false
  const siblings = (edge: BodyEdge): readonly BodyEdge[] => {
    const patterned = showing.features.filter((f) => f.members.length > 1)
    const home = patterned.find((f) => f.members.some((m) => m.faces.some((id) => edge.faces.includes(id))))
    const faces = new Set(home?.members.flatMap((m) => m.faces) ?? [])
    return body.edges.filter((e) => e.faces.some((id) => id !== undefined && faces.has(id)))
  }
  const told = (edge: BodyEdge): boolean => {
    const circle = edge.curve
    if (circle.kind !== 'circle') return edge.faces.every((id) => id !== undefined && faceTold(id))
    if (!isPlaced(circle, view, showing, tolerance)) return false
    if (sections.some((s) => isCut(circle, s))) return true
    return siblings(edge).some(
      (e) => e.curve.kind === 'circle' && isAlike(e.curve, circle) && sections.some((s) => isCut(e.curve as Circle, s)),
    )
  }
  const known = new Map<number, boolean>()
  const edgeTold = (id: number): boolean => {
    const answer = known.get(id) ?? told(body.edges[id]!)
    known.set(id, answer)
    return answer
  }
  const faceTold = (id: number): boolean => {
    const face = body.faces[id]
    if (face?.surface.kind !== 'cylinder' && face?.surface.kind !== 'cone' && face?.surface.kind !== 'torus')
      return false
    const ends = face.loops
      .flat()
      .map((use) => body.edges[use.edge]!)
      .filter((edge) => !edge.seam && edge.curve.kind === 'circle')
    return ends.length > 0 && ends.every((edge) => edgeTold(edge.id))
  }
  return (source) =>
    source.edge !== undefined ? edgeTold(source.edge) : source.faces.length > 0 && source.faces.every(faceTold)
}

/** True where the circle's axis lies in the cutting plane and one of its two points in that plane is on the cut half. */
function isCut(circle: Circle, section: CutBySection): boolean {
  const { origin, x, y, z } = circle.axes
  if (Math.abs(dot(z, section.normal)) > 1e-9 || Math.abs(dot(sub(origin, section.point), section.normal)) > 1e-6)
    return false
  const u = unit(cross(z, section.normal))
  return [u, along([0, 0, 0], u, -1)].some((d) => {
    if (sweepParameter(circle.from, circle.sweep, Math.atan2(dot(d, y), dot(d, x))) === undefined) return false
    if (!section.cutHalf) return true
    return dot(sub(along(origin, d, circle.r), section.point), section.cutHalf) >= -1e-6
  })
}

/** One radius, one direction and one place along it: what members of a pattern have in common. */
function isAlike(a: Circle, b: Circle): boolean {
  return (
    Math.abs(a.r - b.r) < 1e-6 &&
    norm(cross(a.axes.z, b.axes.z)) < 1e-9 &&
    Math.abs(dot(sub(a.axes.origin, b.axes.origin), a.axes.z)) < 1e-6
  )
}

/**
 * True where the sheet tells the place of the circle's axis without this hidden line: by a visible circle about it in a
 * view along the axis; or, in a view from the side, by being the part's own axis.
 */
function isPlaced(circle: Circle, view: ShownView, showing: Showing, tolerance: number): boolean {
  const { origin, z } = circle.axes
  const isEndOn = (v: ShownView) => Math.abs(dot(z, v.frame.toViewer)) > 1 - 1e-9
  const { axis } = showing
  const own =
    axis !== undefined && norm(cross(axis.direction, z)) < 1e-9 && norm(cross(sub(origin, axis.point), z)) < 1e-6
  if (own && !isEndOn(view)) return true
  return showing.principals.some((v) => {
    if (!isEndOn(v)) return false
    const c = projectPoint(origin, v.frame)
    return v.lines.some(
      (l) =>
        l.kind === 'visible' &&
        l.curve.kind === 'arc' &&
        Math.hypot(l.curve.c[0] - c[0], l.curve.c[1] - c[1]) <= 10 * tolerance,
    )
  })
}
