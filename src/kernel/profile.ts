import type { TopoDS_Edge, TopoDS_Face, TopoDS_Shape, TopoDS_Wire } from 'replicad-opencascadejs'
import type { Curve2 } from '../geometry/curve2.ts'
import { endOf, pointAt, startOf } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { along, cross } from '../geometry/vec3.ts'
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

function loopWire(oc: Occt, own: Own, loop: Loop, plane: ProfilePlane, reversed: boolean): TopoDS_Wire {
  const maker = own(new oc.BRepBuilderAPI_MakeWire())
  for (const curve of loop) {
    const edge = loopEdge(oc, own, curve, plane)
    maker.Add(edge)
    if (!maker.IsDone()) throw new KernelError('the profile does not close')
  }
  const wire = own(maker.Wire())
  return reversed ? own(oc.TopoDS.Wire(own(wire.Reversed()))) : wire
}

function loopEdge(oc: Occt, own: Own, curve: Curve2, plane: ProfilePlane): TopoDS_Edge {
  const normal = cross(plane.right, plane.up)
  const made = (() => {
    switch (curve.kind) {
      case 'line':
        return new oc.BRepBuilderAPI_MakeEdge(
          pnt(oc, own, inPlane(plane, curve.a)),
          pnt(oc, own, inPlane(plane, curve.b)),
        )
      case 'arc': {
        // a clockwise arc runs forward on the circle seen from behind
        const forward = curve.sweep >= 0
        const at = ax2(oc, own, inPlane(plane, curve.c), forward ? normal : scaled(normal), plane.right)
        const circle = own(new oc.gp_Circ(at, curve.r))
        if (Math.abs(Math.abs(curve.sweep) - 2 * Math.PI) < 1e-12) return new oc.BRepBuilderAPI_MakeEdge(circle)
        const from = forward ? curve.from : -curve.from
        return new oc.BRepBuilderAPI_MakeEdge(circle, from, from + Math.abs(curve.sweep))
      }
      default:
        throw new KernelError('profiles are made of lines and arcs')
    }
  })()
  own(made)
  if (!made.IsDone()) throw new KernelError('a profile edge has no length')
  return own(made.Edge())
}

const scaled = (v: Vec3): Vec3 => [-v[0], -v[1], -v[2]]

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
