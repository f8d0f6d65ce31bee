import type { SolidKey } from './kernel.ts'
import { guarded, subShapes } from './occt.ts'
import type { OcctKernel } from './open.ts'
import { scoped } from './scope.ts'

/** Triangles of a solid for looking at; no size is ever taken from them. */
export interface Mesh {
  /** Nine numbers a triangle: three corners in mm, outside seen counter-clockwise. */
  readonly corners: Float32Array
  /** The body's face id of each triangle. */
  readonly faces: Int32Array
}

/** Triangles of every face, no further than `sag` (mm) from it and bent no more than `bend` (radians) between them. */
export function meshOf(kernel: OcctKernel, solid: SolidKey, sag: number, bend = 0.2): Mesh {
  const { oc } = kernel
  return guarded(oc, 'meshing the solid', () =>
    scoped((own) => {
      const shape = kernel.shapeOf(solid)
      own(new oc.BRepMesh_IncrementalMesh(shape, sag, false, bend, false))
      const corners: number[] = []
      const faces: number[] = []
      subShapes(oc, own, shape, 'TopAbs_FACE').forEach((sub, id) => {
        const face = own(oc.TopoDS.Face(sub))
        const location = own(new oc.TopLoc_Location())
        const net = oc.BRep_Tool.Triangulation(face, location, 0)
        if (!net) return
        own(net)
        const place = own(location.Transformation())
        const turned = face.Orientation() === 'TopAbs_REVERSED'
        for (let i = 1; i <= net.NbTriangles(); i++) {
          const triangle = own(net.Triangle(i))
          for (const k of turned ? [1, 3, 2] : [1, 2, 3]) {
            const p = own(own(net.Node(triangle.Value(k))).Transformed(place))
            corners.push(p.X(), p.Y(), p.Z())
          }
          faces.push(id)
        }
      })
      return { corners: Float32Array.from(corners), faces: Int32Array.from(faces) }
    }),
  )
}
