import Flatbush from 'flatbush'
import type { Vec2 } from '../../geometry/vec.ts'
import type { StrokeKind } from '../sheet.ts'

// Plane geometry of the audit; the placer has its own, so that neither can hide a fault of the other.

export interface Piece {
  readonly a: Vec2
  readonly b: Vec2
  readonly kind: StrokeKind
  readonly owner: string | undefined
  readonly straight: boolean
}

export interface Head {
  readonly points: readonly Vec2[]
  readonly tip: Vec2
  readonly owner: string | undefined
}

export function onSegment(p: Vec2, s: Piece): boolean {
  const l = distance(s.a, s.b)
  if (l < 1e-9) return same(p, s.a)
  const t = ((p[0] - s.a[0]) * (s.b[0] - s.a[0]) + (p[1] - s.a[1]) * (s.b[1] - s.a[1])) / l
  return Math.abs(area(s.a, s.b, p)) / l < 0.05 && t > -0.05 && t < l + 0.05
}

export function bounds(points: readonly Vec2[]): readonly [number, number, number, number] {
  const xs = points.map((p) => p[0])
  const ys = points.map((p) => p[1])
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
}

export function indexOf(pieces: readonly Piece[]): Flatbush | undefined {
  if (pieces.length === 0) return undefined
  const index = new Flatbush(pieces.length)
  for (const p of pieces) index.add(...bounds([p.a, p.b]))
  index.finish()
  return index
}

export const distance = (a: Vec2, b: Vec2) => Math.hypot(a[0] - b[0], a[1] - b[1])
export const same = (a: Vec2, b: Vec2) => distance(a, b) < 0.1
export const centre = (points: readonly Vec2[]): Vec2 => [
  points.reduce((s, p) => s + p[0], 0) / points.length,
  points.reduce((s, p) => s + p[1], 0) / points.length,
]
export const order = (p: Piece, q: Piece) => p.a[0] > q.a[0] || (p.a[0] === q.a[0] && p.a[1] > q.a[1])
const area = (a: Vec2, b: Vec2, c: Vec2) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

export function crosses(a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean {
  const [ac, ad] = [distance(a, c), distance(a, d)]
  const along = Math.abs(area(a, b, c)) + Math.abs(area(a, b, d)) < 1e-6
  if (along) return Math.min(ac, ad) < distance(a, b)
  return area(a, b, c) * area(a, b, d) <= 0 && area(c, d, a) * area(c, d, b) <= 0
}

/** Crossing in both interiors, more than 0.15 mm from any end and not along one another. */
export function properCrossing(p: Piece, q: Piece): boolean {
  const away = (x: number, l: number) => Math.abs(x) / l
  const lp = distance(p.a, p.b)
  const lq = distance(q.a, q.b)
  if (lp < 1e-6 || lq < 1e-6) return false
  const [s1, s2] = [area(p.a, p.b, q.a), area(p.a, p.b, q.b)]
  const [t1, t2] = [area(q.a, q.b, p.a), area(q.a, q.b, p.b)]
  if (s1 * s2 >= 0 || t1 * t2 >= 0) return false
  // Curves are cut into short pieces: their ends are not ends of the line.
  const least = (straight: boolean) => (straight ? 0.15 : 0)
  return (
    Math.min(away(s1, lp), away(s2, lp)) > least(q.straight) && Math.min(away(t1, lq), away(t2, lq)) > least(p.straight)
  )
}

export function besides(p: Piece, q: Piece): { distance: number; overlap: number } | undefined {
  const l = distance(p.a, p.b)
  if (l < 0.5) return undefined
  const u: Vec2 = [(p.b[0] - p.a[0]) / l, (p.b[1] - p.a[1]) / l]
  const off = (r: Vec2) => (r[0] - p.a[0]) * u[1] - (r[1] - p.a[1]) * u[0]
  if (Math.abs(off(q.a) - off(q.b)) > 0.01 * distance(q.a, q.b)) return undefined
  const at = (r: Vec2) => (r[0] - p.a[0]) * u[0] + (r[1] - p.a[1]) * u[1]
  const [s, e] = [at(q.a), at(q.b)]
  return { distance: Math.abs(off(q.a)), overlap: Math.min(l, Math.max(s, e)) - Math.max(0, Math.min(s, e)) }
}

export function collinear(p: Piece, q: Piece): boolean {
  const l = distance(p.a, p.b)
  return Math.abs(area(p.a, p.b, q.a)) / l < 0.05 && Math.abs(area(p.a, p.b, q.b)) / l < 0.05
}

export function touchesEnd(q: Piece, end: Vec2): boolean {
  const l = distance(q.a, q.b)
  const s = ((end[0] - q.a[0]) * (q.b[0] - q.a[0]) + (end[1] - q.a[1]) * (q.b[1] - q.a[1])) / l
  // An extension line broken for an arrowhead goes on within a few millimetres.
  return s > -6 && s < l + 6
}

export function alongAxis(p: Piece, h: Head): boolean {
  const c = centre(h.points)
  const l = distance(p.a, p.b)
  return Math.abs(area(p.a, p.b, h.tip)) / l < 0.1 && Math.abs(area(p.a, p.b, c)) / l < 0.1
}

/** Depth to which two convex polygons overlap exceeds `depth` (separating axes). */
export function convexOverlap(a: readonly Vec2[], b: readonly Vec2[], depth: number): boolean {
  for (const [p, q] of [
    [a, b],
    [b, a],
  ] as const) {
    for (let i = 0; i < p.length; i++) {
      const [x, y] = p[i]!
      const [u, v] = p[(i + 1) % p.length]!
      const l = Math.hypot(u - x, v - y)
      if (l < 1e-9) continue
      const n: Vec2 = [(v - y) / l, (x - u) / l]
      const on = (r: Vec2) => r[0] * n[0] + r[1] * n[1]
      const [pa, pb] = [p.map(on), q.map(on)]
      if (Math.min(Math.max(...pa) - Math.min(...pb), Math.max(...pb) - Math.min(...pa)) <= depth) return false
    }
  }
  return true
}

/** The segment runs inside the convex polygon, deeper than `depth`. */
export function segmentInConvex(a: Vec2, b: Vec2, polygon: readonly Vec2[], depth: number): boolean {
  const turn = polygon.reduce((s, p, i) => s + area([0, 0], p, polygon[(i + 1) % polygon.length]!), 0) > 0 ? 1 : -1
  let [lo, hi] = [0, 1]
  for (let i = 0; i < polygon.length; i++) {
    const p = polygon[i]!
    const q = polygon[(i + 1) % polygon.length]!
    const l = distance(p, q)
    if (l < 1e-9) continue
    const d0 = (turn * area(p, q, a)) / l - depth
    const d1 = (turn * area(p, q, b)) / l - depth
    if (d0 <= 0 && d1 <= 0) return false
    if (d0 < 0) lo = Math.max(lo, d0 / (d0 - d1))
    else if (d1 < 0) hi = Math.min(hi, d0 / (d0 - d1))
  }
  return lo < hi - 1e-9
}
