import type { Frame } from '../view.ts'
import type { SplineSheet } from './spline-face.ts'
import { edgeOn } from './spline-outlines.ts'
import { halfGrids, inView, type Patch, patchAt } from './spline-patches.ts'

/** A meeting of a line of sight with a spline surface. */
export interface SheetHit {
  readonly u: number
  readonly v: number
  /** Depth towards the eye. */
  readonly depth: number
  /** cos between Du × Dv and the direction to the eye. */
  readonly facing: number
}

/** Halvings of a patch at most: then it is 1/4096 of its parameters wide, and Newton's method does the rest. */
const DEEPEST = 24
/** Pieces looked at for one line of sight and patch at most: a line within the surface would be met everywhere on it. */
export const MOST_PIECES = 4_000

/**
 * Lines of sight through a spline surface in one view. A patch's poles hold it in their hull, so a patch whose poles all
 * lie to one side of the line is left out for certain; what remains is halved until Newton's method settles it, or until
 * `MOST_PIECES` are looked at. Patches seen edge-on throughout stop nothing.
 */
export class SheetSight {
  private readonly patches: readonly {
    readonly patch: Patch
    readonly box: readonly [number, number, number, number]
  }[]
  /** Left, lower, right and upper bounds and the depth nearest to the eye. */
  readonly bounds: readonly [number, number, number, number, number]
  private left = 0

  constructor(sheet: SplineSheet, frame: Frame) {
    const all: [number, number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity, -Infinity]
    this.patches = sheet.patches.flatMap((raw) => {
      const patch = inView(raw, frame)
      const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity]
      for (let i = 0; i < patch.poles.length; i += 4) {
        const w = patch.poles[i + 3]!
        const [x, y, z] = [patch.poles[i]! / w, patch.poles[i + 1]! / w, patch.poles[i + 2]! / w]
        box[0] = Math.min(box[0], x)
        box[1] = Math.min(box[1], y)
        box[2] = Math.max(box[2], x)
        box[3] = Math.max(box[3], y)
        all[4] = Math.max(all[4], z)
      }
      for (const k of [0, 1] as const) all[k] = Math.min(all[k], box[k])
      for (const k of [2, 3] as const) all[k] = Math.max(all[k], box[k])
      return edgeOn(patch) ? [] : [{ patch, box }]
    })
    this.bounds = all
  }

  /** All meetings at a place of the view; `looked` counts the pieces. */
  hits(x: number, y: number, looked = { pieces: 0 }): SheetHit[] {
    const out: SheetHit[] = []
    for (const { patch, box } of this.patches) {
      if (x < box[0] || y < box[1] || x > box[2] || y > box[3]) continue
      const { p, q, poles } = patch
      const c = new Float64Array((p + 1) * (q + 1) * 2)
      for (let i = 0; i < (p + 1) * (q + 1); i++) {
        c[2 * i] = poles[4 * i]! - x * poles[4 * i + 3]!
        c[2 * i + 1] = poles[4 * i + 1]! - y * poles[4 * i + 3]!
      }
      this.left = MOST_PIECES
      this.search(patch, x, y, c, [0, 1, 0, 1], 0, out)
      looked.pieces += MOST_PIECES - this.left
    }
    return out
  }

  private search(
    patch: Patch,
    x: number,
    y: number,
    c: Float64Array,
    [a0, a1, b0, b1]: readonly [number, number, number, number],
    depth: number,
    out: SheetHit[],
  ): void {
    this.left--
    const count = (patch.p + 1) * (patch.q + 1)
    for (const k of [0, 1]) {
      let lo = Infinity
      let hi = -Infinity
      for (let i = 0; i < count; i++) {
        lo = Math.min(lo, c[2 * i + k]!)
        hi = Math.max(hi, c[2 * i + k]!)
      }
      if (lo > 0 || hi < 0) return
    }
    if (depth >= DEEPEST || this.left <= DEEPEST || this.single(patch, c)) {
      this.settle(patch, x, y, 0.5 * (a0 + a1), 0.5 * (b0 + b1), [a0, a1, b0, b1], out)
      return
    }
    const alongU = depth % 2 === 0
    const [low, high] = halfGrids(c, patch.p, patch.q, 2, alongU)
    const m = alongU ? 0.5 * (a0 + a1) : 0.5 * (b0 + b1)
    this.search(patch, x, y, low, alongU ? [a0, m, b0, b1] : [a0, a1, b0, m], depth + 1, out)
    this.search(patch, x, y, high, alongU ? [m, a1, b0, b1] : [a0, a1, m, b1], depth + 1, out)
  }

  /**
   * Whether the piece is so nearly a parallelogram that it can be met but once: every step between neighbouring poles
   * strays from the mean step by less than a tenth of the mean parallelogram's width.
   */
  private single({ p, q }: Patch, c: Float64Array): boolean {
    const at = (i: number, j: number, k: number) => c[2 * (i * (q + 1) + j) + k]!
    const mean = (k: number, alongU: boolean) =>
      alongU
        ? (at(p, 0, k) + at(p, q, k) - at(0, 0, k) - at(0, q, k)) / (2 * p)
        : (at(0, q, k) + at(p, q, k) - at(0, 0, k) - at(p, 0, k)) / (2 * q)
    const u = [mean(0, true), mean(1, true)] as const
    const v = [mean(0, false), mean(1, false)] as const
    const det = Math.abs(u[0] * v[1] - u[1] * v[0])
    const [lu, lv] = [Math.hypot(...u), Math.hypot(...v)]
    if (!(det > 0)) return false
    // width of the parallelogram across each of its sides
    const [wu, wv] = [(0.1 * det) / lv, (0.1 * det) / lu]
    for (let i = 0; i <= p; i++) {
      for (let j = 0; j <= q; j++) {
        if (i < p && Math.hypot(at(i + 1, j, 0) - at(i, j, 0) - u[0], at(i + 1, j, 1) - at(i, j, 1) - u[1]) > wu)
          return false
        if (j < q && Math.hypot(at(i, j + 1, 0) - at(i, j, 0) - v[0], at(i, j + 1, 1) - at(i, j, 1) - v[1]) > wv)
          return false
      }
    }
    return true
  }

  private settle(
    patch: Patch,
    x: number,
    y: number,
    a: number,
    b: number,
    within: readonly [number, number, number, number],
    out: SheetHit[],
  ): void {
    const [lu, lv] = [patch.u1 - patch.u0, patch.v1 - patch.v0]
    let [u, v] = [patch.u0 + a * lu, patch.v0 + b * lv]
    let at = patchAt(patch, u, v)
    for (let i = 0; i < 30; i++) {
      const [ex, ey] = [x - at.p[0], y - at.p[1]]
      const det = at.u[0] * at.v[1] - at.u[1] * at.v[0]
      if (det === 0) break
      const du = (ex * at.v[1] - ey * at.v[0]) / det
      const dv = (at.u[0] * ey - at.u[1] * ex) / det
      // no further than the piece is wide: beside a fold the full step leads astray
      const wide = Math.max(
        1,
        Math.abs(du) / ((within[1] - within[0]) * lu),
        Math.abs(dv) / ((within[3] - within[2]) * lv),
      )
      u += du / wide
      v += dv / wide
      at = patchAt(patch, u, v)
      if (Math.abs(du) <= 1e-15 * lu + 1e-16 * Math.abs(u) && Math.abs(dv) <= 1e-15 * lv + 1e-16 * Math.abs(v)) break
    }
    // a meeting on the line between two pieces is found by one of them, or by both
    const slack = 1e-9 + 1e-6 * (within[1] - within[0] + within[3] - within[2])
    const [s, t] = [(u - patch.u0) / lu, (v - patch.v0) / lv]
    if (s < within[0] - slack || s > within[1] + slack || t < within[2] - slack || t > within[3] + slack) return
    const n = [
      at.u[1] * at.v[2] - at.u[2] * at.v[1],
      at.u[2] * at.v[0] - at.u[0] * at.v[2],
      at.u[0] * at.v[1] - at.u[1] * at.v[0],
    ] as const
    const size = Math.hypot(...n)
    const facing = size === 0 ? 0 : n[2] / size
    if (Math.hypot(x - at.p[0], y - at.p[1]) > 1e-8 * (1 + Math.abs(x) + Math.abs(y))) return
    const known = out.some((h) => Math.abs(h.u - u) <= 1e-8 * lu && Math.abs(h.v - v) <= 1e-8 * lv)
    if (!known) out.push({ u, v, depth: at.p[2], facing })
  }
}
