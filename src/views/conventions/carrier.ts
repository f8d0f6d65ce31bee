import type { Arc2, Curve2, Ellipse2, Line2, Spline2 } from '../../geometry/curve2.ts'
import { type Box2, boxOf, endOf, lengthOf, minorOf, piece, pointAt, startOf } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Interval } from './intervals.ts'
import { nearest } from './nearest.ts'

/**
 * The endless curve that a drawn curve lies on: a straight line, a whole circle or a whole ellipse. Stretches along it
 * are intervals: mm along a straight line, radians along a circle or ellipse, t along a spline.
 */
export type Carrier =
  | { readonly kind: 'line'; readonly origin: Vec2; readonly along: Vec2 }
  | { readonly kind: 'circle'; readonly arc: Arc2 }
  | { readonly kind: 'ellipse'; readonly ellipse: Ellipse2 }
  | { readonly kind: 'spline'; readonly spline: Spline2; readonly closed: boolean }

function carrierOf(curve: Curve2): Carrier {
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', origin: curve.a, along: direction(curve) }
    case 'arc':
      return { kind: 'circle', arc: { ...curve, from: 0, sweep: 2 * Math.PI } }
    case 'ellipse':
      return { kind: 'ellipse', ellipse: { ...curve, from: 0, sweep: 2 * Math.PI } }
    case 'spline': {
      const a = startOf(curve)
      const b = endOf(curve)
      return { kind: 'spline', spline: curve, closed: Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-9 }
    }
  }
}

/** Length after which the carrier comes round to its start; undefined where it does not. */
export function periodOf(carrier: Carrier): number | undefined {
  return carrier.kind === 'circle' || carrier.kind === 'ellipse' ? 2 * Math.PI : undefined
}

/** How far along the carrier `mm` reaches, at most. */
export function reachOf(carrier: Carrier, mm: number): number {
  switch (carrier.kind) {
    case 'line':
      return mm
    case 'circle':
      return mm / carrier.arc.r
    case 'ellipse': {
      const n = minorOf(carrier.ellipse)
      return mm / Math.min(Math.hypot(...carrier.ellipse.major), Math.hypot(...n))
    }
    case 'spline':
      return mm / roughLength(carrier.spline)
  }
}

/** The stretch of the carrier that `curve` covers, or undefined where the curve strays from it by more than `tolerance` mm. */
function intervalOn(carrier: Carrier, curve: Curve2, tolerance: number): Interval | undefined {
  switch (carrier.kind) {
    case 'line': {
      if (curve.kind !== 'line') return undefined
      const a = alongLine(carrier.origin, carrier.along, curve.a)
      const b = alongLine(carrier.origin, carrier.along, curve.b)
      if (Math.abs(a.off) > tolerance || Math.abs(b.off) > tolerance) return undefined
      return ordered(a.on, b.on)
    }
    case 'circle': {
      if (curve.kind !== 'arc') return undefined
      const { c, r } = carrier.arc
      if (Math.hypot(curve.c[0] - c[0], curve.c[1] - c[1]) + Math.abs(curve.r - r) > tolerance) return undefined
      return ordered(curve.from, curve.from + curve.sweep)
    }
    case 'ellipse':
      return curve.kind === 'ellipse' ? intervalOnEllipse(carrier.ellipse, curve, tolerance) : undefined
    case 'spline': {
      if (curve.kind !== 'spline' || !isWithin(boxOf(carrier.spline), startOf(curve), tolerance)) return undefined
      const on = [0, 0.23, 0.5, 0.77, 1].map((t) => nearest(carrier.spline, pointAt(curve, t)))
      if (on.some((n) => n.distance > tolerance)) return undefined
      return ordered(on[0]!.t, on[4]!.t === on[0]!.t ? 1 : on[4]!.t)
    }
  }
}

/** The curve over an interval of the carrier. */
export function curveOn(carrier: Carrier, interval: Interval): Curve2 {
  switch (carrier.kind) {
    case 'line': {
      const at = (s: number): Vec2 => [
        carrier.origin[0] + s * carrier.along[0],
        carrier.origin[1] + s * carrier.along[1],
      ]
      return { kind: 'line', a: at(interval.from), b: at(interval.to) }
    }
    case 'circle':
      return { ...carrier.arc, from: interval.from, sweep: interval.to - interval.from }
    case 'ellipse':
      return { ...carrier.ellipse, from: interval.from, sweep: interval.to - interval.from }
    case 'spline':
      return interval.from <= 0 && interval.to >= 1 ? carrier.spline : piece(carrier.spline, interval.from, interval.to)
  }
}

export interface Group<T> {
  readonly carrier: Carrier
  readonly members: readonly { readonly item: T; readonly on: Interval }[]
}

/** Items whose curves lie on one carrier come together; the longest gives the carrier, so that short pieces do not tilt it. */
export function groupedByCarrier<T extends { readonly curve: Curve2 }>(
  items: readonly T[],
  tolerance: number,
): Group<T>[] {
  const byLength = items
    .map((item, order) => ({ item, order, length: roughLength(item.curve) }))
    .filter((entry) => entry.length > tolerance)
    .sort((a, b) => b.length - a.length || a.order - b.order)
  const groups: { carrier: Carrier; order: number; members: { item: T; on: Interval }[] }[] = []
  for (const { item, order } of byLength) {
    let home = false
    for (const group of groups) {
      const on = intervalOn(group.carrier, item.curve, tolerance)
      if (!on) continue
      group.members.push({ item, on })
      group.order = Math.min(group.order, order)
      home = true
      break
    }
    if (home) continue
    const carrier = carrierOf(item.curve)
    const on = intervalOn(carrier, item.curve, tolerance)
    if (on) groups.push({ carrier, order, members: [{ item, on }] })
  }
  return groups.sort((a, b) => a.order - b.order)
}

/** Length, for splines that of their control polygon: enough to rank curves and to tell nothing from something. */
function roughLength(curve: Curve2): number {
  if (curve.kind === 'ellipse') return Math.hypot(...curve.major) * Math.abs(curve.sweep)
  if (curve.kind !== 'spline') return lengthOf(curve)
  return curve.poles
    .slice(1)
    .reduce((sum, p, i) => sum + Math.hypot(p[0] - curve.poles[i]![0], p[1] - curve.poles[i]![1]), 0)
}

const isWithin = ({ min, max }: Box2, p: Vec2, by: number) =>
  p[0] >= min[0] - by && p[0] <= max[0] + by && p[1] >= min[1] - by && p[1] <= max[1] + by

const ordered = (a: number, b: number): Interval => (a <= b ? { from: a, to: b } : { from: b, to: a })

function direction(line: Line2): Vec2 {
  const d: Vec2 = [line.b[0] - line.a[0], line.b[1] - line.a[1]]
  const length = Math.hypot(...d) || 1
  return [d[0] / length, d[1] / length]
}

function alongLine(origin: Vec2, along: Vec2, p: Vec2): { on: number; off: number } {
  const d: Vec2 = [p[0] - origin[0], p[1] - origin[1]]
  return { on: d[0] * along[0] + d[1] * along[1], off: d[1] * along[0] - d[0] * along[1] }
}

function intervalOnEllipse(whole: Ellipse2, curve: Ellipse2, tolerance: number): Interval | undefined {
  if (Math.hypot(curve.c[0] - whole.c[0], curve.c[1] - whole.c[1]) > tolerance) return undefined
  const on = [0, 0.31, 0.5, 0.69].map((t) => nearest(whole, pointAt(curve, t)))
  if (on.some((n) => n.distance > tolerance)) return undefined
  const [a, b] = [on[0]!.t * 2 * Math.PI, nearest(whole, pointAt(curve, 0.001)).t * 2 * Math.PI]
  let way = b - a
  if (way > Math.PI) way -= 2 * Math.PI
  if (way < -Math.PI) way += 2 * Math.PI
  // Parameter angles of one ellipse written with other axes differ by a constant, so the sweep carries over.
  return way > 0 ? { from: a, to: a + Math.abs(curve.sweep) } : { from: a - Math.abs(curve.sweep), to: a }
}
