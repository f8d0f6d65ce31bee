import { pieceCount } from '../../geometry/bezier-chain.ts'
import type { Path3 } from './path3.ts'

/** A rational Bézier piece of a space curve: Bernstein coefficients of x w, y w, z w and w over s in [0, 1]. */
export interface BezierPiece {
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly z: readonly number[]
  readonly w: readonly number[]
  /** The curve's own parameter at s. */
  readonly at: (s: number) => number
}

/** The whole curve as Bézier pieces, conics by quarter turns at most. A stretch of a spline comes with whole pieces. */
export function bezierPieces(path: Path3): BezierPiece[] {
  if (path.kind === 'segment') {
    const { a, b } = path
    return [{ x: [a[0], b[0]], y: [a[1], b[1]], z: [a[2], b[2]], w: [1, 1], at: (s) => s }]
  }
  if (path.kind === 'conic') {
    const count = Math.max(1, Math.ceil((path.t1 - path.t0) / (0.5 * Math.PI) - 1e-9))
    const width = (path.t1 - path.t0) / count
    return Array.from({ length: count }, (_, i) => conicPiece(path, path.t0 + i * width, path.t0 + (i + 1) * width))
  }
  const { chain } = path
  const { degree, breaks, poles } = chain
  return Array.from({ length: pieceCount(chain) }, (_, k) => {
    const of = (j: number) => Array.from({ length: degree + 1 }, (_, i) => poles[4 * (k * (degree + 1) + i) + j]!)
    const [a, b] = [breaks[k]!, breaks[k + 1]!]
    return { x: of(0), y: of(1), z: of(2), w: of(3), at: (s) => a + s * (b - a) }
  })
}

/**
 * An elliptic arc of at most a half turn: its middle pole is where the end tangents meet, with the cosine of half its
 * angle for weight; tan of half the angle from the middle runs evenly with s.
 */
function conicPiece({ o, u, v }: Extract<Path3, { kind: 'conic' }>, a: number, b: number): BezierPiece {
  const mid = 0.5 * (a + b)
  const half = 0.5 * (b - a)
  const weight = Math.cos(half)
  const of = (k: 0 | 1 | 2) => [
    o[k] + u[k] * Math.cos(a) + v[k] * Math.sin(a),
    weight * o[k] + u[k] * Math.cos(mid) + v[k] * Math.sin(mid),
    o[k] + u[k] * Math.cos(b) + v[k] * Math.sin(b),
  ]
  const steep = Math.tan(0.5 * half)
  return { x: of(0), y: of(1), z: of(2), w: [1, weight, 1], at: (s) => mid + 2 * Math.atan(steep * (2 * s - 1)) }
}
