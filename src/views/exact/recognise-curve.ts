import { bezierChain, chainAt } from '../../geometry/bezier-chain.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { along, cross, distance, dot, norm, sub, unit } from '../../geometry/vec3.ts'
import type { Curve3 } from '../../kernel/body.ts'

export type Spline3 = Extract<Curve3, { kind: 'spline' }>

/**
 * The line or circle that a spline is in truth, directed alike, or the spline itself. A rational curve of degree n that
 * meets a conic's equation in 2n + 1 places of a Bézier piece meets it throughout, so the trial is no guess.
 */
export function recognisedCurve(curve: Curve3, tolerance: number): Curve3 {
  if (curve.kind !== 'spline') return curve
  const points = curveSamples(curve)
  const first = points[0]!
  const last = points[points.length - 1]!
  return straight(points, first, last, tolerance) ?? circular(points, first, last, tolerance) ?? curve
}

/** Points along a spline, more on each Bézier piece than a conic can meet it in by chance. */
export function curveSamples(curve: Spline3): Vec3[] {
  const chain = bezierChain(curve.degree, curve.knots, curve.poles, curve.weights)
  const steps = 2 * curve.degree + 2
  const out: Vec3[] = []
  const p = [0, 0, 0]
  const add = (t: number) => {
    chainAt(chain, t, p)
    out.push([p[0]!, p[1]!, p[2]!])
  }
  for (let k = 0; k + 1 < chain.breaks.length; k++) {
    const [a, b] = [chain.breaks[k]!, chain.breaks[k + 1]!]
    for (let i = 0; i < steps; i++) add(a + ((b - a) * i) / steps)
  }
  add(chain.breaks[chain.breaks.length - 1]!)
  return out
}

function straight(points: readonly Vec3[], a: Vec3, b: Vec3, tolerance: number): Curve3 | undefined {
  const way = sub(b, a)
  const length = norm(way)
  if (length <= tolerance) return undefined
  const d = unit(way)
  let before = -tolerance
  for (const p of points) {
    const s = dot(sub(p, a), d)
    // a line that turns back on itself stays a spline
    if (distance(p, along(a, d, s)) > tolerance || s < before - tolerance) return undefined
    before = s
  }
  return { kind: 'line', a, b }
}

function circular(points: readonly Vec3[], a: Vec3, b: Vec3, tolerance: number): Curve3 | undefined {
  const closed = distance(a, b) <= tolerance
  const n = points.length - 1
  const found = circleThrough(a, points[Math.round(n / 3)]!, points[Math.round((2 * n) / 3)]!)
  if (!found) return undefined
  const { centre, normal, r } = found
  if (!(r > 10 * tolerance) || r > 1e6) return undefined
  const x = unit(sub(a, centre))
  const y = cross(normal, x)
  let turned = 0
  let before = 0
  for (const p of points) {
    const q = sub(p, centre)
    if (Math.abs(dot(q, normal)) > tolerance || Math.abs(norm(q) - r) > tolerance) return undefined
    const angle = Math.atan2(dot(q, y), dot(q, x))
    let step = angle - before
    step -= 2 * Math.PI * Math.round(step / (2 * Math.PI))
    turned += step
    before = angle
  }
  if (Math.abs(turned) > 2 * Math.PI + 1e-6 || Math.abs(turned) < 1e-9) return undefined
  const axes = { origin: centre, x, y, z: normal }
  if (closed && Math.abs(Math.abs(turned) - 2 * Math.PI) > 1e-6) return undefined
  const sweep = closed ? 2 * Math.PI * Math.sign(turned) : turned
  if (sweep > 0) return { kind: 'circle', axes, r, from: 0, sweep }
  return {
    kind: 'circle',
    axes: { origin: centre, x, y: [-y[0], -y[1], -y[2]], z: [-normal[0], -normal[1], -normal[2]] },
    r,
    from: 0,
    sweep: -sweep,
  }
}

/** Circle through three points; undefined where they lie in a line. */
export function circleThrough(
  a: Vec3,
  b: Vec3,
  c: Vec3,
): { readonly centre: Vec3; readonly normal: Vec3; readonly r: number } | undefined {
  const p = sub(b, a)
  const q = sub(c, a)
  const n = cross(p, q)
  const nn = dot(n, n)
  if (nn <= 1e-12 * dot(p, p) * dot(q, q)) return undefined
  const pp = dot(p, p)
  const qq = dot(q, q)
  // centre - a = (|p|² q × n + |q|² n × p) / 2 |n|², the circumcentre of a triangle
  const u = cross(q, n)
  const v = cross(n, p)
  const f = 0.5 / nn
  const toCentre: Vec3 = [f * (pp * u[0] + qq * v[0]), f * (pp * u[1] + qq * v[1]), f * (pp * u[2] + qq * v[2])]
  return { centre: along(a, toCentre, 1), normal: unit(n), r: norm(toCentre) }
}
