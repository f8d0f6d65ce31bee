import type { Vec3 } from '../../geometry/vec.ts'
import { along, cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Body, BodyEdge } from '../../kernel/body.ts'
import { pointOnCurve } from '../../kernel/evaluate3.ts'
import { offAxis, type RoundCut, radiusAt, widestRadius } from './cuts.ts'
import { materialAngle, samples } from './faces.ts'

/** The material left between a round cut and the nearest edge of something else. */
export interface Ligament {
  /** mm; negative where the cut breaks through. */
  readonly mm: number
  readonly edge: BodyEdge
  readonly point: Vec3
  /** By how much the cut is wider there than its wall: a counterbore or countersink, mm in radius. */
  readonly wider: number
}

/**
 * Least material between the cut's wall and the outside edges of the body that stand beside it, anywhere along its depth.
 * Edges of the cut itself, smooth edges, inside corners and circles about the same axis are not looked at.
 */
export function ligament(body: Body, cut: RoundCut, counts: (edge: BodyEdge) => boolean): Ligament | undefined {
  const own = new Set(cut.faces)
  // The flanks of a slot run into its ends.
  for (const edge of body.edges) {
    const [a, b] = edge.faces
    if (edge.smooth && b !== undefined && (cut.faces.includes(a) || cut.faces.includes(b))) own.add(a).add(b)
  }
  let best: Ligament | undefined
  const widest = widestRadius(cut)
  for (const edge of body.edges) {
    if (edge.smooth || edge.seam) continue
    if (best && nearest(edge, cut) - widest >= best.mm) continue
    if (!counts(edge)) continue
    if (edge.faces.some((f) => f !== undefined && own.has(f))) continue
    if (isCoaxial(edge, cut)) continue
    let near: { mm: number; point: Vec3; wider: number } | undefined
    for (const p of nearPoints(edge, cut)) {
      const depth = dot(sub(p, cut.at), cut.inward)
      if (depth < -1e-6 || depth > cut.deep + 1e-6) continue
      const radius = radiusAt(cut, depth)
      const mm = offAxis(cut, p) - radius
      if (!near || mm < near.mm) near = { mm, point: p, wider: radius - cut.r }
    }
    if (!near || (best && near.mm >= best.mm)) continue
    const angle = materialAngle(body, edge)
    if (angle === undefined || angle >= 180) continue
    best = { ...near, edge }
  }
  return best
}

/** No point of the edge is nearer to the cut's axis than this, mm: 0 where that is not known at once. */
function nearest({ curve }: BodyEdge, cut: RoundCut): number {
  return curve.kind === 'circle' ? offAxis(cut, curve.axes.origin) - curve.r : 0
}

function isCoaxial(edge: BodyEdge, cut: RoundCut): boolean {
  const { curve } = edge
  if (curve.kind !== 'circle') return false
  return offAxis(cut, curve.axes.origin) < 1e-6 && norm(cross(curve.axes.z, cut.inward)) < 1e-9
}

/** Points of the edge among which the nearest one is, up to the samples of curved edges. */
function nearPoints(edge: BodyEdge, cut: RoundCut): readonly Vec3[] {
  const { curve } = edge
  if (curve.kind === 'circle' && norm(cross(curve.axes.z, cut.inward)) < 1e-9) return nearestOfCircle(curve, cut)
  if (curve.kind !== 'line') return samples(edge)
  const d = sub(curve.b, curve.a)
  const flat = sub(d, along([0, 0, 0], cut.inward, dot(d, cut.inward)))
  const length = dot(flat, flat)
  const at = (t: number) => along(curve.a, d, Math.max(0, Math.min(1, t)))
  const points = [curve.a, curve.b]
  if (length > 1e-12) points.push(at(-dot(sub(curve.a, cut.at), flat) / length))
  // Where the edge passes the two ends of the cut.
  const rise = dot(d, cut.inward)
  if (Math.abs(rise) > 1e-9) {
    const start = dot(sub(cut.at, curve.a), cut.inward)
    points.push(at(start / rise), at((start + cut.deep) / rise))
  }
  return points
}

/** Of a circle square to the cut's axis: its ends, and its nearest point where the arc has it. */
function nearestOfCircle(curve: Extract<BodyEdge['curve'], { kind: 'circle' }>, cut: RoundCut): Vec3[] {
  const { origin, x, y } = curve.axes
  const d = sub(cut.at, origin)
  const angle = Math.atan2(dot(d, y), dot(d, x))
  const turn = 2 * Math.PI
  const ahead = (angle - curve.from) * Math.sign(curve.sweep)
  const t = (ahead - Math.floor(ahead / turn) * turn) / Math.abs(curve.sweep)
  return [0, 1, ...(t <= 1 ? [t] : [])].map((at) => pointOnCurve(curve, at))
}
