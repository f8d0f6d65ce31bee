import type { TopoDS_Edge, TopoDS_Face, TopoDS_Shape, TopoDS_Wire } from 'replicad-opencascadejs'
import type { Vec3 } from '../geometry/vec.ts'
import { distance, dot, negate, unit } from '../geometry/vec3.ts'
import type { Body, BodyEdge, BodyFace, Curve3 } from './body.ts'
import { type Box3, boxOfCurve3, unionOfBoxes } from './box3.ts'
import { normalOfSurface, pointOnCurve } from './evaluate3.ts'
import { type Occt, ShapeNumbers, subShapes, takeVec } from './occt.ts'
import { readCurve } from './read-curve.ts'
import { type ReadSurface, readSurface } from './read-surface.ts'
import { type Own, scoped } from './scope.ts'

type Use = BodyFace['loops'][number][number]

interface EdgeDraft {
  readonly shape: TopoDS_Edge
  readonly curve: Curve3
  readonly faces: number[]
  /** Where the curve starts and ends. */
  readonly ends: readonly [Vec3, Vec3]
}

/** cos of the largest angle (1e-4 rad) between normals that still counts as tangent. */
const TANGENT = Math.cos(1e-4)

/** Reads a solid's whole boundary as plain numbers. Ids count from 0 in the kernel's own order. */
export function readBody(oc: Occt, shape: TopoDS_Shape): Body {
  return scoped((own) => {
    const numbers = new ShapeNumbers(oc)
    const edges: EdgeDraft[] = []
    const faces: BodyFace[] = []
    const surfaces: ReadSurface[] = []
    const faceShapes: TopoDS_Face[] = []
    const bulges: Box3[] = []
    for (const s of subShapes(oc, own, shape, 'TopAbs_FACE')) {
      const face = own(oc.TopoDS.Face(s))
      const id = faces.length
      const read = readSurface(oc, face)
      const loops = readLoops(oc, own, face, numbers, edges, id)
      faces.push({ id, surface: read.surface, reversed: read.reversed, loops })
      surfaces.push(read)
      faceShapes.push(face)
      // planes, cylinders and cones reach furthest on their borders; the others may bulge between
      if (['sphere', 'torus', 'spline'].includes(read.surface.kind)) bulges.push(boxOfFace(oc, face))
    }
    const done = edges.map((draft, id): BodyEdge => {
      const [f, g] = besides(draft.faces)
      const seam = g !== undefined && f === g
      return {
        id,
        curve: draft.curve,
        faces: g === undefined ? [f!] : [f!, g],
        seam,
        smooth: seam || (g !== undefined && isSmooth(oc, draft, [f!, g], surfaces, faceShapes)),
      }
    })
    return { faces, edges: done, box: unionOfBoxes([...done.map((e) => boxOfCurve3(e.curve)), ...bulges]) }
  })
}

/** A face that uses an edge both ways is not parted by it: where others meet it there, it is theirs. */
function besides(faces: readonly number[]): readonly number[] {
  const once = faces.filter((f) => faces.filter((g) => g === f).length === 1)
  return once.length > 0 ? once : faces
}

/** The outer loop first. Edges without length (cone apex, sphere pole) are left out. */
function readLoops(
  oc: Occt,
  own: Own,
  face: TopoDS_Face,
  numbers: ShapeNumbers,
  edges: EdgeDraft[],
  faceId: number,
): Use[][] {
  const wires = subShapes(oc, own, face, 'TopAbs_WIRE')
  if (wires.length > 1) {
    const outer = own(oc.BRepTools.OuterWire(face))
    const at = wires.findIndex((w) => w.IsSame(outer))
    if (at > 0) wires.unshift(...wires.splice(at, 1))
  }
  return wires
    .map((wire) => {
      const uses: Use[] = []
      for (const s of subShapes(oc, own, wire as TopoDS_Wire, 'TopAbs_EDGE')) {
        const edge = own(oc.TopoDS.Edge(s))
        if (oc.BRep_Tool.Degenerated(edge)) continue
        const { id, first } = numbers.numberOf(edge)
        if (first) {
          const curve = readCurve(oc, edge)
          edges.push({ shape: edge, curve, faces: [], ends: [pointOnCurve(curve, 0), pointOnCurve(curve, 1)] })
        }
        edges[id]!.faces.push(faceId)
        uses.push({ edge: id, forward: edge.Orientation() === 'TopAbs_FORWARD' })
      }
      return inOrder(uses, edges)
    })
    .filter((loop) => loop.length > 0)
}

/** Chains the uses of one wire head to tail; closed edges go first where they touch the chain. */
function inOrder(uses: Use[], edges: readonly EdgeDraft[]): Use[] {
  if (uses.length < 3) return uses
  const startOf = (u: Use) => edges[u.edge]!.ends[u.forward ? 0 : 1]
  const endOf = (u: Use) => edges[u.edge]!.ends[u.forward ? 1 : 0]
  const left = [...uses]
  const chain = [left.shift()!]
  while (left.length > 0) {
    const at = endOf(chain[chain.length - 1]!)
    let best = 0
    let least = Number.POSITIVE_INFINITY
    left.forEach((u, i) => {
      const gap = distance(startOf(u), at)
      const closed = distance(startOf(u), endOf(u)) < SAME_POINT
      // of those that fit, the first closed one, else the first
      const score = gap < SAME_POINT ? (closed ? -1 : 0) : gap
      if (score < least) {
        least = score
        best = i
      }
    })
    chain.push(left.splice(best, 1)[0]!)
  }
  return chain
}

/** Ends of edges nearer than this (mm) are one vertex. */
const SAME_POINT = 1e-5

function isSmooth(
  oc: Occt,
  draft: EdgeDraft,
  faces: readonly [number, number],
  surfaces: readonly ReadSurface[],
  shapes: readonly TopoDS_Face[],
): boolean {
  for (const t of [0.13, 0.5, 0.87]) {
    const p = pointOnCurve(draft.curve, t)
    const [a, b] = faces.map((f) => outwardAt(oc, draft.shape, surfaces[f]!, shapes[f]!, p, t))
    if (!a || !b || dot(a, b) < TANGENT) return false
  }
  return true
}

function outwardAt(
  oc: Occt,
  edge: TopoDS_Edge,
  read: ReadSurface,
  face: TopoDS_Face,
  p: Vec3,
  t: number,
): Vec3 | undefined {
  const own = normalOfSurface(read.surface, p)
  if (own) return read.reversed ? negate(own) : own
  if (read.surface.kind !== 'spline') return undefined
  return scoped((own) => {
    const trace = own(new oc.BRepAdaptor_Curve2d(edge, face))
    const u = trace.FirstParameter() + t * (trace.LastParameter() - trace.FirstParameter())
    const uv = own(trace.Value(u))
    const normal = own(new oc.gp_Vec())
    own(new oc.BRepGProp_Face(face, false)).Normal(uv.X(), uv.Y(), own(new oc.gp_Pnt()), normal)
    const n: Vec3 = [normal.X(), normal.Y(), normal.Z()]
    return unit(n)
  })
}

/** Bounds of a face, or of all faces of a shape. */
export function boxOfFace(oc: Occt, face: TopoDS_Shape): Box3 {
  return scoped((own) => {
    const box = own(new oc.Bnd_Box())
    oc.BRepBndLib.AddOptimal(face, box, false, false)
    return {
      min: takeVec(box.CornerMin()),
      max: takeVec(box.CornerMax()),
    }
  })
}
