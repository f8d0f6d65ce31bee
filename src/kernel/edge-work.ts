import type { TopoDS_Edge, TopoDS_Face, TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../geometry/vec.ts'
import { cross, dot, norm, sub } from '../geometry/vec3.ts'
import type { Curve3 } from './body.ts'
import { unwrapped } from './boolean.ts'
import { pointOnCurve } from './evaluate3.ts'
import { KernelError, type Occt, ShapeNumbers, subShapes } from './occt.ts'
import { readCurve } from './read-curve.ts'
import { readSurface } from './read-surface.ts'
import { type Own, scoped } from './scope.ts'

/** An edge to be worked: where it lies, as an unbounded line with limits, or as a whole circle. */
export type EdgePlace =
  | { readonly kind: 'line'; readonly a: Vec3; readonly b: Vec3 }
  | { readonly kind: 'circle'; readonly centre: Vec3; readonly axis: Vec3; readonly r: number }

export interface EdgeChamfer {
  readonly place: EdgePlace
  /** Set-back on the face that lies in this plane. */
  readonly first: { readonly back: number; readonly point: Vec3; readonly normal: Vec3 }
  /** Set-back on the other face. */
  readonly second: number
}

const NEAR = 1e-6

function lies(curve: Curve3, place: EdgePlace): boolean {
  if (place.kind === 'circle') {
    return (
      curve.kind === 'circle' &&
      Math.abs(curve.r - place.r) < NEAR &&
      norm(sub(curve.axes.origin, place.centre)) < NEAR &&
      norm(cross(curve.axes.z, place.axis)) < NEAR
    )
  }
  if (curve.kind !== 'line') return false
  const d = sub(place.b, place.a)
  const l = norm(d)
  return [0, 1].every((t) => {
    const v = sub(pointOnCurve(curve, t), place.a)
    const s = dot(v, d) / l
    return norm(cross(v, d)) / l < NEAR && s > -NEAR && s < l + NEAR
  })
}

/** Distinct edges of the solid that lie at each place; owned by the caller's scope. */
function edgesAt(oc: Occt, own: Own, solid: TopoDS_Shape, places: readonly EdgePlace[]): TopoDS_Edge[][] {
  const numbers = new ShapeNumbers(oc)
  const found: TopoDS_Edge[][] = places.map(() => [])
  for (const s of subShapes(oc, own, solid, 'TopAbs_EDGE')) {
    if (!numbers.numberOf(s).first) continue
    const edge = own(oc.TopoDS.Edge(s))
    if (oc.BRep_Tool.Degenerated(edge)) continue
    const curve = readCurve(oc, edge)
    places.forEach((place, i) => {
      if (lies(curve, place)) found[i]!.push(edge)
    })
  }
  return found
}

/** Rounds the edges (outside) or fills them (inside) with one radius; exact cylinders and tori where the kernel can. */
export function roundEdges(oc: Occt, solid: TopoDS_Shape, places: readonly EdgePlace[], r: number): TopoDS_Shape {
  return scoped((own) => {
    const maker = own(new oc.BRepFilletAPI_MakeFillet(solid, 'ChFi3d_Rational'))
    for (const edges of edgesAt(oc, own, solid, places)) {
      if (edges.length === 0) throw new KernelError('an edge to be rounded is not there')
      // an edge tangent to one already taken belongs to its contour
      for (const edge of edges) if (maker.Contour(edge) === 0) maker.Add(r, edge)
    }
    maker.Build(own(new oc.Message_ProgressRange()))
    if (!maker.IsDone()) throw new KernelError('the radius has no room')
    return unwrapped(oc, own(maker.Shape()))
  })
}

export function chamferEdges(oc: Occt, solid: TopoDS_Shape, work: readonly EdgeChamfer[]): TopoDS_Shape {
  return scoped((own) => {
    const maker = own(new oc.BRepFilletAPI_MakeChamfer(solid))
    const found = edgesAt(
      oc,
      own,
      solid,
      work.map((w) => w.place),
    )
    work.forEach((w, i) => {
      const edges = found[i]!
      if (edges.length === 0) throw new KernelError('an edge to be chamfered is not there')
      for (const edge of edges) {
        if (maker.Contour(edge) !== 0) continue
        maker.Add(w.first.back, w.second, edge, faceOf(oc, own, solid, edge, w.first))
      }
    })
    maker.Build(own(new oc.Message_ProgressRange()))
    if (!maker.IsDone()) throw new KernelError('the chamfer has no room')
    return unwrapped(oc, own(maker.Shape()))
  })
}

/** The face in the plane that has the edge in its border. */
function faceOf(
  oc: Occt,
  own: Own,
  solid: TopoDS_Shape,
  edge: TopoDS_Edge,
  plane: { readonly point: Vec3; readonly normal: Vec3 },
): TopoDS_Face {
  for (const s of subShapes(oc, own, solid, 'TopAbs_FACE')) {
    const face = own(oc.TopoDS.Face(s))
    const { surface } = readSurface(oc, face)
    if (surface.kind !== 'plane') continue
    if (norm(cross(surface.axes.z, plane.normal)) > NEAR) continue
    if (Math.abs(dot(sub(surface.axes.origin, plane.point), plane.normal)) > NEAR) continue
    if (subShapes(oc, own, face, 'TopAbs_EDGE').some((e) => e.IsSame(edge))) return face
  }
  throw new KernelError('the edge has no such face')
}
