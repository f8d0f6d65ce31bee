import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { BodyEdge } from '../../kernel/body.ts'
import type { Reach } from '../dimension.ts'
import { type AxisIndex, axisIndex, SAME } from './elements.ts'
import type { Expression, Model, PlaneReading, RoundReading, Values } from './model.ts'

/**
 * What a size's end reaches on the solid, as a function of the unknowns: the place along `direction` of a plane or axis
 * there; else of the farthest point of a round; else of a corner between two surfaces. Undefined: nothing stands there.
 */
export function reached(model: Model, reach: Reach, direction: Vec3): Expression | undefined {
  if (reach.middle) {
    const walls = (reach.faces ?? []).filter((f) => model.elementOf.get(f)?.surface.kind === 'plane')
    const [a, b] = reach.middle.map(
      (at) =>
        ownAxis(model, at, reach.faces ?? [], direction) ??
        reached(model, { at, name: reach.name, faces: walls }, direction),
    )
    if (!a || !b) return undefined
    return { uses: [...new Set([...a.uses, ...b.uses])], of: (x) => (a.of(x) + b.of(x)) / 2 }
  }
  const k = axisIndex(direction)
  if (k === undefined) return reachedObliquely(model, reach, direction)
  const sign = Math.sign(direction[k])
  const signed = (e: Expression): Expression =>
    sign > 0 ? e : { uses: e.uses, of: (x) => -e.of(x), ...(e.bar === undefined ? {} : { bar: e.bar }) }
  const own =
    ownLevel(model, reach, k) ??
    ownEdge(model, reach, k) ??
    ownCorner(model, reach, k) ??
    model.level(k, reach.at[k], reach.at, reach.faces)
  if (own) return signed(own)
  const candidates: { far: number; make: () => Expression | undefined }[] = []
  for (const element of model.elements) {
    const reading = model.readings[element.id]
    if (!reading || reading.form === 'plane' || reading.radius < 0 || reading.form === 'torus') continue
    if (element.along === k || (element.along === undefined && reading.form !== 'sphere')) continue
    if (reading.form === 'cone') continue
    const p = reading.point(model.values)
    for (const side of [1, -1]) {
      if (Math.abs(p[k] + side * model.values[reading.radius]! - reach.at[k]) > SAME) continue
      const across = ([0, 1, 2] as const).filter((i) => i !== k && (i !== element.along || reading.form === 'sphere'))
      const far = Math.hypot(...across.map((i) => p[i] - reach.at[i]))
      candidates.push({ far, make: () => farthest(reading, k, side) })
    }
  }
  for (const edge of model.body.edges) {
    const far = distanceAt(edge, k, reach.at)
    if (far === undefined) continue
    const isOwn = edge.faces.some((f) => f !== undefined && reach.faces?.includes(f))
    candidates.push({
      far: isOwn ? far : far + SAME,
      make: () => {
        const corner = cornerOf(model, edge)
        return corner && { uses: corner.uses, of: (x) => corner.point(x)[k] }
      },
    })
  }
  candidates.sort((a, b) => a.far - b.far)
  for (const candidate of candidates) {
    const made = candidate.make()
    if (made && Math.abs(made.of(model.values) - reach.at[k]) < SAME * 10) return signed(made)
  }
  return undefined
}

/** The place along an axis of the part of the round face among these whose axis goes through the point. */
function ownAxis(model: Model, at: Vec3, faces: readonly number[], direction: Vec3): Expression | undefined {
  const k = axisIndex(direction)
  if (k === undefined) return undefined
  const sign = Math.sign(direction[k])
  for (const face of faces) {
    const element = model.elementOf.get(face)
    const reading = element && model.readings[element.id]
    if (reading?.form !== 'cylinder' || element?.along === undefined || element.along === k) continue
    const p = reading.point(model.values)
    if (([0, 1, 2] as const).some((i) => i !== element.along && Math.abs(p[i] - at[i]) > SAME)) continue
    const bar = reading.bars[k]
    if (bar >= 0 && sign > 0) return { uses: [bar], of: (x) => x[bar]!, bar }
    return { uses: bar >= 0 ? [bar] : reading.uses, of: (x) => sign * reading.point(x)[k] }
  }
  return undefined
}

/** The place of the reach's own plane, or of its own round's farthest point, whatever else stands level with it. */
function ownLevel(model: Model, reach: Reach, k: AxisIndex): Expression | undefined {
  for (const face of reach.faces ?? []) {
    const element = model.elementOf.get(face)
    const reading = element && model.readings[element.id]
    if (!element || !reading) continue
    if (reading.form === 'plane') {
      if (element.along !== k) continue
      const sign = Math.sign(reading.normal(model.values)[k])
      if (Math.abs(sign * reading.offset(model.values) - reach.at[k]) > SAME) continue
      const { bar } = reading
      if (bar !== undefined) return { uses: [bar], of: (x) => x[bar]!, bar }
      return { uses: reading.uses, of: (x) => sign * reading.offset(x) }
    }
    if (reading.form !== 'cylinder' || element.along === undefined || element.along === k) continue
    const p = reading.point(model.values)
    const side = Math.sign(reach.at[k] - p[k])
    if (Math.abs(p[k] + side * model.values[reading.radius]! - reach.at[k]) > SAME) continue
    return farthest(reading, k, side)
  }
  return undefined
}

/** The border there of the reach's own slope or cone, whatever else stands level with it: a chamfer's, a drill point's. */
function ownEdge(model: Model, reach: Reach, k: AxisIndex): Expression | undefined {
  let best: { far: number; edge: BodyEdge } | undefined
  for (const edge of model.body.edges) {
    const slopes = edge.faces.some((f) => f !== undefined && reach.faces?.includes(f) && isSlope(model, f))
    const far = slopes ? distanceAt(edge, k, reach.at) : undefined
    if (far !== undefined && (!best || far < best.far)) best = { far, edge }
  }
  const corner = best && cornerOf(model, best.edge)
  if (!corner || Math.abs(corner.point(model.values)[k] - reach.at[k]) > SAME * 10) return undefined
  return { uses: corner.uses, of: (x) => corner.point(x)[k] }
}

/** A corner named by its point alone, whatever plane or axis is level with it: where the sides beside it meet. */
function ownCorner(model: Model, reach: Reach, k: AxisIndex): Expression | undefined {
  if (reach.corner !== true) return undefined
  for (const edge of model.body.edges) {
    if (edge.curve.kind !== 'line') continue
    const along = sub(edge.curve.b, edge.curve.a)
    // The corner's own edge runs through the thickness, across the size.
    if (Math.abs(along[k]) > SAME || norm(cross(sub(reach.at, edge.curve.a), along)) / norm(along) > SAME) continue
    const corner = cornerOf(model, edge)
    if (corner) return { uses: corner.uses, of: (x) => corner.point(x)[k] }
  }
  return undefined
}

function isSlope(model: Model, face: number): boolean {
  const element = model.elementOf.get(face)
  const form = element && model.readings[element.id]?.form
  return form === 'cone' || (form === 'plane' && element?.along === undefined)
}

/** The place along `k` of a round's farthest point to one side. */
function farthest(reading: RoundReading, k: AxisIndex, side: number): Expression {
  const bar = reading.bars[k]
  const uses = bar >= 0 ? [bar, reading.radius] : reading.uses
  return { uses, of: (x) => reading.point(x)[k] + side * x[reading.radius]! }
}

/** How far an edge that reads as a point or level along `k` lies from `at`; undefined when it is not at that level. */
function distanceAt(edge: BodyEdge, k: AxisIndex, at: Vec3): number | undefined {
  const { curve } = edge
  if (curve.kind === 'line') {
    if (Math.abs(curve.a[k] - at[k]) > SAME || Math.abs(curve.b[k] - at[k]) > SAME) return undefined
    const d = sub(curve.b, curve.a)
    const length = norm(d)
    const t = Math.min(1, Math.max(0, dot(sub(at, curve.a), d) / (length * length)))
    return Math.hypot(...[0, 1, 2].map((i) => curve.a[i]! + t * d[i]! - at[i]!))
  }
  if (curve.kind === 'circle') {
    if (axisIndex(curve.axes.z) !== k || Math.abs(curve.axes.origin[k] - at[k]) > SAME) return undefined
    const out = sub(at, curve.axes.origin)
    return Math.abs(norm(cross(out, curve.axes.z)) - curve.r)
  }
  return undefined
}

/** Along a direction off the axes: planes square to it, axes, corners. */
function reachedObliquely(model: Model, reach: Reach, direction: Vec3): Expression | undefined {
  const place = dot(reach.at, direction)
  for (const element of model.elements) {
    const reading = model.readings[element.id]
    if (!reading) continue
    const x = model.values
    if (reading.form === 'plane') {
      const n = reading.normal(x)
      if (norm(cross(n, direction)) > 1e-7) continue
      const sign = Math.sign(dot(n, direction))
      if (Math.abs(sign * reading.offset(x) - place) > SAME) continue
      return { uses: reading.uses, of: (v) => sign * reading.offset(v) }
    }
    if (Math.abs(dot(reading.direction(x), direction)) > 1e-7) continue
    const p = reading.point(x)
    const off = sub(reach.at, p)
    const u = reading.direction(x)
    if (norm(cross(off, u)) > SAME) continue
    return { uses: reading.uses, of: (v) => dot(reading.point(v), direction) }
  }
  for (const edge of model.body.edges) {
    if (edge.curve.kind !== 'line') continue
    const d = sub(edge.curve.b, edge.curve.a)
    if (norm(cross(sub(reach.at, edge.curve.a), d)) / norm(d) > SAME) continue
    const corner = cornerOf(model, edge)
    if (corner) return { uses: corner.uses, of: (v) => dot(corner.point(v), direction) }
  }
  return undefined
}

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
