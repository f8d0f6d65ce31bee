import type { Body, BodyEdge, BodyFace } from '../../kernel/body.ts'
import { recognisedCurve } from './recognise-curve.ts'
import { edgeBetween } from './recognise-edge.ts'
import { recognisedSurface } from './recognise-surface.ts'

/**
 * The same body with splines replaced by the lines, circles, planes, cylinders, cones, spheres and tori that they are
 * in truth: files from elsewhere often hold nothing but splines. `tolerance` (mm) is what a spline may differ by;
 * `near` what a spline may stray from the exact curve in which its two faces meet. `step` is called for each face and edge.
 */
export function recognised(body: Body, tolerance: number, near: number, step = () => {}): Body {
  const splines =
    body.edges.some((e) => e.curve.kind === 'spline') || body.faces.some((f) => f.surface.kind === 'spline')
  if (!splines) return body
  const faces = body.faces.map((f): BodyFace => {
    step()
    if (f.surface.kind !== 'spline') return f
    const found = recognisedSurface(f.surface, tolerance)
    return found ? { ...f, surface: found.surface, reversed: f.reversed !== found.opposite } : f
  })
  const surfaceOf = new Map(faces.map((f) => [f.id, f.surface]))
  const edges = body.edges.map((e): BodyEdge => {
    step()
    const curve = recognisedCurve(e.curve, tolerance)
    if (curve !== e.curve || curve.kind !== 'spline') return { ...e, curve }
    const [f, g] = e.faces.map((id) => (id === undefined ? undefined : surfaceOf.get(id)))
    const exact = f && g && !e.seam && edgeBetween(curve, f, g, near)
    return exact ? { ...e, curve: exact } : e
  })
  return { ...body, edges, faces }
}
