import type { Curve2, Spline2 } from '../../geometry/curve2.ts'
import { derivativeAt, minorOf, pointAt } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'

export interface Nearest {
  readonly t: number
  /** mm */
  readonly distance: number
}

/** Point of the curve nearest to `p`, ends included. */
export function nearest(curve: Curve2, p: Vec2): Nearest {
  switch (curve.kind) {
    case 'line': {
      const d: Vec2 = [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
      const square = d[0] * d[0] + d[1] * d[1]
      const t = square === 0 ? 0 : ((p[0] - curve.a[0]) * d[0] + (p[1] - curve.a[1]) * d[1]) / square
      return at(curve, clamp(t), p)
    }
    case 'arc':
      return swept(curve, Math.atan2(p[1] - curve.c[1], p[0] - curve.c[0]), p)
    case 'ellipse': {
      // Start from the angle in the stretched circle, which is within a quarter turn of the foot point, then refine.
      const n = minorOf(curve)
      const q: Vec2 = [p[0] - curve.c[0], p[1] - curve.c[1]]
      const x = (q[0] * curve.major[0] + q[1] * curve.major[1]) / square(curve.major)
      const y = (q[0] * n[0] + q[1] * n[1]) / square(n)
      return refined(curve, swept(curve, Math.atan2(y, x), p), p)
    }
    case 'spline': {
      const points = samplesOf(curve)
      let best = 0
      let least = Infinity
      for (let i = 0; i < points.length; i++) {
        const d = (points[i]![0] - p[0]) ** 2 + (points[i]![1] - p[1]) ** 2
        if (d < least) [best, least] = [i, d]
      }
      return refined(curve, at(curve, best / (points.length - 1), p), p)
    }
  }
}

/** Points of a spline, evenly in its parameter; worked out once for each curve. */
const sampled = new WeakMap<Spline2, readonly Vec2[]>()

function samplesOf(curve: Spline2): readonly Vec2[] {
  let points = sampled.get(curve)
  if (!points) {
    const count = 8 * curve.poles.length
    points = Array.from({ length: count + 1 }, (_, i) => pointAt(curve, i / count))
    sampled.set(curve, points)
  }
  return points
}

function swept(curve: Curve2 & { readonly from: number; readonly sweep: number }, angle: number, p: Vec2): Nearest {
  const turn = 2 * Math.PI
  let d = (angle - curve.from) * (Math.sign(curve.sweep) || 1)
  d -= Math.floor(d / turn) * turn
  const t = d / Math.abs(curve.sweep)
  if (t <= 1) return at(curve, t, p)
  const start = at(curve, 0, p)
  const end = at(curve, 1, p)
  return start.distance <= end.distance ? start : end
}

/** Gauss-Newton on (c(t) - p)·c'(t) = 0; keeps a step only where it comes nearer. */
function refined(curve: Curve2, from: Nearest, p: Vec2): Nearest {
  let best = from
  for (let i = 0; i < 40; i++) {
    const c = pointAt(curve, best.t)
    const d = derivativeAt(curve, best.t)
    const step = ((p[0] - c[0]) * d[0] + (p[1] - c[1]) * d[1]) / (square(d) || 1)
    const next = at(curve, clamp(best.t + step), p)
    if (!(next.distance < best.distance)) break
    best = next
  }
  return best
}

const at = (curve: Curve2, t: number, p: Vec2): Nearest => {
  const c = pointAt(curve, t)
  return { t, distance: Math.hypot(c[0] - p[0], c[1] - p[1]) }
}
const clamp = (t: number) => Math.min(1, Math.max(0, t))
const square = (v: Vec2) => v[0] * v[0] + v[1] * v[1]
