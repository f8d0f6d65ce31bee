import { rootsBernstein } from '../../geometry/bernstein.ts'
import { SQUARE } from './edge-tracks.ts'
import type { UV } from './spline-face.ts'
import { halfGrids, type Patch, patchAt } from './spline-patches.ts'

/** A connected outline of a whole spline surface, as places along it in u, v; closed where it comes back to its start. */
export interface OutlineTrace {
  readonly places: readonly UV[]
  readonly closed: boolean
}

/** Halvings of a patch in each direction, at least and at most. */
const LEAST = 2
const DEEPEST = 12
/** Cells looked at in one patch at most; an outline that crosses itself needs some hundreds. */
export const MOST_CELLS = 20_000

/**
 * Outlines of patches given in view coordinates: there the projection's Jacobian, a polynomial in Bernstein form,
 * vanishes. A cell whose coefficients share a sign holds none for certain; any other is halved until the Jacobian rises
 * one way throughout, so that a single curve crosses it from side to side. `look` is called for each cell. After
 * `MOST_CELLS` of a patch the cells left are taken as they are. A patch seen edge-on throughout has no outline but
 * where it meets a patch that is not.
 */
export function outlineTraces(patches: readonly Patch[], look = () => {}): OutlineTrace[] {
  const pieces: (readonly [UV, UV])[] = []
  const sides = new Map<string, SideStretch>()
  const end = patches[patches.length - 1]!
  const domain = [patches[0]!.u0, end.u1, patches[0]!.v0, end.v1] as const
  for (const patch of patches) {
    const f = jacobian(patch)
    const most = Math.max(...f.c.map(Math.abs))
    const scale = areaScale(patch)
    const slack = Math.max(1e-10 * most, 1e-14 * scale)
    const flat = most <= SQUARE * scale
    if (!flat) {
      const search: Search = { patch, slack, left: MOST_CELLS, look, out: pieces }
      cells(search, f, [0, 1, 0, 1], 0)
    }
    for (const side of stillSides(f, patch, flat ? SQUARE * scale : slack, domain, flat)) {
      const other = sides.get(side.key)
      if (!other) sides.set(side.key, side)
      else if (other.sign !== side.sign && other.near(side)) pieces.push(side.ends)
    }
  }
  return joined(pieces, patches)
}

/** A stretch of a patch's side on which the Jacobian vanishes throughout, and its sign just inside: 0 seen edge-on. */
interface SideStretch {
  /** Equal for neighbouring patches, and across a seam. */
  readonly key: string
  readonly sign: number
  readonly ends: readonly [UV, UV]
  readonly near: (other: SideStretch) => boolean
  /** Its middle in the view. */
  readonly middle: readonly [number, number, number]
}

const STRETCHES = 8

/** An outline may run along the line between two patches, or along a seam: each patch by itself sees no change of sign. */
function stillSides(
  f: Grid,
  patch: Patch,
  slack: number,
  domain: readonly [number, number, number, number],
  flat: boolean,
): SideStretch[] {
  const out: SideStretch[] = []
  for (const [alongV, end] of [
    [true, 0],
    [true, 1],
    [false, 0],
    [false, 1],
  ] as const) {
    const n = alongV ? f.q : f.p
    const side = Array.from({ length: n + 1 }, (_, k) =>
      alongV ? f.c[end * f.p * (f.q + 1) + k]! : f.c[k * (f.q + 1) + end * f.q]!,
    )
    if (!side.every((x) => Math.abs(x) <= slack)) continue
    for (let k = 0; k < STRETCHES; k++) {
      const at = (t: number, inside: number): UV => {
        const across = end === 0 ? inside : 1 - inside
        const [a, b] = alongV ? [across, t] : [t, across]
        return [patch.u0 + a * (patch.u1 - patch.u0), patch.v0 + b * (patch.v1 - patch.v0)]
      }
      const mid = (k + 0.5) / STRETCHES
      const x = patchAt(patch, ...at(mid, 1e-3))
      const det = x.u[0] * x.v[1] - x.u[1] * x.v[0]
      if (det === 0 && !flat) continue
      const [u, v] = at(mid, 0)
      // the two ends of the domain are one line where the surface closes
      const place = alongV ? `u${u === domain[1] ? domain[0] : u},${v}` : `v${v === domain[3] ? domain[2] : v},${u}`
      const middle = patchAt(patch, u, v).p
      out.push({
        key: place,
        sign: flat ? 0 : Math.sign(det),
        ends: [at(k / STRETCHES, 0), at((k + 1) / STRETCHES, 0)],
        middle,
        near: (o) => Math.hypot(...middle.map((m, i) => m - o.middle[i]!)) < 1e-6,
      })
    }
  }
  return out
}

interface Grid {
  readonly p: number
  readonly q: number
  readonly c: Float64Array
}

function jacobian(patch: Patch): Grid {
  const component = (k: number): Grid => {
    const c = new Float64Array((patch.p + 1) * (patch.q + 1))
    for (let i = 0; i < c.length; i++) c[i] = patch.poles[4 * i + k]!
    return { p: patch.p, q: patch.q, c }
  }
  const [x, y, w] = [component(0), component(1), component(3)]
  const cross = (a: Grid, b: Grid) =>
    minus(times(slope(a, true), slope(b, false)), times(slope(b, true), slope(a, false)))
  const first = w.c[0]!
  if (w.c.every((k) => Math.abs(k - first) <= 1e-14 * Math.abs(first))) return cross(x, y)
  return plus(plus(times(x, cross(y, w)), times(y, cross(w, x))), times(w, cross(x, y)))
}

/** What the Jacobian would be at most, were the patch seen square on. */
function areaScale({ p, q, poles }: Patch): number {
  let [u, v, w] = [0, 0, 0]
  const step = (a: number, b: number) => {
    const [f, g] = [poles[4 * a + 3]!, poles[4 * b + 3]!]
    return Math.hypot(...[0, 1, 2].map((k) => poles[4 * b + k]! / g - poles[4 * a + k]! / f))
  }
  for (let i = 0; i <= p; i++)
    for (let j = 0; j <= q; j++) {
      const at = i * (q + 1) + j
      w = Math.max(w, Math.abs(poles[4 * at + 3]!))
      if (i < p) u = Math.max(u, step(at, at + q + 1))
      if (j < q) v = Math.max(v, step(at, at + 1))
    }
  return p * u * q * v * w * w
}

/** Whether a patch in view coordinates is seen edge-on throughout. */
export function edgeOn(patch: Patch): boolean {
  return Math.max(...jacobian(patch).c.map(Math.abs)) <= SQUARE * areaScale(patch)
}

function slope({ p, q, c }: Grid, alongU: boolean): Grid {
  const out = new Float64Array(alongU ? p * (q + 1) : (p + 1) * q)
  const [m, n] = alongU ? [p - 1, q] : [p, q - 1]
  for (let i = 0; i <= m; i++)
    for (let j = 0; j <= n; j++)
      out[i * (n + 1) + j] = alongU
        ? p * (c[(i + 1) * (q + 1) + j]! - c[i * (q + 1) + j]!)
        : q * (c[i * (q + 1) + j + 1]! - c[i * (q + 1) + j]!)
  return { p: m, q: n, c: out }
}

function times(a: Grid, b: Grid): Grid {
  const [p, q] = [a.p + b.p, a.q + b.q]
  const c = new Float64Array((p + 1) * (q + 1))
  for (let i = 0; i <= a.p; i++)
    for (let k = 0; k <= b.p; k++) {
      const f = (choose(a.p, i) * choose(b.p, k)) / choose(p, i + k)
      for (let j = 0; j <= a.q; j++)
        for (let l = 0; l <= b.q; l++)
          c[(i + k) * (q + 1) + j + l]! +=
            ((f * choose(a.q, j) * choose(b.q, l)) / choose(q, j + l)) *
            a.c[i * (a.q + 1) + j]! *
            b.c[k * (b.q + 1) + l]!
    }
  return { p, q, c }
}

const plus = (a: Grid, b: Grid): Grid => ({ ...a, c: a.c.map((x, i) => x + b.c[i]!) })
const minus = (a: Grid, b: Grid): Grid => ({ ...a, c: a.c.map((x, i) => x - b.c[i]!) })

function choose(n: number, k: number): number {
  let f = 1
  for (let i = 1; i <= k; i++) f = (f * (n - k + i)) / i
  return f
}

/** Cells are parted beside their middle: there outlines of symmetric shapes run, and would run along the parting. */
const PART = 0.4871

type Cell = readonly [number, number, number, number]

interface Search {
  readonly patch: Patch
  readonly slack: number
  left: number
  readonly look: () => void
  readonly out: (readonly [UV, UV])[]
}

function cells(search: Search, f: Grid, cell: Cell, depth: number): void {
  const { patch, slack } = search
  search.left--
  search.look()
  // where it vanishes along a side without changing sign, that border is the outline itself
  if (f.c.every((x) => x > -slack) || f.c.every((x) => x < slack)) return
  const [a0, a1, b0, b1] = cell
  const oneWay = (g: Grid) => g.c.length > 0 && (g.c.every((x) => x > 0) || g.c.every((x) => x < 0))
  const last = depth >= 2 * DEEPEST || search.left <= 2 * DEEPEST
  const simple = depth >= 2 * LEAST && (oneWay(slope(f, true)) || oneWay(slope(f, false)))
  // in the smallest cells an outline parts the corners: where none does, the surface only comes to a halt
  if (last && !simple && oneSign(corners(f))) return
  const ends = simple || last ? passings(f, patch, cell) : []
  if ((simple && ends.length <= 2) || last) {
    for (let i = 0; i + 1 < ends.length; i += 2) search.out.push([ends[i]!, ends[i + 1]!])
    return
  }
  const alongU = depth % 2 === 0
  const [low, high] = halfGrids(f.c, f.p, f.q, 1, alongU, PART)
  const m = alongU ? a0 + PART * (a1 - a0) : b0 + PART * (b1 - b0)
  cells(search, { ...f, c: low }, alongU ? [a0, m, b0, b1] : [a0, a1, b0, m], depth + 1)
  cells(search, { ...f, c: high }, alongU ? [m, a1, b0, b1] : [a0, a1, m, b1], depth + 1)
}

const oneSign = (c: readonly number[]) => c.every((x) => x > 0) || c.every((x) => x < 0)

function corners({ p, q, c }: Grid): number[] {
  return [c[0]!, c[q]!, c[p * (q + 1)]!, c[c.length - 1]!]
}

/** Where the Jacobian vanishes on the four sides of a cell; a corner counts once. */
function passings(f: Grid, patch: Patch, [a0, a1, b0, b1]: Cell): UV[] {
  const { p, q, c } = f
  const out: UV[] = []
  const add = (s: number, t: number) => {
    const u = patch.u0 + (a0 + s * (a1 - a0)) * (patch.u1 - patch.u0)
    const v = patch.v0 + (b0 + t * (b1 - b0)) * (patch.v1 - patch.v0)
    const [du, dv] = [1e-7 * (a1 - a0) * (patch.u1 - patch.u0), 1e-7 * (b1 - b0) * (patch.v1 - patch.v0)]
    if (!out.some((x) => Math.abs(x[0] - u) <= du && Math.abs(x[1] - v) <= dv)) out.push([u, v])
  }
  const row = (i: number) => [...c.subarray(i * (q + 1), (i + 1) * (q + 1))]
  const column = (j: number) => Array.from({ length: p + 1 }, (_, i) => c[i * (q + 1) + j]!)
  for (const t of rootsBernstein(row(0), 0)) add(0, t)
  for (const s of rootsBernstein(column(0), 0)) add(s, 0)
  for (const t of rootsBernstein(row(p), 0)) add(1, t)
  for (const s of rootsBernstein(column(q), 0)) add(s, 1)
  return out
}

/** Pieces with common ends put together. */
function joined(pieces: readonly (readonly [UV, UV])[], patches: readonly Patch[]): OutlineTrace[] {
  const end = patches[patches.length - 1]!
  const [lu, lv] = [end.u1 - patches[0]!.u0, end.v1 - patches[0]!.v0]
  const same = (a: UV, b: UV) => Math.abs(a[0] - b[0]) <= 1e-9 * lu && Math.abs(a[1] - b[1]) <= 1e-9 * lv
  const left = pieces.filter(([a, b]) => !same(a, b))
  const out: OutlineTrace[] = []
  while (left.length > 0) {
    const line = [...left.pop()!]
    for (const back of [false, true]) {
      if (back) line.reverse()
      for (;;) {
        const tip = line[line.length - 1]!
        const next = left.findIndex(([a, b]) => same(a, tip) || same(b, tip))
        if (next < 0) break
        const [[a, b]] = left.splice(next, 1) as [readonly [UV, UV]]
        line.push(same(a, tip) ? b : a)
      }
    }
    const closed = line.length > 3 && same(line[0]!, line[line.length - 1]!)
    out.push({ places: line, closed })
  }
  return out
}
