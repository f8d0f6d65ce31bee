import type { HLRBRep_HLRToShape, TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../geometry/vec.ts'
import type { Curve3 } from './body.ts'
import type { SolidKey } from './kernel.ts'
import { ax2, guarded, type Occt, subShapes } from './occt.ts'
import type { OcctKernel } from './open.ts'
import { readCurve } from './read-curve.ts'
import { scoped } from './scope.ts'

/** A drawn piece as the kernel's own hidden-line algorithm finds it, in the plane z = 0: x to the right, y up. */
export interface KernelLine {
  readonly curve: Curve3
  readonly visible: boolean
  readonly kind: 'edge' | 'silhouette' | 'smooth'
}

/**
 * Runs the kernel's exact hidden-line algorithm on a solid, the eye far out along `toViewer`. Seams are left out.
 * @throws KernelError where the algorithm refuses the solid.
 */
export function kernelHiddenLines(kernel: OcctKernel, solid: SolidKey, right: Vec3, toViewer: Vec3): KernelLine[] {
  const { oc } = kernel
  return guarded(oc, 'hidden lines', () =>
    scoped((own) => {
      // Without this the results of booleans carry no word on which edges are smooth. It changes marks, not geometry.
      oc.BRepLib.EncodeRegularity(kernel.shapeOf(solid), SMOOTH)
      const algorithm = own(new oc.HLRBRep_Algo())
      algorithm.Add(kernel.shapeOf(solid), 0)
      algorithm.Projector(own(new oc.HLRAlgo_Projector(ax2(oc, own, [0, 0, 0], toViewer, right))))
      algorithm.Update()
      algorithm.Hide()
      const result = own(new oc.HLRBRep_HLRToShape(algorithm))
      return KINDS.flatMap(({ kind, visible, of }) =>
        piecesOf(oc, of(result)).map((curve): KernelLine => ({ curve, visible, kind })),
      )
    }),
  )
}

/** Radians between tangent planes that count as none. */
const SMOOTH = 1e-4

const KINDS: readonly {
  readonly kind: KernelLine['kind']
  readonly visible: boolean
  readonly of: (result: HLRBRep_HLRToShape) => TopoDS_Shape
}[] = [
  { kind: 'edge', visible: true, of: (r) => r.VCompound() },
  { kind: 'edge', visible: false, of: (r) => r.HCompound() },
  { kind: 'silhouette', visible: true, of: (r) => r.OutLineVCompound() },
  { kind: 'silhouette', visible: false, of: (r) => r.OutLineHCompound() },
  { kind: 'smooth', visible: true, of: (r) => r.Rg1LineVCompound() },
  { kind: 'smooth', visible: false, of: (r) => r.Rg1LineHCompound() },
]

function piecesOf(oc: Occt, compound: TopoDS_Shape): Curve3[] {
  return scoped((own) => {
    own(compound)
    if (compound.IsNull()) return []
    oc.BRepLib.BuildCurves3d(compound)
    return subShapes(oc, own, compound, 'TopAbs_EDGE').map((s) => readCurve(oc, own(oc.TopoDS.Edge(s))))
  })
}
