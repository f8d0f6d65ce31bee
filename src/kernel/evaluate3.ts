import type { Vec3 } from '../geometry/vec.ts'
import { along, cross, dot, norm, scale, sub, unit } from '../geometry/vec3.ts'
import type { Curve3, Surface3 } from './body.ts'

/** Point of a space curve at t in [0, 1]; uniform in length, angle, parameter angle or knot parameter. */
export function pointOnCurve(curve: Curve3, t: number): Vec3 {
  switch (curve.kind) {
    case 'line':
      if (t === 1) return curve.b
      return along(curve.a, sub(curve.b, curve.a), t)
    case 'circle':
    case 'ellipse': {
      const a = curve.from + t * curve.sweep
      const [p, q] = curve.kind === 'circle' ? [curve.r, curve.r] : [curve.major, curve.minor]
      return along(along(curve.axes.origin, curve.axes.x, p * Math.cos(a)), curve.axes.y, q * Math.sin(a))
    }
    case 'spline': {
      const first = curve.knots[0]!
      const u = first + t * (curve.knots[curve.knots.length - 1]! - first)
      return splinePoint(curve, u)
    }
  }
}

/**
 * The surface's own unit normal at a point that lies on it (plane: axes.z; round: away from the axis or centre).
 * Undefined for splines, whose parameters a point alone does not give, and on an axis or apex.
 */
export function normalOfSurface(surface: Surface3, p: Vec3): Vec3 | undefined {
  switch (surface.kind) {
    case 'plane':
      return surface.axes.z
    case 'cylinder':
      return radial(surface.axes.origin, surface.axes.z, p)
    case 'cone': {
      const out = radial(surface.axes.origin, surface.axes.z, p)
      return out && unit(along(scale(out, Math.cos(surface.halfAngle)), surface.axes.z, -Math.sin(surface.halfAngle)))
    }
    case 'sphere': {
      const d = sub(p, surface.axes.origin)
      return norm(d) === 0 ? undefined : unit(d)
    }
    case 'torus': {
      const out = radial(surface.axes.origin, surface.axes.z, p)
      if (!out) return undefined
      return unit(sub(p, along(surface.axes.origin, out, surface.major)))
    }
    case 'spline':
      return undefined
  }
}

/** Unit vector from an axis toward a point, square to the axis; undefined on the axis. */
function radial(origin: Vec3, axis: Vec3, p: Vec3): Vec3 | undefined {
  const d = sub(p, origin)
  const out = along(d, axis, -dot(d, axis))
  const n = norm(out)
  return n < 1e-12 ? undefined : scale(out, 1 / n)
}

/** Any unit vector square to `axis`, the same every time. */
export function squareTo(axis: Vec3): Vec3 {
  const helper: Vec3 = Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]
  return unit(cross(axis, helper))
}

type SplineCurve = Extract<Curve3, { kind: 'spline' }>

/** de Boor's algorithm in homogeneous coordinates. */
function splinePoint(s: SplineCurve, u: number): Vec3 {
  const { degree: p, knots } = s
  let k = p
  while (k < s.poles.length - 1 && u >= knots[k + 1]!) k++
  const d = s.poles.slice(k - p, k + 1).map((q, i) => {
    const w = s.weights?.[i + k - p] ?? 1
    return [q[0] * w, q[1] * w, q[2] * w, w] as const
  })
  for (let r = 1; r <= p; r++) {
    for (let j = p; j >= r; j--) {
      const lo = knots[j + k - p]!
      const span = knots[j + 1 + k - r]! - lo
      const f = span === 0 ? 0 : (u - lo) / span
      const [a, b] = [d[j - 1]!, d[j]!]
      d[j] = [a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1]), a[2] + f * (b[2] - a[2]), a[3] + f * (b[3] - a[3])]
    }
  }
  const [x, y, z, w] = d[p]!
  return [x / w, y / w, z / w]
}
