import { type BezierChain, bezierChain, chainAt } from '../../geometry/bezier-chain.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Curve3 } from '../../kernel/body.ts'

/** Space curves by natural parameter, rising from t0 to t1. The 3D fellow of Path2. */
export type Path3 = Segment3 | Conic3 | Chain3

export interface Segment3 {
  readonly kind: 'segment'
  readonly a: Vec3
  readonly b: Vec3
  readonly t0: number
  readonly t1: number
}

/** point(t) = o + u cos t + v sin t. */
export interface Conic3 {
  readonly kind: 'conic'
  readonly o: Vec3
  readonly u: Vec3
  readonly v: Vec3
  readonly t0: number
  readonly t1: number
}

export interface Chain3 {
  readonly kind: 'chain'
  readonly chain: BezierChain
  readonly t0: number
  readonly t1: number
}

const scaled = (p: Vec3, f: number): Vec3 => [p[0] * f, p[1] * f, p[2] * f]

export function path3Of(curve: Curve3): Path3 {
  switch (curve.kind) {
    case 'line':
      return { kind: 'segment', a: curve.a, b: curve.b, t0: 0, t1: 1 }
    case 'circle':
    case 'ellipse': {
      const { origin, x, y } = curve.axes
      const [p, q] = curve.kind === 'circle' ? [curve.r, curve.r] : [curve.major, curve.minor]
      const sign = curve.sweep < 0 ? -1 : 1
      return {
        kind: 'conic',
        o: origin,
        u: scaled(x, p),
        v: scaled(y, sign * q),
        t0: sign * curve.from,
        t1: sign * curve.from + Math.abs(curve.sweep),
      }
    }
    case 'spline': {
      const chain = bezierChain(curve.degree, curve.knots, curve.poles, curve.weights)
      return { kind: 'chain', chain, t0: chain.breaks[0]!, t1: chain.breaks[chain.breaks.length - 1]! }
    }
  }
}

/** Point into `out`; with `slope`, also the derivative with respect to t. */
export function path3At(path: Path3, t: number, out: number[], slope?: number[]): void {
  switch (path.kind) {
    case 'segment': {
      const { a, b } = path
      for (let k = 0; k < 3; k++) {
        const d = b[k]! - a[k]!
        out[k] = a[k]! + t * d
        if (slope) slope[k] = d
      }
      return
    }
    case 'conic': {
      const c = Math.cos(t)
      const s = Math.sin(t)
      const { o, u, v } = path
      for (let k = 0; k < 3; k++) {
        out[k] = o[k]! + u[k]! * c + v[k]! * s
        if (slope) slope[k] = -u[k]! * s + v[k]! * c
      }
      return
    }
    case 'chain':
      chainAt(path.chain, t, out, slope)
  }
}

/** The same curve in the coordinates of a frame. */
export function localPath(path: Path3, origin: Vec3, x: Vec3, y: Vec3, z: Vec3): Path3 {
  const turn = (p: Vec3): Vec3 => [dot(p, x), dot(p, y), dot(p, z)]
  const place = (p: Vec3): Vec3 => turn([p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]])
  switch (path.kind) {
    case 'segment':
      return { ...path, a: place(path.a), b: place(path.b) }
    case 'conic':
      return { ...path, o: place(path.o), u: turn(path.u), v: turn(path.v) }
    case 'chain': {
      const { chain } = path
      const poles = new Float64Array(chain.poles.length)
      const o = turn(origin)
      for (let i = 0; i < poles.length; i += 4) {
        const w = chain.poles[i + 3]!
        const p = turn([chain.poles[i]!, chain.poles[i + 1]!, chain.poles[i + 2]!])
        for (let k = 0; k < 3; k++) poles[i + k] = p[k]! - w * o[k]!
        poles[i + 3] = w
      }
      return { ...path, chain: { ...chain, poles } }
    }
  }
}

/** Sampling places that no feature of a curve is likely to slip between: the pieces' ends and steps within. */
export function samplePlaces(path: Path3, perPiece: number): number[] {
  const out: number[] = []
  if (path.kind === 'chain') {
    const { breaks } = path.chain
    for (let k = 0; k + 1 < breaks.length; k++)
      for (let i = 0; i < perPiece; i++) out.push(breaks[k]! + ((breaks[k + 1]! - breaks[k]!) * i) / perPiece)
    out.push(breaks[breaks.length - 1]!)
    return out
  }
  const steps = path.kind === 'segment' ? 1 : Math.max(8, Math.ceil((path.t1 - path.t0) * perPiece))
  for (let i = 0; i <= steps; i++) out.push(i === steps ? path.t1 : path.t0 + ((path.t1 - path.t0) * i) / steps)
  return out
}
