import type { Vec3 } from '../../geometry/vec.ts'
import { along, cross, distance, dot, negate, norm, scale, sub, unit } from '../../geometry/vec3.ts'
import type { Axes3, Surface3 } from '../../kernel/body.ts'
import { circleThrough } from './recognise-curve.ts'
import { type SplineSurface, surfaceAt, surfacePatches } from './spline-surface.ts'

/** A surface and whether its own normal is opposite to the spline's (du × dv). */
export interface Recognised {
  readonly surface: Surface3
  readonly opposite: boolean
}

/**
 * The plane, cylinder, cone, sphere or torus that a spline surface is in truth, or undefined. Tried on more points a
 * patch than the surface's equation could vanish in by chance.
 */
export function recognisedSurface(spline: SplineSurface, tolerance: number): Recognised | undefined {
  const patches = surfacePatches(spline)
  const points: Vec3[] = []
  const rows: Vec3[][] = []
  const us = steps(patches.breaksU, 2 * spline.degreeU + 1)
  const vs = steps(patches.breaksV, 2 * spline.degreeV + 1)
  for (const u of us) {
    const row = vs.map((v) => surfaceAt(patches, u, v).p)
    rows.push(row)
    points.push(...row)
  }
  const columns = vs.map((_, j) => rows.map((row) => row[j]!))
  const found = planar(points) ?? round(rows) ?? round(columns)
  if (!found || !points.every((p) => off(found, p) <= tolerance)) return undefined
  // compare the normals where the spline's own is well defined
  const mid = (a: readonly number[]) => 0.5 * (a[Math.floor(a.length / 2)]! + a[Math.floor(a.length / 2) - 1]!)
  const { p, du, dv } = surfaceAt(patches, mid(us), mid(vs))
  const own = cross(du, dv)
  if (norm(own) === 0) return undefined
  return { surface: found, opposite: dot(own, normalAt(found as Exclude<Surface3, { kind: 'spline' }>, p)) < 0 }
}

function steps(breaks: readonly number[], each: number): number[] {
  const out: number[] = []
  for (let k = 0; k + 1 < breaks.length; k++)
    for (let i = 0; i < each; i++) out.push(breaks[k]! + ((breaks[k + 1]! - breaks[k]!) * i) / each)
  out.push(breaks[breaks.length - 1]!)
  return out
}

function planar(points: readonly Vec3[]): Surface3 | undefined {
  const o = points[0]!
  const far = points.reduce((a, b) => (distance(b, o) > distance(a, o) ? b : a))
  const x = unit(sub(far, o))
  let best: Vec3 = [0, 0, 0]
  for (const p of points) {
    const n = cross(x, sub(p, o))
    if (norm(n) > norm(best)) best = n
  }
  if (norm(best) < 1e-9) return undefined
  const z = unit(best)
  const plane: Surface3 = { kind: 'plane', axes: { origin: o, x, y: cross(z, x), z } }
  const size = distance(far, o)
  return points.every((p) => off(plane, p) <= 1e-9 * size) ? plane : undefined
}

/** A surface of revolution whose circles are the given rows; its generator is read off the points' distances. */
function round(rows: readonly (readonly Vec3[])[]): Surface3 | undefined {
  const circles = rows.flatMap((row) => {
    const n = row.length - 1
    const c = circleThrough(row[0]!, row[Math.round(n / 3)]!, row[Math.round((2 * n) / 3)]!)
    return c ? [c] : []
  })
  if (circles.length < 3) return undefined
  const first = circles[0]!
  const axis = first.normal
  for (const c of circles) {
    if (Math.abs(Math.abs(dot(c.normal, axis)) - 1) > 1e-9) return undefined
    const away = sub(c.centre, first.centre)
    if (norm(along(away, axis, -dot(away, axis))) > 1e-8 * (1 + first.r)) return undefined
  }
  const some = rows[0]![0]!
  const x = unit(along(sub(some, first.centre), axis, -dot(sub(some, first.centre), axis)))
  const axes = (origin: Vec3, z: Vec3): Axes3 => ({ origin, x, y: cross(z, x), z })
  // generator as (height, radius)
  const g = circles.map((c) => [dot(sub(c.centre, first.centre), axis), c.r] as const)
  const [a, m, b] = [g[0]!, g[Math.floor(g.length / 2)]!, g[g.length - 1]!]
  const bend = (b[0] - a[0]) * (m[1] - a[1]) - (b[1] - a[1]) * (m[0] - a[0])
  const reach = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (reach > 0 && Math.abs(bend) <= 1e-8 * reach * reach) {
    if (Math.abs(b[1] - a[1]) <= 1e-9 * reach) return { kind: 'cylinder', axes: axes(first.centre, axis), r: a[1] }
    if (Math.abs(b[0] - a[0]) <= 1e-9 * reach) return undefined
    const slope = (b[1] - a[1]) / (b[0] - a[0])
    const z = slope > 0 ? axis : negate(axis)
    const widest = a[1] > b[1] ? a : b
    const origin = along(first.centre, axis, widest[0])
    return { kind: 'cone', axes: axes(origin, z), r: widest[1], halfAngle: Math.atan(Math.abs(slope)) }
  }
  const arc = circleThrough([a[0], a[1], 0], [m[0], m[1], 0], [b[0], b[1], 0])
  // a closed generator begins and ends in one place: take another third point
  const third = g[Math.floor(g.length / 4)]!
  const whole = arc ?? circleThrough([a[0], a[1], 0], [third[0], third[1], 0], [m[0], m[1], 0])
  if (!whole) return undefined
  const [h, distanceFromAxis] = [whole.centre[0], whole.centre[1]]
  const centre = along(first.centre, axis, h)
  if (Math.abs(distanceFromAxis) <= 1e-9 * whole.r) return { kind: 'sphere', axes: axes(centre, axis), r: whole.r }
  if (distanceFromAxis < 0) return undefined
  return { kind: 'torus', axes: axes(centre, axis), major: distanceFromAxis, minor: whole.r }
}

/** Distance of a point from a surface. */
function off(s: Surface3, p: Vec3): number {
  if (s.kind === 'spline') return Infinity
  const q = sub(p, s.axes.origin)
  const z = dot(q, s.axes.z)
  if (s.kind === 'plane') return Math.abs(z)
  const rho = norm(along(q, s.axes.z, -z))
  switch (s.kind) {
    case 'cylinder':
      return Math.abs(rho - s.r)
    case 'cone':
      return Math.abs(rho - s.r - z * Math.tan(s.halfAngle)) * Math.cos(s.halfAngle)
    case 'sphere':
      return Math.abs(norm(q) - s.r)
    case 'torus':
      return Math.abs(Math.hypot(rho - s.major, z) - s.minor)
  }
}

function normalAt(s: Exclude<Surface3, { kind: 'spline' }>, p: Vec3): Vec3 {
  const q = sub(p, s.axes.origin)
  const z = dot(q, s.axes.z)
  const out = along(q, s.axes.z, -z)
  switch (s.kind) {
    case 'plane':
      return s.axes.z
    case 'cylinder':
      return out
    case 'cone':
      return along(scale(unit(out), Math.cos(s.halfAngle)), s.axes.z, -Math.sin(s.halfAngle))
    case 'sphere':
      return q
    case 'torus':
      return along(sub(out, scale(unit(out), s.major)), s.axes.z, z)
  }
}
