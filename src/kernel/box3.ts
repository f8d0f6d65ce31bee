import type { Vec3 } from '../geometry/vec.ts'
import type { Curve3 } from './body.ts'
import { pointOnCurve } from './evaluate3.ts'

export interface Box3 {
  readonly min: Vec3
  readonly max: Vec3
}

/** Tight bounds of a space curve; the poles' hull for splines. */
export function boxOfCurve3(curve: Curve3): Box3 {
  if (curve.kind === 'spline') return boxOfPoints3(curve.poles)
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

function withinSweep(from: number, sweep: number, angle: number): number | undefined {
  const turn = 2 * Math.PI
  let d = (angle - from) * Math.sign(sweep)
  d -= Math.floor(d / turn) * turn
  const t = d / Math.abs(sweep)
  return t <= 1 ? t : undefined
}

export function boxOfPoints3(points: readonly Vec3[]): Box3 {
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
