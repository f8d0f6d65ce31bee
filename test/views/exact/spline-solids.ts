import type { TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import { ax2, pnt, subShapes } from '../../../src/kernel/occt.ts'
import type { OcctKernel } from '../../../src/kernel/open.ts'
import { type Own, scoped } from '../../../src/kernel/scope.ts'
import { shapes } from '../../../src/kernel/shapes.ts'

/** A section of a loft: a closed outline with straight sides, or a circle or ellipse square to z. */
export type Section =
  | { readonly corners: readonly Vec3[] }
  | { readonly centre: Vec3; readonly major: number; readonly minor: number }

/** Solid through sections, straight from one to the next or in one sweep; its walls are spline surfaces. */
export function loft(kernel: OcctKernel, sections: readonly Section[], straight: boolean): SolidKey {
  const { oc } = kernel
  return kernel.keep(
    scoped((own) => {
      const maker = own(new oc.BRepOffsetAPI_ThruSections(true, straight, 1e-6))
      for (const s of sections) maker.AddWire(own(wire(kernel, own, s)))
      maker.Build(own(new oc.Message_ProgressRange()))
      return maker.Shape()
    }),
  )
}

function wire({ oc }: OcctKernel, own: Own, s: Section) {
  const maker = own(new oc.BRepBuilderAPI_MakeWire())
  if ('corners' in s) {
    s.corners.forEach((a, i) => {
      const b = s.corners[(i + 1) % s.corners.length]!
      maker.Add(own(own(new oc.BRepBuilderAPI_MakeEdge(pnt(oc, own, a), pnt(oc, own, b))).Edge()))
    })
  } else {
    const place = ax2(oc, own, s.centre, [0, 0, 1], [1, 0, 0])
    const edge =
      s.major === s.minor
        ? new oc.BRepBuilderAPI_MakeEdge(own(new oc.gp_Circ(place, s.major)))
        : new oc.BRepBuilderAPI_MakeEdge(own(new oc.gp_Elips(place, s.major, s.minor)))
    maker.Add(own(own(edge).Edge()))
  }
  return maker.Wire()
}

/** A block with one edge along y rounded by a radius that grows evenly from one end to the other. */
export function growingRound(kernel: OcctKernel, size: Vec3, from: number, to: number): SolidKey {
  const { oc } = kernel
  const block = shapes(kernel).box([0, 0, 0], size)
  return kernel.keep(
    scoped((own): TopoDS_Shape => {
      const shape = kernel.shapeOf(block)
      const maker = own(new oc.BRepFilletAPI_MakeFillet(shape, 'ChFi3d_Rational'))
      const edge = subShapes(oc, own, shape, 'TopAbs_EDGE').find((s) => {
        const curve = own(new oc.BRepAdaptor_Curve(own(oc.TopoDS.Edge(s))))
        return [curve.FirstParameter(), curve.LastParameter()].every((t) => {
          const p = own(curve.Value(t))
          return Math.abs(p.X() - size[0]) < 1e-9 && Math.abs(p.Z() - size[2]) < 1e-9
        })
      })
      maker.Add(from, to, own(oc.TopoDS.Edge(edge!)))
      maker.Build(own(new oc.Message_ProgressRange()))
      return maker.Shape()
    }),
  )
}
