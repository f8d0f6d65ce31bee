import type { Vec3 } from '../geometry/vec.ts'
import type { Curve3 } from './body.ts'
import { pointOnCurve } from './evaluate3.ts'

export interface Box3 {
  readonly min: Vec3
  readonly max: Vec3
}

/** Tight bounds of a space curve; of a spline to about 1e-9 of its size. */
export function boxOfCurve3(curve: Curve3): Box3 {
  if (curve.kind === 'spline') return boxOfSpline(curve)
  const points: Vec3[] = [pointOnCurve(curve, 0), pointOnCurve(curve, 1)]
  if (curve.kind !== 'line') {
    const [p, q] = curve.kind === 'circle' ? [curve.r, curve.r] : [curve.major, curve.minor]
    for (const k of [0, 1, 2] as const) {
      const peak = Math.atan2(q * curve.axes.y[k], p * curve.axes.x[k])
      for (const angle of [peak, peak + Math.PI]) {
        const t = withinSweep(curve.from, curve.sweep, angle)
        if (t !== undefined) points.push(pointOnCurve(curve, t))
      }
    }
  }
  return boxOfPoints3(points)
}

/** Samples each span and refines about the furthest samples by golden section. */
function boxOfSpline(curve: Extract<Curve3, { kind: 'spline' }>): Box3 {
  const n = 8 * Math.max(2, curve.poles.length)
  const points = Array.from({ length: n + 1 }, (_, i) => pointOnCurve(curve, i / n))
  const found: Vec3[] = [points[0]!, points[n]!]
  for (const k of [0, 1, 2] as const) {
    for (const sign of [1, -1]) {
      const best = points.reduce((b, p, i) => (sign * p[k] > sign * points[b]![k] ? i : b), 0)
      let [lo, hi] = [Math.max(0, best - 1) / n, Math.min(n, best + 1) / n]
      for (let i = 0; i < 40; i++) {
        const [a, b] = [hi - 0.618033988749895 * (hi - lo), lo + 0.618033988749895 * (hi - lo)]
        if (sign * pointOnCurve(curve, a)[k] > sign * pointOnCurve(curve, b)[k]) hi = b
        else lo = a
      }
      found.push(pointOnCurve(curve, (lo + hi) / 2))
    }
  }
  return boxOfPoints3(found)
}

function withinSweep(from: number, sweep: number, angle: number): number | undefined {
  const turn = 2 * Math.PI
  let d = (angle - from) * Math.sign(sweep)
  d -= Math.floor(d / turn) * turn
  const t = d / Math.abs(sweep)
  return t <= 1 ? t : undefined
}

function boxOfPoints3(points: readonly Vec3[]): Box3 {
  const min: [number, number, number] = [Infinity, Infinity, Infinity]
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const p of points) {
    for (const k of [0, 1, 2] as const) {
      if (p[k] < min[k]) min[k] = p[k]
      if (p[k] > max[k]) max[k] = p[k]
    }
  }
  return { min, max }
}

export function unionOfBoxes(boxes: readonly Box3[]): Box3 {
  return boxOfPoints3(boxes.flatMap((b) => [b.min, b.max]))
}
