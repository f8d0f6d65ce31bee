import Flatbush from 'flatbush'
import { boxOf, derivativeAt, lengthOf, pointAt } from '../../../src/geometry/evaluate.ts'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import { dot } from '../../../src/geometry/vec3.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import { subShapes } from '../../../src/kernel/occt.ts'
import type { OcctKernel } from '../../../src/kernel/open.ts'
import { scoped } from '../../../src/kernel/scope.ts'
import type { ExactCurve, Frame } from '../../../src/views/view.ts'

/**
 * Dense ray test, independent of the line-work: the kernel's triangulation of the solid, met by lines of sight. Across a
 * visible line the first face met, or its depth, changes; across a hidden line the list of all faces met does.
 */
export interface Mesh {
  readonly corners: Float64Array
  readonly face: Int32Array
}

/** Triangles of every face, no further than `sag` (mm) from it. Faces are numbered as in the body. */
export function meshOf(kernel: OcctKernel, solid: SolidKey, sag: number): Mesh {
  const { oc } = kernel
  return scoped((own) => {
    const shape = kernel.shapeOf(solid)
    own(new oc.BRepMesh_IncrementalMesh(shape, sag, false, 0.1, false))
    const corners: number[] = []
    const face: number[] = []
    subShapes(oc, own, shape, 'TopAbs_FACE').forEach((s, id) => {
      const location = own(new oc.TopLoc_Location())
      const net = oc.BRep_Tool.Triangulation(own(oc.TopoDS.Face(s)), location, 0)
      if (!net) return
      own(net)
      const place = own(location.Transformation())
      for (let i = 1; i <= net.NbTriangles(); i++) {
        const triangle = own(net.Triangle(i))
        for (const k of [1, 2, 3]) {
          const p = own(own(net.Node(triangle.Value(k))).Transformed(place))
          corners.push(p.X(), p.Y(), p.Z())
        }
        face.push(id)
      }
    })
    return { corners: Float64Array.from(corners), face: Int32Array.from(face) }
  })
}

/** A meeting of a line of sight with the solid's border. */
export interface Hit {
  readonly face: number
  readonly depth: number
  /** cos between the triangle and the line of sight, unsigned. */
  readonly facing: number
}

/** Lines of sight through a solid at places of a view. */
export interface LineOfSight {
  /** All faces met, nearest to the eye first. */
  at(x: number, y: number): Hit[]
}

/** Lines of sight through a mesh. */
export class Sight implements LineOfSight {
  private readonly flat: Float64Array
  private readonly index: Flatbush
  private readonly face: Int32Array

  constructor(mesh: Mesh, frame: Frame) {
    const count = mesh.face.length
    this.face = mesh.face
    this.flat = new Float64Array(count * 9)
    this.index = new Flatbush(count)
    for (let i = 0; i < count; i++) {
      const box = [Infinity, Infinity, -Infinity, -Infinity]
      for (let k = 0; k < 3; k++) {
        const p: Vec3 = [
          mesh.corners[9 * i + 3 * k]!,
          mesh.corners[9 * i + 3 * k + 1]!,
          mesh.corners[9 * i + 3 * k + 2]!,
        ]
        const q = [dot(p, frame.right), dot(p, frame.up), dot(p, frame.toViewer)]
        this.flat.set(q, 9 * i + 3 * k)
        for (const a of [0, 1]) {
          box[a] = Math.min(box[a]!, q[a]!)
          box[a + 2] = Math.max(box[a + 2]!, q[a]!)
        }
      }
      this.index.add(box[0]!, box[1]!, box[2]!, box[3]!)
    }
    this.index.finish()
  }

  at(x: number, y: number): Hit[] {
    const hits: Hit[] = []
    this.index.search(x, y, x, y, (i) => {
      const [ax, ay, az, bx, by, bz, cx, cy, cz] = this.flat.subarray(9 * i, 9 * i + 9)
      const det = (bx! - ax!) * (cy! - ay!) - (cx! - ax!) * (by! - ay!)
      if (det === 0) return false
      const u = ((x - ax!) * (cy! - ay!) - (cx! - ax!) * (y - ay!)) / det
      const v = ((bx! - ax!) * (y - ay!) - (x - ax!) * (by! - ay!)) / det
      if (u < 0 || v < 0 || u + v > 1) return false
      const nx = (by! - ay!) * (cz! - az!) - (bz! - az!) * (cy! - ay!)
      const ny = (bz! - az!) * (cx! - ax!) - (bx! - ax!) * (cz! - az!)
      hits.push({
        face: this.face[i]!,
        depth: az! + u * (bz! - az!) + v * (cz! - az!),
        facing: Math.abs(det) / Math.hypot(nx, ny, det),
      })
      return false
    })
    return hits.sort((a, b) => b.depth - a.depth)
  }
}

export interface Verdict {
  /** Places where a line is told but nothing changes, or nothing is told but something does. */
  readonly wrong: readonly { readonly at: readonly [number, number]; readonly what: string }[]
  readonly tried: number
}

/** How closely a ray test looks, mm. */
export interface Fineness {
  /** How far beside a line the rays pass; lines nearer than thrice this are passed over. */
  readonly clear: number
  /** Faces met within this depth of each other count as touching, their order as none. */
  readonly touching: number
}

/**
 * Judges told curves by `count` places on each and one close to either end: a visible line must be a change of what is
 * seen first, a hidden one a change of what is met behind it. Where solids are `pierced` by others, two faces in one depth
 * may change places without an edge, and say nothing.
 */
export function judge(
  sight: LineOfSight,
  curves: readonly ExactCurve[],
  count: number,
  fine: Fineness,
  pierced = false,
): Verdict {
  const { clear, touching } = fine
  const wrong: { at: readonly [number, number]; what: string }[] = []
  let tried = 0
  for (const one of curves) {
    // a slit in one face, where another sheet of the solid touches it, changes nothing of what is seen
    if (one.kind === 'smooth' || one.sources.some((x) => x.edge !== undefined && new Set(x.faces).size === 1)) continue
    const near = Math.min(0.1, (12 * clear) / Math.max(lengthOf(one.curve), 1e-9))
    const places = [near, ...Array.from({ length: count }, (_, i) => (i + 0.5) / count), 1 - near]
    for (const t of places) {
      const p = pointAt(one.curve, t)
      if (curves.some((c) => c !== one && nearTo(c, p, 3 * clear))) continue
      const d = derivativeAt(one.curve, t)
      const len = Math.hypot(d[0], d[1])
      if (turnsBack(one, t, (3 * clear) / Math.max(len, 1e-12))) continue
      const side = (f: number) => sight.at(p[0] - (f * clear * d[1]) / len, p[1] + (f * clear * d[0]) / len)
      const [a, b] = [side(1), side(-1)]
      tried++
      // where two sheets of the solid touch along a line, the same is met on both sides, but less at the line itself
      const pinched = inOrder(a, touching) === inOrder(b, touching) && sight.at(p[0], p[1]).length < a.length
      if (pinched) continue
      const first = firstChanges(a[0], b[0], clear)
      if (pierced && first && a[0] && b[0] && !firstChanges({ ...a[0], face: 0 }, { ...b[0], face: 0 }, clear)) continue
      if (one.visible && !first) wrong.push({ at: p, what: `visible ${one.kind}, yet the same is seen on both sides` })
      if (!one.visible && first)
        wrong.push({ at: p, what: `hidden ${one.kind}, yet what is seen first changes across it` })
      if (!one.visible && !first && inOrder(a, touching) === inOrder(b, touching))
        wrong.push({ at: p, what: `hidden ${one.kind}, yet the same faces are met on both sides` })
    }
  }
  return { wrong, tried }
}

/** Whether a curve turns by more than a right angle within `near` of a place: it then lies on both sides of itself. */
function turnsBack(c: ExactCurve, t: number, near: number): boolean {
  if (c.curve.kind === 'line' || c.curve.kind === 'arc') return false
  const [a, b] = [derivativeAt(c.curve, Math.max(0, t - near)), derivativeAt(c.curve, Math.min(1, t + near))]
  return a[0] * b[0] + a[1] * b[1] < 0
}

/** Faces met, those that touch in order of their numbers. */
function inOrder(hits: readonly Hit[], touching: number): string {
  const out: number[] = []
  for (let i = 0; i < hits.length; ) {
    let j = i + 1
    while (j < hits.length && hits[j - 1]!.depth - hits[j]!.depth < touching) j++
    out.push(
      ...hits
        .slice(i, j)
        .map((h) => h.face)
        .sort((a, b) => a - b),
    )
    i = j
  }
  return out.join()
}

/** cos of the angle beyond which a surface counts no steeper: beside its outline depth changes without bound. */
const STEEPEST = 5e-3

function firstChanges(a: Hit | undefined, b: Hit | undefined, clear: number): boolean {
  if (!a || !b) return a !== b
  if (a.face !== b.face) return true
  const slope = 1 / Math.max(STEEPEST, Math.min(a.facing, b.facing))
  return Math.abs(a.depth - b.depth) > 4 * clear * slope
}

function nearTo(c: ExactCurve, p: readonly [number, number], within: number): boolean {
  const box = boxOf(c.curve)
  if (p[0] < box.min[0] - within || p[0] > box.max[0] + within) return false
  if (p[1] < box.min[1] - within || p[1] > box.max[1] + within) return false
  if (c.curve.kind === 'line') {
    const { a, b } = c.curve
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    const l2 = dx * dx + dy * dy
    const f = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / l2))
    return Math.hypot(p[0] - a[0] - f * dx, p[1] - a[1] - f * dy) <= within
  }
  const off = (t: number) => {
    const q = pointAt(c.curve, t)
    return Math.hypot(p[0] - q[0], p[1] - q[1])
  }
  const n = 64
  const offs = Array.from({ length: n + 1 }, (_, i) => off(i / n))
  // every low of the samples, closed in on by thirds
  return offs.some((d, i) => {
    if (d > (offs[i - 1] ?? Infinity) || d > (offs[i + 1] ?? Infinity)) return false
    let [lo, hi] = [Math.max(0, i - 1) / n, Math.min(n, i + 1) / n]
    for (let k = 0; k < 40; k++) {
      const [x, y] = [lo + (hi - lo) / 3, hi - (hi - lo) / 3]
      if (off(x) < off(y)) hi = y
      else lo = x
    }
    return off(0.5 * (lo + hi)) <= within
  })
}

/**
 * Looks for lines that are missing: along random straight lines across the view, every change of what is met must lie
 * at a told curve. `visible` looks at what is seen first only, otherwise at all that is met.
 */
export function missing(
  sight: LineOfSight,
  curves: readonly ExactCurve[],
  box: readonly [number, number, number, number],
  lines: number,
  fine: Fineness,
  random: () => number,
): Verdict {
  const wrong: { at: readonly [number, number]; what: string }[] = []
  let tried = 0
  const visible = curves.filter((c) => c.visible)
  const place = () => [box[0] + random() * (box[2] - box[0]), box[1] + random() * (box[3] - box[1])] as const
  for (let i = 0; i < lines; i++) {
    const [p, q] = [place(), place()]
    const steps = 60
    const on = (f: number) => [p[0] + f * (q[0] - p[0]), p[1] + f * (q[1] - p[1])] as const
    for (let k = 0; k < steps; k++) {
      let [lo, hi] = [k / steps, (k + 1) / steps]
      const at = (f: number) => sight.at(...on(f))
      let [a, b] = [at(lo), at(hi)]
      for (const seen of [true, false]) {
        const key = (h: readonly Hit[]) => (seen ? String(h[0]?.face) : inOrder(h, fine.touching))
        if (key(a) === key(b)) continue
        ;[lo, hi] = [k / steps, (k + 1) / steps]
        for (let s = 0; s < 30; s++) {
          const mid = 0.5 * (lo + hi)
          const m = at(mid)
          if (key(m) === key(a)) lo = mid
          else hi = mid
        }
        tried++
        const where = on(0.5 * (lo + hi))
        const told = seen ? visible : curves
        if (!told.some((c) => nearTo(c, where, fine.clear)))
          wrong.push({
            at: where,
            what: seen
              ? 'what is seen first changes where no visible line is told'
              : 'what is met changes where no line is told',
          })
      }
      a = b
      b = []
    }
  }
  return { wrong, tried }
}
