import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import { type Path3, path3At } from './path3.ts'
import { type BezierPiece, bezierPieces } from './path3-pieces.ts'
import type { SplineSheet } from './spline-face.ts'
import { halfGrids, type Patch, patchAt } from './spline-patches.ts'

/** Pairs of a stretch of curve and a piece of surface looked at for one curve and patch at most. */
export const MOST_PAIRS = 4_000
/** A pair this small, by the size of the part, is left to Newton's method. */
const SMALL = 2e-3

/**
 * Parameters at which a space curve passes through a true spline surface. The poles hold a stretch of curve and a piece
 * of surface in their hulls: where the hulls' boxes are apart there is no meeting for certain, others are halved.
 * `size` is that of the part, `looked` counts the pairs.
 */
export function curveThroughSheet(
  path: Path3,
  sheet: SplineSheet,
  size: number,
  out: number[],
  looked = { pairs: 0 },
): void {
  for (const piece of bezierPieces(path)) {
    const c = new Float64Array(piece.w.flatMap((w, i) => [piece.x[i]!, piece.y[i]!, piece.z[i]!, w]))
    for (const patch of sheet.patches) {
      const search: Search = { path, piece, patch, size, left: MOST_PAIRS, out }
      halve(search, c, [0, 1], patch.poles, [0, 1, 0, 1], 0)
      looked.pairs += MOST_PAIRS - search.left
    }
  }
}

interface Search {
  readonly path: Path3
  readonly piece: BezierPiece
  readonly patch: Patch
  readonly size: number
  left: number
  readonly out: number[]
}

type Span = readonly [number, number]
type Cell = readonly [number, number, number, number]

/** Halvings of both together before Newton's method at the latest, and how many may still be open then. */
const DEEPEST = 40

function halve(search: Search, curve: Float64Array, span: Span, grid: Float64Array, cell: Cell, depth: number): void {
  search.left--
  const [a, b] = [boxOf(curve), boxOf(grid)]
  for (let k = 0; k < 3; k++) if (a[k]! > b[k + 3]! || b[k]! > a[k + 3]!) return
  const [la, lb] = [diagonal(a), diagonal(b)]
  if ((la < SMALL * search.size && lb < SMALL * search.size) || depth >= DEEPEST || search.left <= DEEPEST) {
    settle(search, span, cell)
    return
  }
  if (la > lb) {
    const [low, high] = halfGrids(curve, search.piece.w.length - 1, 0, 4, true)
    const mid = 0.5 * (span[0] + span[1])
    halve(search, low, [span[0], mid], grid, cell, depth + 1)
    halve(search, high, [mid, span[1]], grid, cell, depth + 1)
    return
  }
  const { p, q } = search.patch
  const [u0, u1, v0, v1] = cell
  const alongU = u1 - u0 >= v1 - v0
  const [low, high] = halfGrids(grid, p, q, 4, alongU)
  const mid = alongU ? 0.5 * (u0 + u1) : 0.5 * (v0 + v1)
  halve(search, curve, span, low, alongU ? [u0, mid, v0, v1] : [u0, u1, v0, mid], depth + 1)
  halve(search, curve, span, high, alongU ? [mid, u1, v0, v1] : [u0, u1, mid, v1], depth + 1)
}

function boxOf(poles: Float64Array): number[] {
  const out = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]
  for (let i = 0; i < poles.length; i += 4)
    for (let k = 0; k < 3; k++) {
      const x = poles[i + k]! / poles[i + 3]!
      if (x < out[k]!) out[k] = x
      if (x > out[k + 3]!) out[k + 3] = x
    }
  return out
}

const diagonal = (b: readonly number[]) => Math.hypot(b[3]! - b[0]!, b[4]! - b[1]!, b[5]! - b[2]!)

/** Newton's method on the curve's parameter and the surface's two. */
function settle({ path, piece, patch, size, out }: Search, span: Span, [u0, u1, v0, v1]: Cell): void {
  const [lu, lv] = [patch.u1 - patch.u0, patch.v1 - patch.v0]
  let t = piece.at(0.5 * (span[0] + span[1]))
  let u = patch.u0 + 0.5 * (u0 + u1) * lu
  let v = patch.v0 + 0.5 * (v0 + v1) * lv
  const q = [0, 0, 0]
  const way = [0, 0, 0]
  for (let i = 0; i < 30; i++) {
    path3At(path, t, q, way)
    const s = patchAt(patch, u, v)
    const off = sub(s.p, q as unknown as Vec3)
    const run = way as unknown as Vec3
    const normal = cross(s.u, s.v)
    const det = dot(run, normal)
    if (Math.abs(det) <= 1e-14 * norm(run) * norm(normal)) return
    // run dt - Su du - Sv dv = off, by Cramer's rule
    t += dot(off, normal) / det
    u += dot(run, cross(s.v, off)) / det
    v += dot(run, cross(off, s.u)) / det
    if (norm(off) <= 1e-12 * size) break
  }
  path3At(path, t, q)
  const s = patchAt(patch, u, v)
  if (!(norm(sub(s.p, q as unknown as Vec3)) <= 1e-9 * size)) return
  const slack = 0.5
  const within = (x: number, a: number, b: number) => x >= a - slack * (b - a) && x <= b + slack * (b - a)
  if (!within((u - patch.u0) / lu, u0, u1) || !within((v - patch.v0) / lv, v0, v1)) return
  const ends = [piece.at(span[0]), piece.at(span[1])] as const
  if (!within(t, ends[0], ends[1]) || t < path.t0 || t > path.t1) return
  if (!out.some((x) => Math.abs(x - t) <= 1e-10 * (path.t1 - path.t0))) out.push(t)
}
