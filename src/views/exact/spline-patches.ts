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

const h = new Float64Array(24)
const row = new Float64Array(12)

/** Point and derivatives up to the second at u, v. */
export function patchAt(patch: Patch, u: number, v: number): SurfacePoint {
  const { p, q, poles } = patch
  const [lu, lv] = [patch.u1 - patch.u0, patch.v1 - patch.v0]
  basis(p, (u - patch.u0) / lu, lu, alongU)
  basis(q, (v - patch.v0) / lv, lv, alongV)
  // homogeneous sums for value, u, v, uu, uv, vv
  h.fill(0)
  for (let i = 0, at = 0; i <= p; i++) {
    row.fill(0)
    for (let j = 0; j <= q; j++, at += 4) {
      const [b0, b1, b2] = [alongV[j]!, alongV[WIDTH + j]!, alongV[2 * WIDTH + j]!]
      for (let k = 0; k < 4; k++) {
        const x = poles[at + k]!
        row[k]! += b0 * x
        row[4 + k]! += b1 * x
        row[8 + k]! += b2 * x
      }
    }
    const [a0, a1, a2] = [alongU[i]!, alongU[WIDTH + i]!, alongU[2 * WIDTH + i]!]
    for (let k = 0; k < 4; k++) {
      h[k]! += a0 * row[k]!
      h[4 + k]! += a1 * row[k]!
      h[8 + k]! += a0 * row[4 + k]!
      h[12 + k]! += a2 * row[k]!
      h[16 + k]! += a1 * row[4 + k]!
      h[20 + k]! += a0 * row[8 + k]!
    }
  }
  const w = h[3]!
  const point: Vec3 = [h[0]! / w, h[1]! / w, h[2]! / w]
  const du = lessened(1, h[7]!, point, 0, point)
  const dv = lessened(2, h[11]!, point, 0, point)
  return {
    p: point,
    u: du,
    v: dv,
    uu: lessened(3, 2 * h[7]!, du, h[15]!, point),
    uv: plusProduct(lessened(4, h[7]!, dv, h[19]!, point), -h[11]! / w, du),
    vv: lessened(5, 2 * h[11]!, dv, h[23]!, point),
  }
}

/** (sum m - f a - g b) / w: the quotient rule. */
function lessened(m: number, f: number, a: Vec3, g: number, b: Vec3): Vec3 {
  const w = h[3]!
  const at = 4 * m
  return [
    (h[at]! - f * a[0] - g * b[0]) / w,
    (h[at + 1]! - f * a[1] - g * b[1]) / w,
    (h[at + 2]! - f * a[2] - g * b[2]) / w,
  ]
}

function plusProduct(a: Vec3, f: number, b: Vec3): Vec3 {
  return [a[0] + f * b[0], a[1] + f * b[1], a[2] + f * b[2]]
}

/** Highest degree that the kernel's and other files' splines have is 25. */
const WIDTH = 32
const alongU = new Float64Array(3 * WIDTH)
const alongV = new Float64Array(3 * WIDTH)

/**
 * Bernstein polynomials of degree n at s into `out`; from WIDTH and 2 WIDTH their first and second derivatives by a
 * parameter of which [0, 1] spans l.
 */
function basis(n: number, s: number, l: number, out: Float64Array): void {
  out.fill(0)
  out[0] = 1
  for (let m = 1; m <= n; m++) {
    // the rows of degree n - 2 and n - 1 give the derivatives
    if (m === n - 1) for (let i = 0; i <= n; i++) out[2 * WIDTH + i] = second(out, n, i) / (l * l)
    if (m === n) for (let i = 0; i <= n; i++) out[WIDTH + i] = (n * ((i > 0 ? out[i - 1]! : 0) - out[i]!)) / l
    for (let i = m; i >= 0; i--) out[i] = (1 - s) * (i < m ? out[i]! : 0) + s * (i > 0 ? out[i - 1]! : 0)
  }
}

function second(lower: Float64Array, n: number, i: number): number {
  return n * (n - 1) * ((i > 1 ? lower[i - 2]! : 0) - 2 * (i > 0 ? lower[i - 1]! : 0) + lower[i]!)
}

/** The two parts, before and after s, of a grid of Bernstein coefficients (`size` numbers each), along u or along v. */
export function halfGrids(
  c: Float64Array,
  p: number,
  q: number,
  size: number,
  alongU: boolean,
  s = 0.5,
): readonly [Float64Array, Float64Array] {
  const low = Float64Array.from(c)
  const high = Float64Array.from(c)
  const n = alongU ? p : q
  const lines = alongU ? q + 1 : p + 1
  for (let line = 0; line < lines; line++) {
    const at = (i: number) => size * (alongU ? i * (q + 1) + line : line * (q + 1) + i)
    for (let r = 1; r <= n; r++) {
      for (let i = n; i >= r; i--)
        for (let k = 0; k < size; k++) low[at(i) + k] = s * low[at(i) + k]! + (1 - s) * low[at(i - 1) + k]!
      for (let i = 0; i <= n - r; i++)
        for (let k = 0; k < size; k++) high[at(i) + k] = (1 - s) * high[at(i) + k]! + s * high[at(i + 1) + k]!
    }
  }
  return [low, high]
}
