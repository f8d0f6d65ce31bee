import type { TopoDS_Edge, TopoDS_Face, TopoDS_Shape, TopoDS_Vertex, TopoDS_Wire } from 'replicad-opencascadejs'
import type { Arc2, Curve2 } from '../geometry/curve2.ts'
import { endOf, pointAt, startOf } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { along, cross, negate } from '../geometry/vec3.ts'
import { unwrapped } from './boolean.ts'
import { ax1, ax2, dir, KernelError, type Occt, pnt, vec } from './occt.ts'
import { type Own, scoped } from './scope.ts'

/** A plane with directions for the two profile coordinates; right × up is its normal. */
export interface ProfilePlane {
  readonly origin: Vec3
  readonly right: Vec3
  readonly up: Vec3
}

/** A closed loop of curves, head to tail. */
export type Loop = readonly Curve2[]

/** A region of the profile plane: outer loop counter-clockwise, holes in any direction. */
export interface Region {
  readonly outer: Loop
  readonly holes: readonly Loop[]
}

export const inPlane = (plane: ProfilePlane, p: Vec2): Vec3 =>
  along(along(plane.origin, plane.right, p[0]), plane.up, p[1])

/** The region moved along `by`: walls from its loops, ends from itself. */
export function prism(oc: Occt, region: Region, plane: ProfilePlane, by: Vec3): TopoDS_Shape {
  return scoped((own) => {
    const face = own(regionFace(oc, region, plane))
    const sweep = own(new oc.BRepPrimAPI_MakePrism(face, vec(oc, own, by), false, true))
    if (!sweep.IsDone()) throw new KernelError('the profile could not be thickened')
    return unwrapped(oc, own(sweep.Shape()))
  })
}

/** The region turned a whole turn about an axis in its plane. */
export function revolve(oc: Occt, region: Region, plane: ProfilePlane, origin: Vec3, axis: Vec3): TopoDS_Shape {
  return scoped((own) => {
    const face = own(regionFace(oc, region, plane))
    const sweep = own(new oc.BRepPrimAPI_MakeRevol(face, ax1(oc, own, origin, axis), false))
    if (!sweep.IsDone()) throw new KernelError('the profile could not be turned')
    return unwrapped(oc, own(sweep.Shape()))
  })
}

function regionFace(oc: Occt, region: Region, plane: ProfilePlane): TopoDS_Face {
  return scoped((own) => {
    const normal = cross(plane.right, plane.up)
    const pln = own(new oc.gp_Pln(pnt(oc, own, plane.origin), dir(oc, own, normal)))
    const outer = loopWire(oc, own, region.outer, plane, signedArea(region.outer) < 0)
    const maker = own(new oc.BRepBuilderAPI_MakeFace(pln, outer, true))
    for (const hole of region.holes) {
      maker.Add(loopWire(oc, own, hole, plane, signedArea(hole) > 0))
    }
    if (!maker.IsDone()) throw new KernelError('the profile does not bound a face')
    return maker.Face()
  })
}

/**
 * The loop's wire, its edges sharing vertices head to tail. Put together by hand: the kernel's own wire maker keeps
 * about 1.5 kB of every wire for ever.
 */
function loopWire(oc: Occt, own: Own, loop: Loop, plane: ProfilePlane, reversed: boolean): TopoDS_Wire {
  const builder = own(new oc.TopoDS_Builder())
  const wire = own(new oc.TopoDS_Wire())
  builder.MakeWire(wire)
  const [only] = loop
  if (loop.length === 1 && only?.kind === 'arc') {
    builder.Add(wire, finished(own, own(new oc.BRepBuilderAPI_MakeEdge(circleOf(oc, own, only, plane)))))
  } else {
    const corners = loop.map((c) => vertex(oc, own, inPlane(plane, startOf(c))))
    loop.forEach((curve, i) => {
      const next = loop[(i + 1) % loop.length]!
      const [end, start] = [endOf(curve), startOf(next)]
      if (Math.hypot(end[0] - start[0], end[1] - start[1]) > GAP) throw new KernelError('the profile does not close')
      builder.Add(wire, loopEdge(oc, own, curve, plane, corners[i]!, corners[(i + 1) % corners.length]!))
    })
  }
  wire.Closed(true)
  return reversed ? own(oc.TopoDS.Wire(own(wire.Reversed()))) : wire
}

/** Largest gap (mm) between the end of one curve and the start of the next: the kernel's own tolerance. */
const GAP = 1e-7

function vertex(oc: Occt, own: Own, p: Vec3): TopoDS_Vertex {
  return own(own(new oc.BRepBuilderAPI_MakeVertex(pnt(oc, own, p))).Vertex())
}

type EdgeMaker = InstanceType<Occt['BRepBuilderAPI_MakeEdge']>

function finished(own: Own, made: EdgeMaker): TopoDS_Edge {
  if (!made.IsDone()) throw new KernelError('a profile edge has no length')
  return own(made.Edge())
}

/** The circle an arc lies on, with its axis such that the arc runs forward. */
function circleOf(oc: Occt, own: Own, arc: Arc2, plane: ProfilePlane) {
  const normal = cross(plane.right, plane.up)
  const at = ax2(oc, own, inPlane(plane, arc.c), arc.sweep >= 0 ? normal : negate(normal), plane.right)
  return own(new oc.gp_Circ(at, arc.r))
}

function loopEdge(
  oc: Occt,
  own: Own,
  curve: Curve2,
  plane: ProfilePlane,
  from: TopoDS_Vertex,
  to: TopoDS_Vertex,
): TopoDS_Edge {
  switch (curve.kind) {
    case 'line':
      return finished(own, own(new oc.BRepBuilderAPI_MakeEdge(from, to)))
    case 'arc':
      return finished(own, own(new oc.BRepBuilderAPI_MakeEdge(circleOf(oc, own, curve, plane), from, to)))
    default:
      throw new KernelError('profiles are made of lines and arcs')
  }
}

/** Area inside the loop, positive when it runs counter-clockwise. Exact for lines and arcs. */
export function signedArea(loop: Loop): number {
  let sum = 0
  for (const c of loop) {
    const [a, b] = [startOf(c), endOf(c)]
    sum += (a[0] * b[1] - b[0] * a[1]) / 2
    if (c.kind === 'arc') sum += (c.r * c.r * (c.sweep - Math.sin(c.sweep))) / 2
    else if (c.kind !== 'line') {
      const m = pointAt(c, 0.5)
      sum += ((m[0] - a[0]) * (b[1] - a[1]) - (b[0] - a[0]) * (m[1] - a[1])) / 2
    }
  }
  return sum
}
