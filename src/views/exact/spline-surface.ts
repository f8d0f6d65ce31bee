import type { Vec3 } from '../../geometry/vec.ts'
import type { Surface3 } from '../../kernel/body.ts'

export type SplineSurface = Extract<Surface3, { kind: 'spline' }>

/** A spline surface ready for evaluation: homogeneous poles and the distinct knots. */
export interface SurfacePatches {
  readonly spline: SplineSurface
  readonly breaksU: readonly number[]
  readonly breaksV: readonly number[]
  /** x w, y w, z w, w; row after row in U. */
  readonly poles: Float64Array
}

export function surfacePatches(spline: SplineSurface): SurfacePatches {
  const { poles, weights, knotsU, knotsV, degreeU, degreeV } = spline
  const columns = poles[0]!.length
  const flat = new Float64Array(poles.length * columns * 4)
  poles.forEach((row, i) => {
    row.forEach((p, j) => {
      const w = weights?.[i]?.[j] ?? 1
      const at = 4 * (i * columns + j)
      flat[at] = p[0] * w
      flat[at + 1] = p[1] * w
      flat[at + 2] = p[2] * w
      flat[at + 3] = w
    })
  })
  return {
    spline,
    breaksU: distinct(knotsU, degreeU, poles.length),
    breaksV: distinct(knotsV, degreeV, columns),
    poles: flat,
  }
}

function distinct(knots: readonly number[], degree: number, count: number): number[] {
  const lo = knots[degree]!
  const hi = knots[count]!
  return [...new Set(knots.filter((k) => k >= lo && k <= hi))]
}

/** Point and first derivatives. */
export function surfaceAt(s: SurfacePatches, u: number, v: number): { p: Vec3; du: Vec3; dv: Vec3 } {
  const { degreeU, degreeV, knotsU, knotsV, poles } = s.spline
  const columns = poles[0]!.length
  const ku = spanAt(knotsU, degreeU, poles.length, u)
  const kv = spanAt(knotsV, degreeV, columns, v)
  const bu = basis(knotsU, degreeU, ku, u)
  const bv = basis(knotsV, degreeV, kv, v)
  const h = [0, 0, 0, 0]
  const hu = [0, 0, 0, 0]
  const hv = [0, 0, 0, 0]
  for (let i = 0; i <= degreeU; i++) {
    for (let j = 0; j <= degreeV; j++) {
      const at = 4 * ((ku - degreeU + i) * columns + (kv - degreeV + j))
      const f = bu.n[i]! * bv.n[j]!
      const fu = bu.d[i]! * bv.n[j]!
      const fv = bu.n[i]! * bv.d[j]!
      for (let k = 0; k < 4; k++) {
        const x = s.poles[at + k]!
        h[k]! += f * x
        hu[k]! += fu * x
        hv[k]! += fv * x
      }
    }
  }
  const w = h[3]!
  const p: Vec3 = [h[0]! / w, h[1]! / w, h[2]! / w]
  return {
    p,
    du: [(hu[0]! - hu[3]! * p[0]) / w, (hu[1]! - hu[3]! * p[1]) / w, (hu[2]! - hu[3]! * p[2]) / w],
    dv: [(hv[0]! - hv[3]! * p[0]) / w, (hv[1]! - hv[3]! * p[1]) / w, (hv[2]! - hv[3]! * p[2]) / w],
  }
}

function spanAt(knots: readonly number[], degree: number, count: number, u: number): number {
  let k = degree
  while (k < count - 1 && u >= knots[k + 1]!) k++
  return k
}

/** Values and first derivatives of the basis functions that do not vanish at u (Cox-de Boor). */
function basis(knots: readonly number[], degree: number, k: number, u: number): { n: number[]; d: number[] } {
  let n = [1]
  let lower = n
  for (let r = 1; r <= degree; r++) {
    const next = new Array<number>(r + 1).fill(0)
    for (let j = 0; j < r; j++) {
      const left = knots[k - r + 1 + j]!
      const right = knots[k + 1 + j]!
      const f = n[j]! / (right - left)
      next[j]! += f * (right - u)
      next[j + 1]! += f * (u - left)
    }
    lower = n
    n = next
  }
  const d = new Array<number>(degree + 1).fill(0)
  for (let j = 0; j < degree; j++) {
    const f = (degree * lower[j]!) / (knots[k + 1 + j]! - knots[k - degree + 1 + j]!)
    d[j]! -= f
    d[j + 1]! += f
  }
  return { n, d }
}
