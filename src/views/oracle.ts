import type { Curve2 } from '../geometry/curve2.ts'
import { boxOf, boxOfCurves, lengthOf, piece, pointAt } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import { dot } from '../geometry/vec3.ts'
import type { Body, BodyFace } from '../kernel/body.ts'
import { type KernelLine, kernelHiddenLines } from '../kernel/hidden-lines.ts'
import type { SolidKey } from '../kernel/kernel.ts'
import type { OcctKernel } from '../kernel/open.ts'
import { curveOn, groupedByCarrier, periodOf, reachOf } from './conventions/carrier.ts'
import { type Interval, rewound, united, unwound, without } from './conventions/intervals.ts'
import { nearest } from './conventions/nearest.ts'
import { distinct } from './conventions/precedence.ts'
import { cutRegions } from './cut-regions.ts'
import { projectCurve, projectPoint } from './project.ts'
import type { Projector } from './projector.ts'
import { toleranceOf } from './tolerance.ts'
import type { ExactCurve, ExactView, Frame, Source } from './view.ts'

/**
 * The exact view by the kernel's own hidden-line algorithm: an independent reference for ours. The algorithm says
 * which stretches are visible; the curves themselves are the projected edges of the body wherever a stretch lies on one,
 * because the kernel hands some of them out as chains of chords. Every place is told once: visible before hidden, sharp
 * before silhouette before smooth.
 *
 * @throws KernelError where the kernel's algorithm refuses the solid
 */
export function kernelExactView(kernel: OcctKernel, solid: SolidKey, body: Body, frame: Frame): ExactView {
  const edges = projectedEdges(body, frame)
  const tolerance = toleranceOf(edges.map((e) => e.curve))
  const lines = kernelHiddenLines(kernel, solid, frame.right, frame.toViewer)
  const curves = lines.flatMap((line) => exactPieces(line, edges, body, frame, tolerance))
  return { frame, curves: cleaned(curves, tolerance), cuts: cutRegions(body, frame) }
}

/** The kernel's own hidden-line algorithm as projector. */
export const kernelProjector =
  (kernel: OcctKernel): Projector =>
  (solid, body, frame) =>
    kernelExactView(kernel, solid, body, frame)

interface ProjectedEdge {
  readonly id: number
  readonly curve: Curve2
  readonly faces: readonly number[]
  readonly smooth: boolean
  readonly cut: boolean
  readonly box: { readonly min: Vec2; readonly max: Vec2 }
}

function projectedEdges(body: Body, frame: Frame): ProjectedEdge[] {
  return body.edges.flatMap((edge): ProjectedEdge[] => {
    const curve = edge.seam ? undefined : projectCurve(edge.curve, frame)
    if (!curve) return []
    const faces = edge.faces.filter((f) => f !== undefined)
    const cut = faces.some((f) => body.faces[f]!.cut)
    return [{ id: edge.id, curve, faces, smooth: edge.smooth, cut, box: boxOf(curve) }]
  })
}

/** The kernel's silhouettes may lie off the true outline by this part of their length. */
const SAG = 2e-6

function exactPieces(
  line: KernelLine,
  edges: readonly ProjectedEdge[],
  body: Body,
  frame: Frame,
  tolerance: number,
): ExactCurve[] {
  const raw = recognised(projectCurve(line.curve, PLANE)!, body, frame, tolerance)
  if (lengthOf(raw) <= tolerance) return []
  if (line.kind === 'silhouette') {
    return [{ curve: raw, visible: line.visible, kind: 'silhouette', sources: silhouetteSources(raw, body, frame) }]
  }
  const chords = raw.kind === 'spline' && raw.degree === 1
  const corners = chords ? raw.poles : [0, 0.13, 0.5, 0.87, 1].map((t) => pointAt(raw, t))
  const reach = chords ? Math.max(tolerance, 1e-6) : tolerance
  const on = edges.filter((e) => e.smooth === (line.kind === 'smooth') && corners.every((p) => isNear(e, p, reach)))
  // The outline of a round face that happens to run along its seam comes as an edge.
  if (on.length === 0 && line.kind === 'edge') {
    return [{ curve: raw, visible: line.visible, kind: 'silhouette', sources: silhouetteSources(raw, body, frame) }]
  }
  const sources = on.map((e): Source => ({ edge: e.id, faces: e.faces }))
  const kind = line.kind === 'smooth' ? 'smooth' : on.some((e) => e.cut) ? 'cut' : 'edge'
  const home = chords ? on.find((e) => e.curve.kind !== 'line') : undefined
  const curve = home ? between(home.curve, corners) : raw
  return [{ curve, visible: line.visible, kind, sources }]
}

const PLANE: Frame = { right: [1, 0, 0], up: [0, 1, 0], toViewer: [0, 0, 1] }

function isNear(edge: ProjectedEdge, p: Vec2, reach: number): boolean {
  const { min, max } = edge.box
  if (p[0] < min[0] - reach || p[0] > max[0] + reach || p[1] < min[1] - reach || p[1] > max[1] + reach) return false
  return nearest(edge.curve, p).distance <= reach
}

/**
 * The kernel hands out some straight lines and arcs as splines or chains of chords: curves in a plane seen edge-on, and
 * curves on a cylinder seen end-on. They get their exact form back.
 */
function recognised(curve: Curve2, body: Body, frame: Frame, tolerance: number): Curve2 {
  if (curve.kind !== 'spline') return curve
  const points = curve.degree === 1 ? curve.poles : Array.from({ length: 33 }, (_, i): Vec2 => pointAt(curve, i / 32))
  let far: readonly [Vec2, Vec2] = [points[0]!, points[points.length - 1]!]
  for (const p of points) for (const q of [points[0]!, far[0], far[1]]) if (gap(p, q) > gap(...far)) far = [q, p]
  const straight: Curve2 = { kind: 'line', a: far[0], b: far[1] }
  // A short piece of an arc is straight within the tolerance too: the closest form wins.
  let best: { readonly curve: Curve2; readonly off: number } = { curve, off: tolerance }
  const consider = (off: number, make: () => Curve2) => {
    if (off < best.off) best = { curve: make(), off }
  }
  consider(Math.max(...points.map((p) => nearest(straight, p).distance)), () => straight)
  for (const { surface } of body.faces) {
    if (surface.kind !== 'cylinder' || Math.abs(dot(surface.axes.z, frame.toViewer)) < 1 - 1e-9) continue
    const c = projectPoint(surface.axes.origin, frame)
    const { r } = surface
    consider(Math.max(...points.map((p) => Math.abs(gap(p, c) - r))), () => arcThrough(points, c, r))
  }
  return best.curve
}

function arcThrough(points: readonly Vec2[], c: Vec2, r: number): Curve2 {
  const angles = points.map((p) => Math.atan2(p[1] - c[1], p[0] - c[0]))
  let sweep = 0
  for (const [i, a] of angles.slice(1).entries()) {
    const step = a - angles[i]!
    sweep += step - 2 * Math.PI * Math.round(step / (2 * Math.PI))
  }
  return { kind: 'arc', c, r, from: angles[0]!, sweep }
}

const gap = (a: Vec2, b: Vec2) => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The stretch of the true curve that a chain of corners follows. */
function between(curve: Curve2, corners: readonly Vec2[]): Curve2 {
  const ts = corners.map((p) => nearest(curve, p).t)
  const closed = gap(pointAt(curve, 0), pointAt(curve, 1)) < 1e-9
  const inner = ts[Math.floor(ts.length / 2)]!
  let [from, to] = [ts[0]!, ts[ts.length - 1]!]
  if (closed) {
    // The seam of the parameter may fall on an end or inside the stretch.
    const rising = ts.filter((t, i) => i > 0 && t > ts[i - 1]!).length > ts.length / 2
    if (rising && to <= from) to += 1
    if (!rising && to >= from) from += 1
    const lo = Math.min(from, to)
    const hi = Math.max(from, to)
    if (curve.kind === 'arc' || curve.kind === 'ellipse') {
      return { ...curve, from: curve.from + lo * curve.sweep, sweep: (hi - lo) * curve.sweep }
    }
  }
  if (inner < Math.min(from, to) || inner > Math.max(from, to)) return curve
  return piece(curve, Math.min(from, to), Math.max(from, to))
}

/** Round faces whose outline passes through the middle of the curve. */
function silhouetteSources(curve: Curve2, body: Body, frame: Frame): Source[] {
  const p = pointAt(curve, 0.5)
  const reach = Math.max(1e-6, SAG * lengthOf(curve))
  return body.faces.filter((f) => outlinePasses(f, p, body, frame, reach)).map((f) => ({ faces: [f.id] }))
}

function outlinePasses(face: BodyFace, p: Vec2, body: Body, frame: Frame, reach: number): boolean {
  const s = face.surface
  if (s.kind !== 'cylinder' && s.kind !== 'cone' && s.kind !== 'sphere') return false
  const c = projectPoint(s.axes.origin, frame)
  if (s.kind === 'sphere') return Math.abs(gap(p, c) - s.r) <= reach
  const d = projectPoint(s.axes.z, frame)
  const length = Math.hypot(...d)
  if (length < 1e-9) return false
  const off = ((p[1] - c[1]) * d[0] - (p[0] - c[0]) * d[1]) / length
  const on = ((p[0] - c[0]) * d[0] + (p[1] - c[1]) * d[1]) / length
  // Of a cone only seen from the side, where its outline is its own profile.
  if (s.kind === 'cone' && length < 1 - 1e-9) return false
  const r = s.kind === 'cone' ? s.r + on * Math.tan(s.halfAngle) : s.r
  if (Math.abs(Math.abs(off) - Math.abs(r)) > reach) return false
  const border = face.loops.flat().flatMap((use) => projectCurve(body.edges[use.edge]!.curve, frame) ?? [])
  const { min, max } = boxOfCurves(border)
  return p[0] >= min[0] - reach && p[0] <= max[0] + reach && p[1] >= min[1] - reach && p[1] <= max[1] + reach
}

/** Smooth edges last: they are not lines of a drawing and must not take the place of one. */
const RANK: readonly (readonly [visible: boolean, kind: ExactCurve['kind']])[] = [
  [true, 'cut'],
  [true, 'edge'],
  [true, 'silhouette'],
  [false, 'cut'],
  [false, 'edge'],
  [false, 'silhouette'],
  [true, 'smooth'],
  [false, 'smooth'],
]

/** Every place once, in the longest unbroken pieces. */
function cleaned(curves: readonly ExactCurve[], tolerance: number): ExactCurve[] {
  const out: ExactCurve[] = []
  for (const { carrier, members } of groupedByCarrier(curves, tolerance)) {
    const period = periodOf(carrier)
    const near = reachOf(carrier, tolerance)
    const flat = (on: Interval) => (period === undefined ? [on] : unwound(on, period))
    const overlaps = (a: Interval, b: Interval) => Math.min(a.to, b.to) - Math.max(a.from, b.from) > near
    let taken: Interval[] = []
    for (const [visible, kind] of RANK) {
      const of = members.filter((m) => m.item.visible === visible && m.item.kind === kind)
      const covered = united(
        of.flatMap((m) => flat(m.on)),
        near,
      )
      const free = without(covered, taken, near)
      for (const on of period === undefined ? free : rewound(free, period, near)) {
        const over = of.filter((m) => flat(m.on).some((a) => flat(on).some((b) => overlaps(a, b))))
        out.push({
          curve: curveOn(carrier, on),
          visible,
          kind,
          sources: distinct(over.flatMap((m) => m.item.sources)),
        })
      }
      taken = united([...taken, ...covered], near)
    }
  }
  return out
}
