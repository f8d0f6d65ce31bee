import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { BodyEdge } from '../../kernel/body.ts'
import { SAME } from './elements.ts'
import type { Model, PlaneReading, RoundReading, Values } from './model.ts'

/** A point of the solid as a function of its unknowns. */
export interface Corner {
  readonly uses: readonly number[]
  readonly point: (x: Values) => Vec3
}

/** Where the two surfaces of an edge meet, as a function of the unknowns; for circles, their centre moved along the axis. */
export function cornerOf(model: Model, edge: BodyEdge): Corner | undefined {
  const [fa, fb] = edge.faces
  if (fb === undefined) return undefined
  const a = model.elementOf.get(fa)
  const b = model.elementOf.get(fb)
  if (!a || !b || a === b) return undefined
  const [ra, rb] = [model.readings[a.id], model.readings[b.id]]
  if (!ra || !rb) return undefined
  const uses = [...new Set([...ra.uses, ...rb.uses])]
  const { curve } = edge
  if (curve.kind === 'circle') {
    const level =
      circleLevel(ra, rb, curve.axes.origin, model.scale) ?? circleLevel(rb, ra, curve.axes.origin, model.scale)
    return level && { uses, point: level }
  }
  if (curve.kind !== 'line') return undefined
  const d = sub(curve.b, curve.a)
  const u: Vec3 = [d[0] / norm(d), d[1] / norm(d), d[2] / norm(d)]
  const section = crossSection(u, curve.a)
  const meet =
    meeting(ra, rb, section, edge.smooth, model.values) ?? meeting(rb, ra, section, edge.smooth, model.values)
  return meet && { uses, point: meet }
}

/** The plane across an edge, with two directions in it. */
interface Section {
  readonly e: Vec3
  readonly f: Vec3
  readonly at: Vec3
}

function crossSection(u: Vec3, at: Vec3): Section {
  const raw = cross(u, Math.abs(u[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0])
  const e: Vec3 = [raw[0] / norm(raw), raw[1] / norm(raw), raw[2] / norm(raw)]
  return { e, f: cross(u, e), at }
}

type PointOf = (x: Values) => Vec3

function meeting(
  a: PlaneReading | RoundReading,
  b: PlaneReading | RoundReading,
  s: Section,
  smooth: boolean,
  now: Values,
): PointOf | undefined {
  const out = (p: number, q: number): Vec3 => [
    s.at[0] + p * s.e[0] + q * s.f[0],
    s.at[1] + p * s.e[1] + q * s.f[1],
    s.at[2] + p * s.e[2] + q * s.f[2],
  ]
  const line = (r: PlaneReading, x: Values) => {
    const n = r.normal(x)
    return { n: [dot(n, s.e), dot(n, s.f)] as const, d: r.offset(x) - dot(n, s.at) }
  }
  const centre = (r: RoundReading, x: Values) => {
    const p = sub(r.point(x), s.at)
    return [dot(p, s.e), dot(p, s.f)] as const
  }
  if (a.form === 'plane' && b.form === 'plane') {
    return (x) => {
      const [l, m] = [line(a, x), line(b, x)]
      const det = l.n[0] * m.n[1] - l.n[1] * m.n[0]
      return out((l.d * m.n[1] - m.d * l.n[1]) / det, (l.n[0] * m.d - m.n[0] * l.d) / det)
    }
  }
  if (a.form === 'plane' && b.form === 'cylinder') {
    const gapNow = Math.abs(dot(a.normal(now), b.point(now)) - a.offset(now))
    const touches = smooth || Math.abs(gapNow - now[b.radius]!) < SAME
    return (x) => {
      const l = line(a, x)
      const size = Math.hypot(l.n[0], l.n[1])
      const n = [l.n[0] / size, l.n[1] / size] as const
      const c = centre(b, x)
      const gap = n[0] * c[0] + n[1] * c[1] - l.d / size
      const foot = [c[0] - gap * n[0], c[1] - gap * n[1]] as const
      if (touches) return out(foot[0], foot[1])
      const half = Math.sqrt(Math.max(0, x[b.radius]! ** 2 - gap * gap))
      const t = [-n[1], n[0]] as const
      // The corner is at (0, 0) on the solid as it stands: the nearer of the two crossings.
      const side = foot[0] * t[0] + foot[1] * t[1] > 0 ? -1 : 1
      return out(foot[0] + side * half * t[0], foot[1] + side * half * t[1])
    }
  }
  if (a.form === 'cylinder' && b.form === 'cylinder') {
    return (x) => {
      const [p, q] = [centre(a, x), centre(b, x)]
      const apart = Math.hypot(q[0] - p[0], q[1] - p[1])
      const w = [(q[0] - p[0]) / apart, (q[1] - p[1]) / apart] as const
      const [r1, r2] = [x[a.radius]!, x[b.radius]!]
      if (smooth) {
        const reach = -(p[0] * w[0] + p[1] * w[1]) > 0 ? r1 : -r1
        return out(p[0] + reach * w[0], p[1] + reach * w[1])
      }
      const along = (apart * apart + r1 * r1 - r2 * r2) / (2 * apart)
      const half = Math.sqrt(Math.max(0, r1 * r1 - along * along))
      const foot = [p[0] + along * w[0], p[1] + along * w[1]] as const
      const t = [-w[1], w[0]] as const
      const side = foot[0] * t[0] + foot[1] * t[1] > 0 ? -1 : 1
      return out(foot[0] + side * half * t[0], foot[1] + side * half * t[1])
    }
  }
  return undefined
}

/** The level along the axis at which two surfaces about one axis meet in a circle. */
function circleLevel(
  a: PlaneReading | RoundReading,
  b: PlaneReading | RoundReading,
  at: Vec3,
  scale: number,
): PointOf | undefined {
  if (b.form === 'plane') return undefined
  const move = (axis: Vec3, level: number): Vec3 => {
    const now = dot(at, axis)
    return [at[0] + (level - now) * axis[0], at[1] + (level - now) * axis[1], at[2] + (level - now) * axis[2]]
  }
  if (a.form === 'plane') return (x) => move(a.normal(x), a.offset(x))
  if (b.form === 'cone' && (a.form === 'cylinder' || a.form === 'cone')) {
    // +1 where the circle lies beyond the cone's point as its axis runs.
    const side = (cone: RoundReading, x: Values) =>
      dot(sub(at, cone.point(x)), cone.direction(x)) * Math.sign(dot(cone.direction(x), b.direction(x))) < 0 ? -1 : 1
    const tan = (cone: RoundReading, x: Values) => Math.tan(x[cone.half]! / scale)
    return (x) => {
      const u = b.direction(x)
      const tip = dot(b.point(x), u)
      if (a.form === 'cylinder') return move(u, tip + (side(b, x) * x[a.radius]!) / tan(b, x))
      const [s, t] = [side(a, x) * tan(a, x), side(b, x) * tan(b, x)]
      return move(u, (s * dot(a.point(x), u) - t * tip) / (s - t))
    }
  }
  if (a.form === 'cylinder' && b.form === 'sphere')
    return (x) => {
      const u = a.direction(x)
      const c = dot(b.point(x), u)
      const side = dot(at, u) < c ? -1 : 1
      return move(u, c + side * Math.sqrt(Math.max(0, x[b.radius]! ** 2 - x[a.radius]! ** 2)))
    }
  if (a.form === 'cylinder' && b.form === 'torus')
    return (x) => {
      const u = b.direction(x)
      return move(u, dot(b.point(x), u))
    }
  return undefined
}
