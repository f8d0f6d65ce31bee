import type { TopoDS_Edge } from 'replicad-opencascadejs'
import type { Curve3 } from './body.ts'
import { type Occt, takeRightHanded, takeVec } from './occt.ts'
import { sequence } from './read-surface.ts'
import { scoped } from './scope.ts'

/** Reads an edge's exact curve over its own range, directed as the kernel's curve is. */
export function readCurve(oc: Occt, edge: TopoDS_Edge): Curve3 {
  return scoped((own) => {
    const adaptor = own(new oc.BRepAdaptor_Curve(edge))
    const from = adaptor.FirstParameter()
    const to = adaptor.LastParameter()
    switch (adaptor.GetType()) {
      case 'GeomAbs_Line':
        return { kind: 'line', a: takeVec(adaptor.Value(from)), b: takeVec(adaptor.Value(to)) }
      case 'GeomAbs_Circle': {
        const circle = own(adaptor.Circle())
        return { kind: 'circle', axes: takeRightHanded(circle.Position()), r: circle.Radius(), from, sweep: to - from }
      }
      case 'GeomAbs_Ellipse': {
        const ellipse = own(adaptor.Ellipse())
        return {
          kind: 'ellipse',
          axes: takeRightHanded(ellipse.Position()),
          major: ellipse.MajorRadius(),
          minor: ellipse.MinorRadius(),
          from,
          sweep: to - from,
        }
      }
      default:
        return readSplineCurve(oc, edge)
    }
  })
}

function readSplineCurve(oc: Occt, edge: TopoDS_Edge): Curve3 {
  return scoped((own) => {
    const found = oc.BRep_Tool.Curve(edge, 0, 0)
    const basis = own(found.returnValue)
    const trimmed = own(new oc.Geom_TrimmedCurve(basis, found.First, found.Last, true, true))
    const s = own(oc.GeomConvert.CurveToBSplineCurve(trimmed))
    if (s.IsPeriodic()) s.SetNotPeriodic()
    const count = s.NbPoles()
    const each = Array.from({ length: count }, (_, i) => i + 1)
    return {
      kind: 'spline',
      degree: s.Degree(),
      knots: sequence(
        s.NbKnots(),
        (i) => s.Knot(i),
        (i) => s.Multiplicity(i),
      ),
      poles: each.map((i) => takeVec(s.Pole(i))),
      ...(s.IsRational() ? { weights: each.map((i) => s.Weight(i)) } : {}),
    }
  })
}
