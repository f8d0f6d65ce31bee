import type { Curve2, Spline2 } from '../geometry/curve2.ts'
import { derivativeAt, minorOf, piece, pointAt } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'

/** A cubic Bézier: start, two control points, end. */
export type Cubic = readonly [Vec2, Vec2, Vec2, Vec2]

/** Largest distance in mm between a curve and the Béziers written for it, where they are not exact. */
const BEZIER_ERROR = 5e-5

/**
 * A curve as cubic Béziers. Lines and polynomial splines up to degree 3 are exact; arcs, ellipses and other splines lie
 * within `BEZIER_ERROR` of the true curve.
 */
export function cubics(curve: Curve2): Cubic[] {
  switch (curve.kind) {
    case 'line':
      return [[curve.a, mix(curve.a, curve.b, 1 / 3), mix(curve.a, curve.b, 2 / 3), curve.b]]
    case 'arc':
      return turned(curve.c, [curve.r, 0], [0, curve.r], curve.r, curve.from, curve.sweep)
    case 'ellipse': {
      const r = Math.hypot(curve.major[0], curve.major[1])
      return turned(curve.c, curve.major, minorOf(curve), r, curve.from, curve.sweep)
    }
    case 'spline':
      return splineCubics(curve)
  }
}

/**
 * An arc in steps whose Bézier error stays small. For a step θ of radius r the error of the cubic with arm
 * (4/3) tan(θ/4) is (2/27) r sin⁶(θ/4)/cos²(θ/4) (M. Goldapp, "Approximation of circular arcs by cubic polynomials",
 * CAGD 8, 1991).
 */
function turned(c: Vec2, m: Vec2, n: Vec2, r: number, from: number, sweep: number): Cubic[] {
  let steps = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9))
  const error = (k: number) => {
    const q = Math.abs(sweep) / k / 4
    return ((2 / 27) * r * Math.sin(q) ** 6) / Math.cos(q) ** 2
  }
  while (error(steps) > BEZIER_ERROR) steps++
  const at = (a: number): Vec2 => [
    c[0] + m[0] * Math.cos(a) + n[0] * Math.sin(a),
    c[1] + m[1] * Math.cos(a) + n[1] * Math.sin(a),
  ]
  const out: Cubic[] = []
  const step = sweep / steps
  const arm = (4 / 3) * Math.tan(step / 4)
  for (let i = 0; i < steps; i++) {
    const [a, b] = [from + i * step, from + (i + 1) * step]
    const [p, q] = [at(a), at(b)]
    const [dp, dq] = [at(a + Math.PI / 2), at(b + Math.PI / 2)]
    out.push([
      p,
      [p[0] + arm * (dp[0] - c[0]), p[1] + arm * (dp[1] - c[1])],
      [q[0] - arm * (dq[0] - c[0]), q[1] - arm * (dq[1] - c[1])],
      q,
    ])
  }
  return out
}

function splineCubics(s: Spline2): Cubic[] {
  const a = s.knots[0]!
  const b = s.knots[s.knots.length - 1]!
  const inner = [...new Set(s.knots)].filter((k) => k > a && k < b)
  const cuts = [0, ...inner.map((k) => (k - a) / (b - a)), 1]
  const pieces = cuts.slice(1).map((t, i) => piece(s, cuts[i]!, t) as Spline2)
  if (!s.weights && s.degree <= 3) return pieces.map((p) => elevated(p.poles.slice(0, s.degree + 1)))
  return cuts.slice(1).flatMap((t, i) => refined(s, cuts[i]!, t, 0))
}

/** A Bézier of degree 1, 2 or 3 raised to degree 3. */
function elevated(poles: readonly Vec2[]): Cubic {
  const [p0, p1, p2, p3] = poles
  if (poles.length === 2) return [p0!, mix(p0!, p1!, 1 / 3), mix(p0!, p1!, 2 / 3), p1!]
  if (poles.length === 3) return [p0!, mix(p0!, p1!, 2 / 3), mix(p2!, p1!, 2 / 3), p2!]
  return [p0!, p1!, p2!, p3!]
}

/** Hermite pieces, halved until close. */
function refined(s: Spline2, t0: number, t1: number, depth: number): Cubic[] {
  const [p, q] = [pointAt(s, t0), pointAt(s, t1)]
  const [d, e] = [derivativeAt(s, t0), derivativeAt(s, t1)]
  const k = (t1 - t0) / 3
  const c: Cubic = [p, [p[0] + k * d[0], p[1] + k * d[1]], [q[0] - k * e[0], q[1] - k * e[1]], q]
  const off = [0.25, 0.5, 0.75].some((u) => {
    const [x, y] = cubicPoint(c, u)
    const [w, z] = pointAt(s, t0 + u * (t1 - t0))
    return Math.hypot(x - w, y - z) > BEZIER_ERROR
  })
  if (!off || depth > 12) return [c]
  const mid = (t0 + t1) / 2
  return [...refined(s, t0, mid, depth + 1), ...refined(s, mid, t1, depth + 1)]
}

export function cubicPoint([a, b, c, d]: Cubic, u: number): Vec2 {
  const v = 1 - u
  const [k0, k1, k2, k3] = [v * v * v, 3 * v * v * u, 3 * v * u * u, u * u * u]
  return [k0 * a[0] + k1 * b[0] + k2 * c[0] + k3 * d[0], k0 * a[1] + k1 * b[1] + k2 * c[1] + k3 * d[1]]
}

function mix(a: Vec2, b: Vec2, t: number): Vec2 {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
}
