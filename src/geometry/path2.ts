import { type BezierChain, bezierChain, chainAt } from './bezier-chain.ts'
import type { Curve2 } from './curve2.ts'
import { minorOf } from './evaluate.ts'
import { turnInto } from './trig-roots.ts'

/**
 * Plane curves in the shape computing wants: a segment; a conic arc by any two conjugate half diameters; a chain of
 * Bézier pieces. Each has its own natural parameter, rising from t0 to t1.
 */
export type Path2 = Segment2 | Conic2 | Chain2

export interface Segment2 {
  readonly kind: 'segment'
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly t0: 0
  readonly t1: 1
}

/** point(t) = c + u cos t + v sin t, t0 < t1 <= t0 + 2π. */
export interface Conic2 {
  readonly kind: 'conic'
  readonly cx: number
  readonly cy: number
  readonly ux: number
  readonly uy: number
  readonly vx: number
  readonly vy: number
  readonly t0: number
  readonly t1: number
}

export interface Chain2 {
  readonly kind: 'chain'
  readonly chain: BezierChain
  readonly t0: number
  readonly t1: number
}

export function segment2(ax: number, ay: number, bx: number, by: number): Segment2 {
  return { kind: 'segment', ax, ay, bx, by, t0: 0, t1: 1 }
}

export function pathOf(curve: Curve2): Path2 {
  switch (curve.kind) {
    case 'line':
      return segment2(curve.a[0], curve.a[1], curve.b[0], curve.b[1])
    case 'arc':
    case 'ellipse': {
      const u = curve.kind === 'arc' ? ([curve.r, 0] as const) : curve.major
      const v = curve.kind === 'arc' ? ([0, curve.r] as const) : minorOf(curve)
      // a clockwise sweep is the same arc with v turned over and the angles negated
      const sign = curve.sweep < 0 ? -1 : 1
      const from = sign * curve.from
      return {
        kind: 'conic',
        cx: curve.c[0],
        cy: curve.c[1],
        ux: u[0],
        uy: u[1],
        vx: sign * v[0],
        vy: sign * v[1],
        t0: from,
        t1: from + Math.abs(curve.sweep),
      }
    }
    case 'spline': {
      const chain = bezierChain(curve.degree, curve.knots, curve.poles, curve.weights)
      return { kind: 'chain', chain, t0: chain.breaks[0]!, t1: chain.breaks[chain.breaks.length - 1]! }
    }
  }
}

/** Parameter in [0, 1] of the curve that `pathOf` was given, for a natural parameter of the path. */
export function unitParameter(path: Path2, t: number): number {
  return path.kind === 'segment' ? t : (t - path.t0) / (path.t1 - path.t0)
}

export function pathAt(path: Path2, t: number, out: number[]): void {
  switch (path.kind) {
    case 'segment':
      out[0] = path.ax + t * (path.bx - path.ax)
      out[1] = path.ay + t * (path.by - path.ay)
      return
    case 'conic': {
      const c = Math.cos(t)
      const s = Math.sin(t)
      out[0] = path.cx + path.ux * c + path.vx * s
      out[1] = path.cy + path.uy * c + path.vy * s
      return
    }
    case 'chain':
      chainAt(path.chain, t, out)
  }
}

/** Bounds as [x0, y0, x1, y1]: tight for segments and conics, the poles' hull for chains. */
export function pathBox(path: Path2): [number, number, number, number] {
  if (path.kind === 'segment')
    return [
      Math.min(path.ax, path.bx),
      Math.min(path.ay, path.by),
      Math.max(path.ax, path.bx),
      Math.max(path.ay, path.by),
    ]
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity]
  if (path.kind === 'chain') {
    const { poles, size } = path.chain
    for (let i = 0; i < poles.length; i += size) grow(box, poles[i]! / poles[i + 2]!, poles[i + 1]! / poles[i + 2]!)
    return box
  }
  const p = [0, 0]
  const add = (t: number) => {
    pathAt(path, t, p)
    grow(box, p[0]!, p[1]!)
  }
  add(path.t0)
  add(path.t1)
  for (const peak of [Math.atan2(path.vx, path.ux), Math.atan2(path.vy, path.uy)]) {
    for (const angle of [peak, peak + Math.PI]) {
      const t = turnInto(angle, path.t0)
      if (t < path.t1) add(t)
    }
  }
  return box
}

function grow(box: [number, number, number, number], x: number, y: number): void {
  if (x < box[0]) box[0] = x
  if (y < box[1]) box[1] = y
  if (x > box[2]) box[2] = x
  if (y > box[3]) box[3] = y
}
