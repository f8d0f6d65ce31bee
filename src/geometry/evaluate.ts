import type { Curve2, Ellipse2, Spline2 } from './curve2.ts'
import type { Vec2 } from './vec.ts'

/** Point of the curve at t in [0, 1]. Lines, arcs and ellipses are uniform in length, angle and parameter angle. */
export function pointAt(curve: Curve2, t: number): Vec2 {
  switch (curve.kind) {
    case 'line':
      if (t === 1) return curve.b
      return [curve.a[0] + t * (curve.b[0] - curve.a[0]), curve.a[1] + t * (curve.b[1] - curve.a[1])]
    case 'arc': {
      const a = curve.from + t * curve.sweep
      return [curve.c[0] + curve.r * Math.cos(a), curve.c[1] + curve.r * Math.sin(a)]
    }
    case 'ellipse': {
      const a = curve.from + t * curve.sweep
      const n = minorOf(curve)
      const cos = Math.cos(a)
      const sin = Math.sin(a)
      return [curve.c[0] + curve.major[0] * cos + n[0] * sin, curve.c[1] + curve.major[1] * cos + n[1] * sin]
    }
    case 'spline': {
      const [x, y, w] = deBoor(curve, splineParameter(curve, t))
      return [x / w, y / w]
    }
  }
}

/** Derivative with respect to t. */
export function derivativeAt(curve: Curve2, t: number): Vec2 {
  switch (curve.kind) {
    case 'line':
      return [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
    case 'arc': {
      const a = curve.from + t * curve.sweep
      return [-curve.r * Math.sin(a) * curve.sweep, curve.r * Math.cos(a) * curve.sweep]
    }
    case 'ellipse': {
      const a = curve.from + t * curve.sweep
      const n = minorOf(curve)
      const cos = Math.cos(a) * curve.sweep
      const sin = Math.sin(a) * curve.sweep
      return [-curve.major[0] * sin + n[0] * cos, -curve.major[1] * sin + n[1] * cos]
    }
    case 'spline': {
      const h = 1e-6
      const lo = Math.max(0, t - h)
      const hi = Math.min(1, t + h)
      const p = pointAt(curve, lo)
      const q = pointAt(curve, hi)
      return [(q[0] - p[0]) / (hi - lo), (q[1] - p[1]) / (hi - lo)]
    }
  }
}

/** Half the minor axis as a vector. */
export function minorOf(e: Ellipse2): Vec2 {
  return [-e.major[1] * e.ratio, e.major[0] * e.ratio]
}

export const startOf = (curve: Curve2): Vec2 => pointAt(curve, 0)
export const endOf = (curve: Curve2): Vec2 => pointAt(curve, 1)

/** Arc length between two parameters; exact for lines and arcs, Gauss-Legendre to about 1e-12 for the rest. */
export function lengthOf(curve: Curve2, from = 0, to = 1): number {
  switch (curve.kind) {
    case 'line':
      return Math.hypot(curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]) * Math.abs(to - from)
    case 'arc':
      return Math.abs(curve.sweep * (to - from)) * curve.r
    case 'ellipse':
      return integrated(curve, from, to, Math.max(2, Math.ceil(Math.abs(curve.sweep * (to - from)) * 4)))
    case 'spline': {
      // at a knot the speed may jump: each span by itself
      const [lo, hi] = from < to ? [from, to] : [to, from]
      const [first, last] = [splineParameter(curve, 0), splineParameter(curve, 1)]
      const knots = curve.knots.map((k) => (k - first) / (last - first)).filter((k) => k > lo && k < hi)
      const stops = [lo, ...new Set(knots), hi]
      return stops.slice(1).reduce((sum, b, i) => sum + integrated(curve, stops[i]!, b, 2 * curve.degree), 0)
    }
  }
}

function integrated(curve: Curve2, from: number, to: number, pieces: number): number {
  let sum = 0
  const step = (to - from) / pieces
  for (let i = 0; i < pieces; i++) {
    const mid = from + (i + 0.5) * step
    for (const [x, w] of GAUSS_5) {
      const d = derivativeAt(curve, mid + (x * step) / 2)
      sum += w * Math.hypot(d[0], d[1])
    }
  }
  return Math.abs((sum * step) / 2)
}

/** Parameter at which the arc length from the start equals `length` (mm). */
export function parameterAtLength(curve: Curve2, length: number): number {
  const whole = lengthOf(curve)
  if (whole === 0) return 0
  let t = Math.min(1, Math.max(0, length / whole))
  if (curve.kind === 'line' || curve.kind === 'arc') return t
  for (let i = 0; i < 30; i++) {
    const error = lengthOf(curve, 0, t) - length
    const d = derivativeAt(curve, t)
    const speed = Math.hypot(d[0], d[1]) || whole
    const next = Math.min(1, Math.max(0, t - error / speed))
    if (Math.abs(next - t) < 1e-14) break
    t = next
  }
  return t
}

/** The piece between two parameters; `t0 > t1` gives it reversed. */
export function piece(curve: Curve2, t0: number, t1: number): Curve2 {
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', a: pointAt(curve, t0), b: pointAt(curve, t1) }
    case 'arc':
    case 'ellipse':
      return { ...curve, from: curve.from + t0 * curve.sweep, sweep: curve.sweep * (t1 - t0) }
    case 'spline': {
      if (t0 > t1) return reversed(piece(curve, t1, t0))
      return trimSpline(curve, splineParameter(curve, t0), splineParameter(curve, t1))
    }
  }
}

export function reversed(curve: Curve2): Curve2 {
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', a: curve.b, b: curve.a }
    case 'arc':
    case 'ellipse':
      return { ...curve, from: curve.from + curve.sweep, sweep: -curve.sweep }
    case 'spline': {
      const last = curve.knots[curve.knots.length - 1]! + curve.knots[0]!
      return {
        ...curve,
        knots: curve.knots.map((k) => last - k).reverse(),
        poles: [...curve.poles].reverse(),
        ...(curve.weights ? { weights: [...curve.weights].reverse() } : {}),
      }
    }
  }
}

/** Scaled about the origin by `scale` (> 0), then moved by `by`. */
export function placed(curve: Curve2, scale: number, by: Vec2): Curve2 {
  const p = (q: Vec2): Vec2 => [q[0] * scale + by[0], q[1] * scale + by[1]]
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', a: p(curve.a), b: p(curve.b) }
    case 'arc':
      return { ...curve, c: p(curve.c), r: curve.r * scale }
    case 'ellipse':
      return { ...curve, c: p(curve.c), major: [curve.major[0] * scale, curve.major[1] * scale] }
    case 'spline':
      return { ...curve, poles: curve.poles.map(p) }
  }
}

export interface Box2 {
  readonly min: Vec2
  readonly max: Vec2
}

/** Tight bounds for lines, arcs and ellipses; the poles' hull for splines. */
export function boxOf(curve: Curve2): Box2 {
  const points: Vec2[] = curve.kind === 'spline' ? [...curve.poles] : [startOf(curve), endOf(curve)]
  if (curve.kind === 'arc' || curve.kind === 'ellipse') {
    const n: Vec2 = curve.kind === 'arc' ? [0, curve.r] : minorOf(curve)
    const m: Vec2 = curve.kind === 'arc' ? [curve.r, 0] : curve.major
    for (const k of [0, 1]) {
      const peak = Math.atan2(n[k]!, m[k]!)
      for (const a of [peak, peak + Math.PI]) {
        const t = sweepParameter(curve.from, curve.sweep, a)
        if (t !== undefined) points.push(pointAt(curve, t))
      }
    }
  }
  return boxOfPoints(points)
}

function boxOfPoints(points: readonly Vec2[]): Box2 {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    if (x < x0) x0 = x
    if (x > x1) x1 = x
    if (y < y0) y0 = y
    if (y > y1) y1 = y
  }
  return { min: [x0, y0], max: [x1, y1] }
}

export function boxOfCurves(curves: readonly Curve2[]): Box2 {
  return boxOfPoints(curves.flatMap((c) => [boxOf(c).min, boxOf(c).max]))
}

/** t in [0, 1] at which a sweep from `from` passes `angle`, or undefined. */
export function sweepParameter(from: number, sweep: number, angle: number): number | undefined {
  if (sweep === 0) return undefined
  const turn = 2 * Math.PI
  let d = (angle - from) * Math.sign(sweep)
  d -= Math.floor(d / turn) * turn
  const t = d / Math.abs(sweep)
  if (t <= 1) return t
  return turn - d < 1e-12 ? 0 : undefined
}

const GAUSS_5: readonly (readonly [number, number])[] = [
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
]

function splineParameter(s: Spline2, t: number): number {
  const a = s.knots[0]!
  return a + t * (s.knots[s.knots.length - 1]! - a)
}

type Homogeneous = [number, number, number]

function homogeneous(s: Spline2): Homogeneous[] {
  return s.poles.map((p, i) => {
    const w = s.weights?.[i] ?? 1
    return [p[0] * w, p[1] * w, w]
  })
}

/** de Boor's algorithm in homogeneous coordinates. */
function deBoor(s: Spline2, u: number): Homogeneous {
  const { degree: p, knots } = s
  let k = p
  while (k < s.poles.length - 1 && u >= knots[k + 1]!) k++
  const d = homogeneous({
    ...s,
    poles: s.poles.slice(k - p, k + 1),
    ...(s.weights ? { weights: s.weights.slice(k - p, k + 1) } : {}),
  })
  for (let r = 1; r <= p; r++) {
    for (let j = p; j >= r; j--) {
      const lo = knots[j + k - p]!
      const span = knots[j + 1 + k - r]! - lo
      const a = span === 0 ? 0 : (u - lo) / span
      d[j] = mix(d[j - 1]!, d[j]!, a)
    }
  }
  return d[p]!
}

function mix(a: Homogeneous, b: Homogeneous, t: number): Homogeneous {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])]
}

/** Trim by raising both ends to full knot multiplicity (Boehm's knot insertion). */
function trimSpline(s: Spline2, u0: number, u1: number): Spline2 {
  let knots = [...s.knots]
  let poles = homogeneous(s)
  const p = s.degree
  const insert = (u: number) => {
    let k = p
    while (k < poles.length - 1 && u >= knots[k + 1]!) k++
    const next: Homogeneous[] = []
    for (let i = 0; i <= poles.length; i++) {
      if (i <= k - p) next.push(poles[i]!)
      else if (i > k) next.push(poles[i - 1]!)
      else {
        const lo = knots[i]!
        const span = knots[i + p]! - lo
        next.push(mix(poles[i - 1]!, poles[i]!, span === 0 ? 0 : (u - lo) / span))
      }
    }
    knots = [...knots.slice(0, k + 1), u, ...knots.slice(k + 1)]
    poles = next
  }
  for (const u of [u0, u1]) {
    const at = u === s.knots[0] || u === s.knots[s.knots.length - 1]
    const have = knots.filter((k) => k === u).length
    for (let i = have; !at && i < p; i++) insert(u)
  }
  const first = knots.indexOf(u0)
  const start = u0 === s.knots[0] ? 0 : first - 1
  const endKnot = knots.lastIndexOf(u1)
  const end = u1 === s.knots[s.knots.length - 1] ? poles.length - 1 : endKnot - p
  const cut = poles.slice(start, end + 1)
  const inner = knots.filter((k) => k > u0 && k < u1)
  const full = (u: number) => Array<number>(p + 1).fill(u)
  const weights = cut.map((h) => h[2])
  return {
    kind: 'spline',
    degree: p,
    knots: [...full(u0), ...inner, ...full(u1)],
    poles: cut.map((h): Vec2 => [h[0] / h[2], h[1] / h[2]]),
    ...(s.weights ? { weights } : {}),
  }
}
