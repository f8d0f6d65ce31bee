import type { Vec3 } from '../../geometry/vec.ts'
import { along, cross, distance, dot, norm, scale, sub, unit } from '../../geometry/vec3.ts'
import type { Curve3, Surface3 } from '../../kernel/body.ts'
import { curveSamples, type Spline3 } from './recognise-curve.ts'

type Surface<K extends Surface3['kind']> = Extract<Surface3, { kind: K }>
type Revolved = Surface<'cylinder' | 'cone' | 'sphere' | 'torus'>

/**
 * The exact line, circle or ellipse in which two analytic faces meet, where the file holds only a spline near it.
 * `near`: how far (mm) the spline may stray from it; undefined where the faces meet in no such curve or too far away.
 */
export function edgeBetween(curve: Spline3, f: Surface3, g: Surface3, near: number): Curve3 | undefined {
  const points = curveSamples(curve)
  const found =
    f.kind === 'plane' && g.kind !== 'plane' && g.kind !== 'spline'
      ? planeAndRevolved(f, g, points)
      : g.kind === 'plane' && f.kind !== 'plane' && f.kind !== 'spline'
        ? planeAndRevolved(g, f, points)
        : f.kind !== 'plane' && g.kind !== 'plane' && f.kind !== 'spline' && g.kind !== 'spline'
          ? coaxial(f, g, points)
          : undefined
  return found && arcAlong(found, points, near)
}

/** A whole ellipse or circle: centre and half axes, square to each other. */
interface Ring {
  readonly centre: Vec3
  readonly u: Vec3
  readonly v: Vec3
}

function planeAndRevolved(plane: Surface<'plane'>, s: Revolved, points: readonly Vec3[]): Ring | undefined {
  const n = plane.axes.z
  if (s.kind === 'sphere') {
    const h = dot(sub(plane.axes.origin, s.axes.origin), n)
    const r = Math.sqrt(s.r * s.r - h * h)
    return r > 0 ? ring(along(s.axes.origin, n, h), n, r) : undefined
  }
  const { z, origin } = s.axes
  const lean = dot(z, n)
  if (Math.abs(lean) < 1e-6) return undefined
  const h = dot(sub(plane.axes.origin, origin), n) / lean
  const centre = along(origin, z, h)
  if (Math.abs(Math.abs(lean) - 1) < 1e-9) {
    const r = radiusAt(s, h, points)
    return r === undefined ? undefined : ring(centre, z, r)
  }
  if (s.kind !== 'cylinder') return undefined
  const minor = unit(cross(z, n))
  return { centre, u: scale(cross(minor, n), s.r / Math.abs(lean)), v: scale(minor, s.r) }
}

/** Surfaces of revolution about one axis meet in circles square to it. */
function coaxial(f: Revolved, g: Revolved, points: readonly Vec3[]): Ring | undefined {
  const [a, b] = f.kind === 'sphere' ? [g, f] : [f, g]
  if (a.kind === 'sphere') return undefined
  const { z, origin } = a.axes
  const away = sub(b.axes.origin, origin)
  if (norm(along(away, z, -dot(away, z))) > 1e-7) return undefined
  if (b.kind !== 'sphere' && Math.abs(Math.abs(dot(b.axes.z, z)) - 1) > 1e-9) return undefined
  const h = points.reduce((sum, p) => sum + dot(sub(p, origin), z), 0) / points.length
  const r = radiusAt(a, h, points)
  return r === undefined ? undefined : ring(along(origin, z, h), z, r)
}

function ring(centre: Vec3, normal: Vec3, r: number): Ring {
  const helper: Vec3 = Math.abs(normal[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]
  const x = unit(cross(normal, helper))
  return { centre, u: scale(x, r), v: scale(cross(normal, x), r) }
}

/** Radius of a surface of revolution at a height along its axis; of two, the one the points are nearer to. */
function radiusAt(s: Revolved, h: number, points: readonly Vec3[]): number | undefined {
  if (s.kind === 'cylinder') return s.r
  if (s.kind === 'cone') {
    const r = s.r + h * Math.tan(s.halfAngle)
    return r > 0 ? r : undefined
  }
  if (s.kind === 'sphere') return undefined
  const half = Math.sqrt(Math.max(0, s.minor * s.minor - h * h))
  const centre = along(s.axes.origin, s.axes.z, h)
  return distance(points[0]!, centre) > s.major ? s.major + half : s.major - half
}

/** The part of a ring that the points run along, directed alike. */
function arcAlong(r: Ring, points: readonly Vec3[], near: number): Curve3 | undefined {
  const p = norm(r.u)
  const q = norm(r.v)
  const x = unit(r.u)
  const y = unit(r.v)
  const angleOf = (at: Vec3) => {
    const d = sub(at, r.centre)
    return Math.atan2(dot(d, y) / q, dot(d, x) / p)
  }
  let turned = 0
  let before = angleOf(points[0]!)
  const from = before
  for (const at of points) {
    const angle = angleOf(at)
    const on = along(along(r.centre, x, p * Math.cos(angle)), y, q * Math.sin(angle))
    if (distance(on, at) > near) return undefined
    const step = angle - before
    turned += step - 2 * Math.PI * Math.round(step / (2 * Math.PI))
    before = angle
  }
  const full = 2 * Math.PI
  if (Math.abs(Math.abs(turned) - full) < 1e-9) turned = full * Math.sign(turned)
  if (Math.abs(turned) < 1e-9 || Math.abs(turned) > full) return undefined
  const back = turned < 0
  const axes = { origin: r.centre, x, y: back ? scale(y, -1) : y, z: back ? cross(y, x) : cross(x, y) }
  const range = { from: back ? -from : from, sweep: Math.abs(turned) }
  return Math.abs(p - q) <= 1e-12 * p
    ? { kind: 'circle', axes, r: p, ...range }
    : { kind: 'ellipse', axes, major: p, minor: q, ...range }
}
