import { type BezierChain, subChain } from '../../geometry/bezier-chain.ts'
import type { Curve2 } from '../../geometry/curve2.ts'
import type { Conic2, Segment2 } from '../../geometry/path2.ts'
import type { Piece } from './split.ts'

const TURN = 2 * Math.PI

/**
 * The unbounded curve that a piece lies on, with numbers that are equal for coincident curves, and the stretch of it
 * that the piece covers.
 */
export interface Carrier {
  readonly kind: 'line' | 'arc' | 'ellipse' | 'spline'
  /** Coincident carriers agree in these to within `slack`, key by key. */
  readonly keys: readonly number[]
  readonly slack: readonly number[]
  /** Stretch covered, a < b; on arcs and ellipses a in [0, 2π). */
  readonly a: number
  readonly b: number
  /** Change of the stretch's parameter that amounts to the line tolerance. */
  readonly step: number
  /** Exact end points, for lines. */
  readonly ends?: readonly [readonly [number, number], readonly [number, number]]
  readonly chain?: BezierChain
}

/** Angle below which two directions are one. */
const SAME_WAY = 1e-8

export function carrierOf(piece: Piece, line: number): Carrier {
  const { track, t0, t1 } = piece
  const { flat } = track
  if (flat.kind === 'segment') return lineCarrier(flat, t0, t1, line)
  if (flat.kind === 'conic') return conicCarrier(flat, t0, t1, line)
  return splineCarrier(track.carrier ?? flat.chain, t0, t1, line)
}

function lineCarrier(s: Segment2, t0: number, t1: number, line: number): Carrier {
  let dx = s.bx - s.ax
  let dy = s.by - s.ay
  const n = Math.hypot(dx, dy)
  dx /= n
  dy /= n
  let angle = Math.atan2(dy, dx)
  if (angle < -0.5e-6) angle += Math.PI
  if (angle >= Math.PI - 0.5e-6) angle -= Math.PI
  const ux = Math.cos(angle)
  const uy = Math.sin(angle)
  const p = at(s, t0)
  const q = at(s, t1)
  const sp = p[0] * ux + p[1] * uy
  const sq = q[0] * ux + q[1] * uy
  const ends = sp <= sq ? ([p, q] as const) : ([q, p] as const)
  const mx = 0.5 * (p[0] + q[0])
  const my = 0.5 * (p[1] + q[1])
  return {
    kind: 'line',
    keys: [angle, my * ux - mx * uy],
    slack: [SAME_WAY, line],
    a: Math.min(sp, sq),
    b: Math.max(sp, sq),
    step: line,
    ends,
  }
}

function at(s: Segment2, t: number): readonly [number, number] {
  if (t === 0) return [s.ax, s.ay]
  if (t === 1) return [s.bx, s.by]
  return [s.ax + t * (s.bx - s.ax), s.ay + t * (s.by - s.ay)]
}

function conicCarrier(q: Conic2, t0: number, t1: number, line: number): Carrier {
  const turn = 0.5 * Math.atan2(2 * (q.ux * q.vx + q.uy * q.vy), q.ux ** 2 + q.uy ** 2 - q.vx ** 2 - q.vy ** 2)
  const c = Math.cos(turn)
  const s = Math.sin(turn)
  const ax = q.ux * c + q.vx * s
  const ay = q.uy * c + q.vy * s
  const bx = q.vx * c - q.ux * s
  const by = q.vy * c - q.uy * s
  const major = Math.hypot(ax, ay)
  const minor = Math.hypot(bx, by)
  const ccw = ax * by - ay * bx >= 0
  let lean = Math.atan2(ay, ax)
  const round = major - minor <= line
  // parameter angle from the major half axis, counter-clockwise
  let from = ccw ? t0 - turn : turn - t1
  if (round) from += lean
  else {
    let flips = 0
    while (lean < -0.5e-6) {
      lean += Math.PI
      flips++
    }
    while (lean >= Math.PI - 0.5e-6) {
      lean -= Math.PI
      flips++
    }
    from += flips * Math.PI
  }
  from -= TURN * Math.floor(from / TURN)
  if (TURN - from < 1e-12) from = 0
  const radius = 0.5 * (major + minor)
  return {
    kind: round ? 'arc' : 'ellipse',
    keys: round ? [q.cx, q.cy, radius] : [q.cx, q.cy, major, minor, lean],
    slack: round ? [line, line, line] : [line, line, line, line, line / (major - minor)],
    a: from,
    b: from + Math.min(t1 - t0, TURN),
    step: line / (round ? radius : major),
  }
}

/** Carrier of a stretch [a, b] (knot parameters) of a spline. */
export function splineCarrier(chain: BezierChain, a: number, b: number, step: number): Carrier {
  return { kind: 'spline', keys: [], slack: [], a, b, step, chain }
}

/** The stretch [a, b] of a carrier as an exact curve. `ends` overrides a line's end points. */
export function curveOn(carrier: Carrier, a: number, b: number, ends: Carrier['ends']): Curve2 {
  const k = carrier.keys
  switch (carrier.kind) {
    case 'line':
      return { kind: 'line', a: ends![0], b: ends![1] }
    case 'arc':
      return { kind: 'arc', c: [k[0]!, k[1]!], r: k[2]!, from: a, sweep: b - a }
    case 'ellipse':
      return {
        kind: 'ellipse',
        c: [k[0]!, k[1]!],
        major: [k[2]! * Math.cos(k[4]!), k[2]! * Math.sin(k[4]!)],
        ratio: k[3]! / k[2]!,
        from: a,
        sweep: b - a,
      }
    case 'spline':
      return splineOf(carrier.chain!, a, b)
  }
}

function splineOf(whole: BezierChain, a: number, b: number): Curve2 {
  const chain = subChain(whole, a, b)
  const { degree, size, breaks, poles } = chain
  const points: [number, number][] = []
  const weights: number[] = []
  const pieces = breaks.length - 1
  for (let k = 0; k < pieces; k++) {
    for (let i = k === 0 ? 0 : 1; i <= degree; i++) {
      const from = (k * (degree + 1) + i) * size
      const w = poles[from + 2]!
      points.push([poles[from]! / w, poles[from + 1]! / w])
      weights.push(w)
    }
  }
  const knots: number[] = []
  breaks.forEach((x, i) => {
    const times = i === 0 || i === pieces ? degree + 1 : degree
    for (let m = 0; m < times; m++) knots.push(x)
  })
  const plain = weights.every((w) => Math.abs(w - weights[0]!) <= 1e-15 * Math.abs(w))
  return { kind: 'spline', degree, knots, poles: points, ...(plain ? {} : { weights }) }
}
