import type { TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import type { Body, BodyEdge, BodyFace, Curve3 } from '../../../src/kernel/body.ts'
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

/**
 * A body written down by hand: straight sides round a profile in x, z (counter-clockwise seen from the front), one of
 * them a spline, thickened along y. `spline` runs from the last corner to the first.
 */
export function extruded(
  corners: readonly (readonly [number, number])[],
  spline: {
    readonly degree: number
    readonly knots: readonly number[]
    readonly poles: readonly (readonly [number, number])[]
  },
  depth: number,
): Body {
  const n = corners.length
  const at = (p: readonly [number, number], y: number): Vec3 => [p[0], y, p[1]]
  const side = (i: number, y: number): Curve3 => {
    if (i === n - 1) return { kind: 'spline', ...spline, poles: spline.poles.map((p) => at(p, y)) }
    return { kind: 'line', a: at(corners[i]!, y), b: at(corners[i + 1]!, y) }
  }
  const front = n
  const rear = n + 1
  const edges: BodyEdge[] = []
  const add = (curve: Curve3, faces: [number, number]) => {
    edges.push({ id: edges.length, curve, faces, seam: false, smooth: false })
    return edges.length - 1
  }
  const lower = corners.map((_, i) => add(side(i, 0), [i, front]))
  const upper = corners.map((_, i) => add(side(i, depth), [i, rear]))
  const across = corners.map((p, i) => add({ kind: 'line', a: at(p, 0), b: at(p, depth) }, [(i + n - 1) % n, i]))
  const faces = corners.map((p, i): BodyFace => {
    const loops = [
      [
        { edge: lower[i]!, forward: false },
        { edge: across[i]!, forward: true },
        { edge: upper[i]!, forward: true },
        { edge: across[(i + 1) % n]!, forward: false },
      ],
    ]
    if (i === n - 1)
      return {
        id: i,
        // Du × Dv points into the material, which lies left of the profile
        reversed: true,
        loops,
        surface: {
          kind: 'spline',
          degreeU: spline.degree,
          degreeV: 1,
          knotsU: spline.knots,
          knotsV: [0, 0, 1, 1],
          poles: spline.poles.map((q) => [at(q, 0), at(q, depth)]),
        },
      }
    const q = corners[i + 1]!
    const l = Math.hypot(q[0] - p[0], q[1] - p[1])
    const x: Vec3 = [(q[0] - p[0]) / l, 0, (q[1] - p[1]) / l]
    const axes = { origin: at(p, 0), x, y: [0, 1, 0] as Vec3, z: [-x[2], 0, x[0]] as Vec3 }
    return { id: i, surface: { kind: 'plane', axes }, reversed: true, loops }
  })
  const cap = (id: number, y: number, uses: BodyFace['loops'][number]): BodyFace => ({
    id,
    surface: { kind: 'plane', axes: { origin: [0, y, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] } },
    reversed: y > 0,
    loops: [uses],
  })
  faces.push(
    cap(
      front,
      0,
      lower.map((edge) => ({ edge, forward: true })),
    ),
  )
  faces.push(
    cap(
      rear,
      depth,
      [...upper].reverse().map((edge) => ({ edge, forward: false })),
    ),
  )
  const all = [...corners, ...spline.poles]
  const bound = (f: (...x: number[]) => number, k: 0 | 1) => f(...all.map((p) => p[k]))
  return {
    faces,
    edges,
    box: { min: [bound(Math.min, 0), 0, bound(Math.min, 1)], max: [bound(Math.max, 0), depth, bound(Math.max, 1)] },
  }
}
