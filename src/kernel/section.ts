import type { TopoDS_Shape } from 'replicad-opencascadejs'
import { cross, distance, dot, scale, sub } from '../geometry/vec3.ts'
import type { Body } from './body.ts'
import { combine } from './boolean.ts'
import type { Box3 } from './box3.ts'
import { squareTo } from './evaluate3.ts'
import type { HalfSpace } from './kernel.ts'
import type { Occt } from './occt.ts'
import { prism } from './profile.ts'
import { scoped } from './scope.ts'

/** Takes off what lies outside all half spaces' intersection or, for `union`, outside their union. */
export function cutOpen(
  oc: Occt,
  shape: TopoDS_Shape,
  box: Box3,
  planes: readonly HalfSpace[],
  keep: 'intersection' | 'union',
): TopoDS_Shape {
  return scoped((own) => {
    const outside = planes.map((plane) => own(outsideBlock(oc, box, plane)))
    if (keep === 'intersection' || outside.length < 2) return combine(oc, 'cut', shape, outside)
    const corner = outside.slice(1).reduce((all, next) => own(combine(oc, 'common', all, [next])), outside[0]!)
    return combine(oc, 'cut', shape, [corner])
  })
}

/** A block on the far side of the plane, large enough to swallow all of the box there. */
function outsideBlock(oc: Occt, box: Box3, plane: HalfSpace): TopoDS_Shape {
  const reach = 2 * distance(box.min, box.max) + 1
  const middle = scale([box.min[0] + box.max[0], box.min[1] + box.max[1], box.min[2] + box.max[2]], 0.5)
  const off = dot(sub(middle, plane.point), plane.normal)
  const right = squareTo(plane.normal)
  const origin = sub(middle, scale(plane.normal, off))
  const a = -reach
  const corners = [
    [a, a],
    [-a, a],
    [-a, -a],
    [a, -a],
  ] as const
  const outer = corners.map((p, i) => ({ kind: 'line' as const, a: p, b: corners[(i + 1) % 4]! }))
  const frame = { origin, right, up: cross(plane.normal, right) }
  return prism(oc, { outer, holes: [] }, frame, scale(plane.normal, reach))
}

/** Flags the faces made by the cutting planes. */
export function withCutFaces(body: Body, planes: readonly HalfSpace[]): Body {
  const faces = body.faces.map((face) => {
    if (face.surface.kind !== 'plane') return face
    const { origin, z } = face.surface.axes
    const side = face.reversed ? -1 : 1
    const made = planes.some(
      (p) => side * dot(z, p.normal) > 1 - 1e-12 && Math.abs(dot(sub(origin, p.point), p.normal)) < 1e-7,
    )
    return made ? { ...face, cut: true } : face
  })
  return { ...body, faces }
}
