import { bezierChain } from '../../geometry/bezier-chain.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { Frame } from '../view.ts'
import type { SplineSurface } from './spline-surface.ts'

/** A Bézier piece of a rational surface over [u0, u1] × [v0, v1]. */
export interface Patch {
  readonly p: number
  readonly q: number
  readonly u0: number
  readonly u1: number
  readonly v0: number
  readonly v1: number
  /** x w, y w, z w, w; row after row in u. */
  readonly poles: Float64Array
}

/** Knots inserted until every patch stands by itself, first along u, then along v. */
export function bezierPatches(s: SplineSurface): Patch[] {
  const columns = s.poles[0]!.length
  const rows = s.poles.map((row, i) =>
    row.flatMap((pole, j) => {
      const w = s.weights?.[i]?.[j] ?? 1
      return [pole[0] * w, pole[1] * w, pole[2] * w, w]
    }),
  )
  const alongU = bezierChain(s.degreeU, s.knotsU, rows)
  const width = 4 * columns + 1
  const out: Patch[] = []
  for (let a = 0; a + 1 < alongU.breaks.length; a++) {
    const strips = Array.from({ length: s.degreeU + 1 }, (_, i) => {
      const from = (a * (s.degreeU + 1) + i) * width
      const row = alongU.poles.subarray(from, from + 4 * columns)
      return bezierChain(
        s.degreeV,
        s.knotsV,
        Array.from({ length: columns }, (_, j) => [...row.subarray(4 * j, 4 * j + 4)]),
      )
    })
    const { breaks } = strips[0]!
    for (let b = 0; b + 1 < breaks.length; b++) {
      const poles = new Float64Array((s.degreeU + 1) * (s.degreeV + 1) * 4)
      strips.forEach((strip, i) => {
        for (let j = 0; j <= s.degreeV; j++)
          for (let k = 0; k < 4; k++)
            poles[4 * (i * (s.degreeV + 1) + j) + k] = strip.poles[(b * (s.degreeV + 1) + j) * 5 + k]!
      })
      out.push({
        p: s.degreeU,
        q: s.degreeV,
        u0: alongU.breaks[a]!,
        u1: alongU.breaks[a + 1]!,
        v0: breaks[b]!,
        v1: breaks[b + 1]!,
        poles,
      })
    }
  }
  return out
}

/** The same patch in view coordinates: to the right, up, towards the eye. */
export function inView(patch: Patch, { right, up, toViewer }: Frame): Patch {
  const poles = new Float64Array(patch.poles.length)
  for (let i = 0; i < poles.length; i += 4) {
    const [x, y, z] = [patch.poles[i]!, patch.poles[i + 1]!, patch.poles[i + 2]!]
    poles[i] = x * right[0] + y * right[1] + z * right[2]
    poles[i + 1] = x * up[0] + y * up[1] + z * up[2]
    poles[i + 2] = x * toViewer[0] + y * toViewer[1] + z * toViewer[2]
    poles[i + 3] = patch.poles[i + 3]!
  }
  return { ...patch, poles }
}

/** Point of a patch with its first and, where asked for, second derivatives, by u and v. */
export interface SurfacePoint {
  readonly p: Vec3
  readonly u: Vec3
  readonly v: Vec3
  readonly uu: Vec3
  readonly uv: Vec3
  readonly vv: Vec3
}

/** Point and derivatives up to the second at u, v. */
export function patchAt(patch: Patch, u: number, v: number): SurfacePoint {
  const { p, q, poles } = patch
  const [lu, lv] = [patch.u1 - patch.u0, patch.v1 - patch.v0]
  const a = basis(p, (u - patch.u0) / lu, lu)
  const b = basis(q, (v - patch.v0) / lv, lv)
  // homogeneous sums for value, u, v, uu, uv, vv
  const h = new Float64Array(24)
  for (let i = 0; i <= p; i++) {
    for (let j = 0; j <= q; j++) {
      const at = 4 * (i * (q + 1) + j)
      const f = [
        a[0][i]! * b[0][j]!,
        a[1][i]! * b[0][j]!,
        a[0][i]! * b[1][j]!,
        a[2][i]! * b[0][j]!,
        a[1][i]! * b[1][j]!,
        a[0][i]! * b[2][j]!,
      ]
      for (let m = 0; m < 6; m++) for (let k = 0; k < 4; k++) h[4 * m + k]! += f[m]! * poles[at + k]!
    }
  }
  const w = h[3]!
  const out: Vec3[] = []
  const value = (m: number, less: readonly (readonly [number, Vec3])[]): Vec3 => {
    const x = [h[4 * m]!, h[4 * m + 1]!, h[4 * m + 2]!]
    for (const [f, d] of less) for (let k = 0; k < 3; k++) x[k]! -= f * d[k]!
    return [x[0]! / w, x[1]! / w, x[2]! / w]
  }
  out.push(value(0, []))
  const [wu, wv, wuu, wuv, wvv] = [h[7]!, h[11]!, h[15]!, h[19]!, h[23]!]
  const point = out[0]!
  const du = value(1, [[wu, point]])
  const dv = value(2, [[wv, point]])
  return {
    p: point,
    u: du,
    v: dv,
    uu: value(3, [
      [2 * wu, du],
      [wuu, point],
    ]),
    uv: value(4, [
      [wu, dv],
      [wv, du],
      [wuv, point],
    ]),
    vv: value(5, [
      [2 * wv, dv],
      [wvv, point],
    ]),
  }
}

/** Bernstein polynomials of degree n at s, with first and second derivatives by a parameter of which [0, 1] spans l. */
function basis(n: number, s: number, l: number): readonly [number[], number[], number[]] {
  const rows: number[][] = [[1]]
  for (let m = 1; m <= n; m++) {
    const before = rows[m - 1]!
    const row = new Array<number>(m + 1).fill(0)
    before.forEach((x, i) => {
      row[i]! += (1 - s) * x
      row[i + 1]! += s * x
    })
    rows.push(row)
  }
  const lower = (m: number, i: number) => rows[m]?.[i] ?? 0
  const first = rows[n]!.map((_, i) => (n < 1 ? 0 : (n * (lower(n - 1, i - 1) - lower(n - 1, i))) / l))
  const second = rows[n]!.map((_, i) =>
    n < 2 ? 0 : (n * (n - 1) * (lower(n - 2, i - 2) - 2 * lower(n - 2, i - 1) + lower(n - 2, i))) / (l * l),
  )
  return [rows[n]!, first, second]
}

/** The two halves of a grid of Bernstein coefficients (`size` numbers each), along u or along v. */
export function halfGrids(
  c: Float64Array,
  p: number,
  q: number,
  size: number,
  alongU: boolean,
): readonly [Float64Array, Float64Array] {
  const low = Float64Array.from(c)
  const high = Float64Array.from(c)
  const n = alongU ? p : q
  const lines = alongU ? q + 1 : p + 1
  for (let line = 0; line < lines; line++) {
    const at = (i: number) => size * (alongU ? i * (q + 1) + line : line * (q + 1) + i)
    for (let r = 1; r <= n; r++) {
      for (let i = n; i >= r; i--)
        for (let k = 0; k < size; k++) low[at(i) + k] = 0.5 * (low[at(i) + k]! + low[at(i - 1) + k]!)
      for (let i = 0; i <= n - r; i++)
        for (let k = 0; k < size; k++) high[at(i) + k] = 0.5 * (high[at(i) + k]! + high[at(i + 1) + k]!)
    }
  }
  return [low, high]
}
