import type { TopoDS_Shape } from 'replicad-opencascadejs'
import { KernelError, type Occt, subShapes } from './occt.ts'
import { scoped } from './scope.ts'

/**
 * `cut`: first less all tools; `fuse`: all together; `common`: what first shares with all tools together; `glue`: a
 * fuse of solids that touch in whole faces and nowhere else.
 */
export type BooleanKind = 'cut' | 'fuse' | 'common' | 'glue'

/** One batched boolean over all tools. The result is a single solid where it is one, else a compound. */
export function combine(
  oc: Occt,
  kind: BooleanKind,
  first: TopoDS_Shape,
  tools: readonly TopoDS_Shape[],
): TopoDS_Shape {
  return scoped((own) => {
    const { BRepAlgoAPI_Cut, BRepAlgoAPI_Fuse, BRepAlgoAPI_Common } = oc
    const make = { cut: BRepAlgoAPI_Cut, fuse: BRepAlgoAPI_Fuse, glue: BRepAlgoAPI_Fuse, common: BRepAlgoAPI_Common }
    const algorithm = own(new make[kind]())
    try {
      const firsts = own(new oc.NCollection_List_TopoDS_Shape())
      own(firsts.Append(first))
      const others = own(new oc.NCollection_List_TopoDS_Shape())
      for (const tool of tools) own(others.Append(tool))
      algorithm.SetArguments(firsts)
      algorithm.SetTools(others)
      algorithm.SetToFillHistory(false)
      if (kind === 'glue') algorithm.SetGlue('BOPAlgo_GlueFull')
      algorithm.Build(own(new oc.Message_ProgressRange()))
      if (algorithm.HasErrors() || !algorithm.IsDone()) throw new KernelError(`the ${kind} failed`)
      return unwrapped(oc, own(algorithm.Shape()))
    } finally {
      // delete() alone leaves the algorithm's whole data structure behind
      algorithm.Clear()
    }
  })
}

/** The solid itself where the shape holds exactly one; a new reference either way. */
export function unwrapped(oc: Occt, shape: TopoDS_Shape): TopoDS_Shape {
  return scoped((own) => {
    const solids = subShapes(oc, own, shape, 'TopAbs_SOLID')
    const only = solids.length === 1 ? solids[0]! : shape
    return only.Oriented(only.Orientation())
  })
}

/** Merges faces that lie on one surface and edges that lie on one curve. */
export function unified(oc: Occt, shape: TopoDS_Shape): TopoDS_Shape {
  return scoped((own) => {
    const upgrade = own(new oc.ShapeUpgrade_UnifySameDomain(shape, true, true, false))
    upgrade.Build()
    return unwrapped(oc, own(upgrade.Shape()))
  })
}

/** How many separate solids the shape holds. */
export function countSolids(oc: Occt, shape: TopoDS_Shape): number {
  return scoped((own) => subShapes(oc, own, shape, 'TopAbs_SOLID').length)
}
