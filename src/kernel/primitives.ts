import type { TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../geometry/vec.ts'
import { squareTo } from './evaluate3.ts'
import { ax1, ax2, KernelError, type Occt, pnt, vec } from './occt.ts'
import { type ProfilePlane, revolve } from './profile.ts'
import { scoped } from './scope.ts'

/** Box between two opposite corners. */
export function box(oc: Occt, min: Vec3, max: Vec3): TopoDS_Shape {
  return scoped((own) => own(new oc.BRepPrimAPI_MakeBox(pnt(oc, own, min), pnt(oc, own, max))).Shape())
}

/** Cylinder from its base centre along the unit vector `axis`. */
export function cylinder(oc: Occt, base: Vec3, axis: Vec3, radius: number, height: number): TopoDS_Shape {
  return scoped((own) => own(new oc.BRepPrimAPI_MakeCylinder(ax2(oc, own, base, axis), radius, height)).Shape())
}

export function sphere(oc: Occt, centre: Vec3, radius: number): TopoDS_Shape {
  return scoped((own) => own(new oc.BRepPrimAPI_MakeSphere(pnt(oc, own, centre), radius)).Shape())
}

export function torus(oc: Occt, centre: Vec3, axis: Vec3, major: number, minor: number): TopoDS_Shape {
  return scoped((own) => own(new oc.BRepPrimAPI_MakeTorus(ax2(oc, own, centre, axis), major, minor)).Shape())
}

/** One station of a turned shape: height along the axis and radius there. */
export type Station = readonly [height: number, radius: number]

/**
 * Solid of revolution with straight generators through the stations, closed along the axis.
 * Needs at least two different heights.
 */
export function turned(oc: Occt, base: Vec3, axis: Vec3, stations: readonly Station[]): TopoDS_Shape {
  const plane: ProfilePlane = { origin: base, right: squareTo(axis), up: axis }
  const points: [number, number][] = stations.map(([h, r]) => [r, h])
  const first = points[0]
  const last = points[points.length - 1]
  if (!first || !last) throw new KernelError('a turned shape needs stations')
  if (first[0] > 0) points.unshift([0, first[1]])
  if (last[0] > 0) points.push([0, last[1]])
  const outer = points.map((p, i) => ({ kind: 'line' as const, a: p, b: points[(i + 1) % points.length]! }))
  return revolve(oc, { outer, holes: [] }, plane, base, axis)
}

/** Frustum or, with one radius 0, a whole cone. */
export function cone(
  oc: Occt,
  base: Vec3,
  axis: Vec3,
  radius: number,
  endRadius: number,
  height: number,
): TopoDS_Shape {
  return turned(oc, base, axis, [
    [0, radius],
    [height, endRadius],
  ])
}

export function translated(oc: Occt, shape: TopoDS_Shape, by: Vec3): TopoDS_Shape {
  return scoped((own) => {
    const move = own(new oc.gp_Trsf())
    move.SetTranslation(vec(oc, own, by))
    return own(new oc.BRepBuilderAPI_Transform(shape, move, true, false)).Shape()
  })
}

/** Turned about an axis by degrees, right-handed. */
export function rotated(oc: Occt, shape: TopoDS_Shape, origin: Vec3, axis: Vec3, degrees: number): TopoDS_Shape {
  return scoped((own) => {
    const turn = own(new oc.gp_Trsf())
    turn.SetRotation(ax1(oc, own, origin, axis), (degrees * Math.PI) / 180)
    return own(new oc.BRepBuilderAPI_Transform(shape, turn, true, false)).Shape()
  })
}
