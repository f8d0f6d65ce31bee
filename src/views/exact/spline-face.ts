import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import { bezierPatches, type Patch, patchAt, type SurfacePoint } from './spline-patches.ts'
import type { SplineSurface } from './spline-surface.ts'

export type UV = readonly [number, number]

/** A true spline surface made ready for computing. */
export class SplineSheet {
  readonly patches: readonly Patch[]
  readonly lo: UV
  readonly hi: UV
  /** Mean length in mm of a step of one along u and along v: parameters times this are near to true lengths. */
  readonly scale: UV
  private readonly rows: number
  private readonly columns: number
  private readonly breaksU: readonly number[]
  private readonly breaksV: readonly number[]
  private grid: { readonly u: number; readonly v: number; readonly p: Vec3 }[] | undefined
  private last: UV | undefined

  constructor(spline: SplineSurface) {
    this.patches = bezierPatches(spline)
    const first = this.patches[0]!
    const end = this.patches[this.patches.length - 1]!
    this.lo = [first.u0, first.v0]
    this.hi = [end.u1, end.v1]
    this.columns = this.patches.filter((x) => x.u0 === first.u0).length
    this.rows = this.patches.length / this.columns
    this.breaksU = Array.from({ length: this.rows }, (_, i) => this.patches[i * this.columns]!.u0)
    this.breaksV = Array.from({ length: this.columns }, (_, j) => this.patches[j]!.v0)
    let [su, sv, n] = [0, 0, 0]
    for (const patch of this.patches) {
      for (const [a, b] of [
        [0.2, 0.3],
        [0.7, 0.4],
        [0.5, 0.8],
      ] as const) {
        const x = patchAt(patch, patch.u0 + a * (patch.u1 - patch.u0), patch.v0 + b * (patch.v1 - patch.v0))
        su += norm(x.u)
        sv += norm(x.v)
        n++
      }
    }
    this.scale = [Math.max(su / n, 1e-9), Math.max(sv / n, 1e-9)]
  }

  at(u: number, v: number): SurfacePoint {
    const i = place(this.breaksU, u)
    const j = place(this.breaksV, v)
    return patchAt(this.patches[i * this.columns + j]!, u, v)
  }

  /** Du × Dv, unit; the zero vector where the surface is pinched. */
  normal(x: SurfacePoint): Vec3 {
    const n = cross(x.u, x.v)
    const l = norm(n)
    return l <= 1e-12 * norm(x.u) * norm(x.v) ? [0, 0, 0] : [n[0] / l, n[1] / l, n[2] / l]
  }

  /** Parameters of the surface's point nearest to p; the search begins at `from`, or where it last ended. */
  nearest(p: Vec3, from: UV | undefined = this.last): UV {
    const near = from && this.descend(p, from)
    if (
      near &&
      near.off < 1e-5 * (this.scale[0] * (this.hi[0] - this.lo[0]) + this.scale[1] * (this.hi[1] - this.lo[1]))
    )
      return this.keep(near.uv)
    const starts = this.samples()
      .map((s) => ({ s, d: norm(sub(s.p, p)) }))
      .sort((a, b) => a.d - b.d)
      .slice(0, 4)
    const ends = starts.map(({ s }) => this.descend(p, [s.u, s.v]))
    if (near) ends.push(near)
    return this.keep(ends.reduce((a, b) => (b.off < a.off ? b : a)).uv)
  }

  private keep(uv: UV): UV {
    this.last = uv
    return uv
  }

  private samples() {
    if (!this.grid) {
      this.grid = []
      for (const patch of this.patches) {
        for (let i = 0; i <= 6; i++) {
          for (let j = 0; j <= 6; j++) {
            const u = patch.u0 + ((patch.u1 - patch.u0) * i) / 6
            const v = patch.v0 + ((patch.v1 - patch.v0) * j) / 6
            this.grid.push({ u, v, p: patchAt(patch, u, v).p })
          }
        }
      }
    }
    return this.grid
  }

  /** Newton's method on the squared distance, held within the domain; steps that do not shorten it are halved. */
  private descend(p: Vec3, from: UV): { uv: UV; off: number } {
    let [u, v] = from
    let x = this.at(u, v)
    let off = norm(sub(x.p, p))
    for (let i = 0; i < 50; i++) {
      const r = sub(x.p, p)
      const gu = dot(r, x.u)
      const gv = dot(r, x.v)
      let [a, b, c] = [dot(x.u, x.u) + dot(r, x.uu), dot(x.u, x.v) + dot(r, x.uv), dot(x.v, x.v) + dot(r, x.vv)]
      if (!(a > 0 && a * c - b * b > 1e-9 * a * c)) [a, b, c] = [dot(x.u, x.u), dot(x.u, x.v), dot(x.v, x.v)]
      let det = a * c - b * b
      if (!(det > 1e-12 * a * c)) {
        a += 1e-6 * (a + c) + 1e-300
        c += 1e-6 * (a + c) + 1e-300
        det = a * c - b * b
      }
      // on the rim of the domain a step outwards is a step along the rim
      let du = -(c * gu - b * gv) / det
      let dv = -(a * gv - b * gu) / det
      if ((u <= this.lo[0] && du < 0) || (u >= this.hi[0] && du > 0)) {
        du = 0
        dv = -gv / c
      }
      if ((v <= this.lo[1] && dv < 0) || (v >= this.hi[1] && dv > 0)) {
        dv = 0
        if (du !== 0) du = -gu / a
        if ((u <= this.lo[0] && du < 0) || (u >= this.hi[0] && du > 0)) du = 0
      }
      let f = 1
      let moved = false
      for (let k = 0; k < 12; k++, f *= 0.5) {
        const nu = clamp(u + f * du, this.lo[0], this.hi[0])
        const nv = clamp(v + f * dv, this.lo[1], this.hi[1])
        const next = this.at(nu, nv)
        const d = norm(sub(next.p, p))
        if (d <= off) {
          moved = Math.abs(nu - u) * this.scale[0] + Math.abs(nv - v) * this.scale[1] > 1e-13
          u = nu
          v = nv
          x = next
          off = d
          break
        }
      }
      if (!moved) break
    }
    return { uv: [u, v], off }
  }
}

function place(breaks: readonly number[], x: number): number {
  let lo = 0
  let hi = breaks.length - 1
  while (lo < hi) {
    const mid = (lo + hi + 1) >> 1
    if (breaks[mid]! <= x) lo = mid
    else hi = mid - 1
  }
  return lo
}

function clamp(x: number, lo: number, hi: number): number {
  return x < lo ? lo : Math.min(x, hi)
}
