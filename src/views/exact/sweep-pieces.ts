import { intoRange } from '../../geometry/bezier-chain.ts'
import { rootsDegree1, turnInto } from '../../geometry/trig-roots.ts'
import { type Path3, path3At, samplePlaces } from './path3.ts'

/**
 * A stretch of a face's border on which the sweep coordinate only rises or only falls. The sweep coordinate of a point
 * in the face's own frame is x on a plane and the angle about z on a surface of revolution.
 */
export interface SweepPiece {
  readonly edge: number
  readonly path: Path3
  readonly t0: number
  readonly t1: number
  /** Sweep coordinates, lo < hi; equal on a stretch along which it stands still. */
  lo: number
  hi: number
  readonly rising: boolean
}

export type Sweep = 'x' | 'angle'

function sweepAt(sweep: Sweep, p: readonly number[]): number {
  return sweep === 'x' ? p[0]! : Math.atan2(p[1]!, p[0]!)
}

/** Cuts a border curve (in the face's frame) into sweep pieces. `still` is the least change that counts. */
export function sweepPieces(sweep: Sweep, edge: number, path: Path3, still: number): SweepPiece[] {
  const least = 1e-12 * (path.t1 - path.t0)
  const turns = turningPlaces(sweep, path).filter((t) => t > path.t0 + least && t < path.t1 - least)
  const stops = [path.t0, ...turns.sort((a, b) => a - b), path.t1]
  const out: SweepPiece[] = []
  const p = [0, 0, 0]
  let from = path.t0
  for (let i = 1; i < stops.length; i++) {
    const to = stops[i]!
    if (to - from <= least) continue
    path3At(path, 0.5 * (from + to), p)
    const mid = sweepAt(sweep, p)
    const near = (t: number) => {
      path3At(path, t, p)
      if (sweep === 'x') return p[0]!
      if (Math.hypot(p[0]!, p[1]!) < 1e-12) return mid
      const s = Math.atan2(p[1]!, p[0]!)
      if (Math.abs(s) < Math.PI - 1e-9) return s
      // on the half plane where the angle jumps, the inside of the piece tells which side is meant
      if (Math.abs(mid) > Math.PI / 2) return Math.sign(mid) * Math.PI
      path3At(path, t + 1e-4 * (0.5 * (from + to) - t), p)
      return Math.atan2(p[1]!, p[0]!) < 0 ? -Math.PI : Math.PI
    }
    const a = near(from)
    const b = near(to)
    const standing = Math.abs(a - b) <= still && Math.abs(mid - 0.5 * (a + b)) <= still
    const lo = standing ? 0.5 * (a + b) : Math.min(a, b)
    out.push({ edge, path, t0: from, t1: to, lo, hi: standing ? lo : Math.max(a, b), rising: b > a })
    from = to
  }
  return out
}

/** Places where the sweep coordinate turns back, and where an angle passes ±π. */
function turningPlaces(sweep: Sweep, path: Path3): number[] {
  const out: number[] = []
  if (path.kind === 'segment') {
    if (sweep === 'x') return out
    const { a, b } = path
    if (a[1] < 0 !== b[1] < 0) {
      const t = a[1] / (a[1] - b[1])
      if (a[0] + t * (b[0] - a[0]) < 0) out.push(t)
    }
    return out
  }
  if (path.kind === 'conic') {
    const { o, u, v } = path
    const add = (angle: number) => {
      const t = turnInto(angle, path.t0)
      if (t < path.t1) out.push(t)
    }
    if (sweep === 'x') {
      const peak = Math.atan2(v[0], u[0])
      add(peak)
      add(peak + Math.PI)
      return out
    }
    const ov = o[0] * v[1] - o[1] * v[0]
    const ou = o[0] * u[1] - o[1] * u[0]
    const uv = u[0] * v[1] - u[1] * v[0]
    for (const angle of rootsDegree1(ov, -ou, -uv) ?? []) add(angle)
    for (const angle of rootsDegree1(u[1], v[1], -o[1]) ?? [])
      if (o[0] + u[0] * Math.cos(angle) + v[0] * Math.sin(angle) < 0) add(angle)
    return out
  }
  const p = [0, 0, 0]
  const d = [0, 0, 0]
  const slope = (t: number) => {
    path3At(path, t, p, d)
    return sweep === 'x' ? d[0]! : p[0]! * d[1]! - p[1]! * d[0]!
  }
  const coordinate = (t: number, k: 0 | 1) => {
    path3At(path, t, p)
    return p[k]!
  }
  const places = samplePlaces(path, 4 * path.chain.degree)
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [places[i - 1]!, places[i]!]
    const sa = slope(a)
    const ends = [a, b]
    if (sa < 0 !== slope(b) < 0) {
      const turn = bisected(slope, a, b, sa)
      out.push(turn)
      // a curve may pass an axis and come back between two places
      ends.splice(1, 0, turn)
    }
    if (sweep === 'x') continue
    // parted at every quarter turn, a piece holds each angle once and never its opposite
    for (let m = 1; m < ends.length; m++) {
      for (const k of [0, 1] as const) {
        const axis = (t: number) => coordinate(t, k)
        const ha = axis(ends[m - 1]!)
        if (ha < 0 !== axis(ends[m]!) < 0) out.push(bisected(axis, ends[m - 1]!, ends[m]!, ha))
      }
    }
  }
  return out
}

/** Halving between a and b, where f changes sign. */
export function bisected(f: (t: number) => number, a: number, b: number, fa: number): number {
  let lo = a
  let hi = b
  const below = fa < 0
  for (let i = 0; i < 60; i++) {
    const mid = 0.5 * (lo + hi)
    if (mid <= lo || mid >= hi) break
    if (f(mid) < 0 === below) lo = mid
    else hi = mid
  }
  return 0.5 * (lo + hi)
}

/** Natural parameter at which the piece passes a sweep coordinate in [lo, hi]. */
export function placeOnPiece(sweep: Sweep, piece: SweepPiece, s: number): number {
  const { path, t0, t1 } = piece
  if (path.kind === 'segment' && sweep === 'x') {
    const t = (s - path.a[0]) / (path.b[0] - path.a[0])
    return t < t0 ? t0 : Math.min(t, t1)
  }
  if (path.kind === 'conic') {
    const { o, u, v } = path
    const [nx, ny] = sweep === 'x' ? [1, 0] : [-Math.sin(s), Math.cos(s)]
    const reach = sweep === 'x' ? s : 0
    const two = rootsDegree1(
      nx * u[0] + ny * u[1],
      nx * v[0] + ny * v[1],
      reach - nx * o[0] - ny * o[1],
      1e-6 * (Math.abs(u[0]) + Math.abs(v[0]) + Math.abs(u[1]) + Math.abs(v[1])),
    )
    if (two) {
      let best = Number.NaN
      let least = Infinity
      for (const angle of two) {
        const t = intoRange(angle, t0, t1, 1e-5)
        if (Number.isNaN(t)) continue
        if (sweep === 'angle') {
          const c = Math.cos(t)
          const e = Math.sin(t)
          if (ny * (o[0] + u[0] * c + v[0] * e) - nx * (o[1] + u[1] * c + v[1] * e) < 0) continue
        }
        // both roots lie in the range only at its two ends
        const guess = piece.rising
          ? t0 + ((s - piece.lo) / (piece.hi - piece.lo)) * (t1 - t0)
          : t1 - ((s - piece.lo) / (piece.hi - piece.lo)) * (t1 - t0)
        const off = Math.abs(t - guess)
        if (off < least) {
          least = off
          best = t
        }
      }
      if (!Number.isNaN(best)) return best
    }
    return s - piece.lo < piece.hi - s === piece.rising ? t0 : t1
  }
  const p = [0, 0, 0]
  const c = Math.cos(s)
  const e = Math.sin(s)
  const side = (t: number) => {
    path3At(path, t, p)
    return sweep === 'x' ? p[0]! - s : p[1]! * c - p[0]! * e
  }
  return rootWithin(side, t0, t1)
}

/** Root of a function with one sign change between a and b: the Illinois rule. The nearer end if there is no change. */
export function rootWithin(f: (t: number) => number, a: number, b: number): number {
  let lo = a
  let hi = b
  let flo = f(lo)
  let fhi = f(hi)
  if (flo === 0) return lo
  if (fhi === 0) return hi
  if (flo < 0 === fhi < 0) return Math.abs(flo) < Math.abs(fhi) ? lo : hi
  for (let i = 0; i < 100; i++) {
    let t = hi - (fhi * (hi - lo)) / (fhi - flo)
    if (!(t > Math.min(lo, hi) && t < Math.max(lo, hi))) t = 0.5 * (lo + hi)
    const v = f(t)
    if (v === 0 || Math.abs(hi - lo) < 1e-15 * (Math.abs(lo) + Math.abs(hi))) return t
    if (v < 0 !== fhi < 0) {
      lo = hi
      flo = fhi
    } else flo *= 0.5
    hi = t
    fhi = v
    if (lo === hi) return t
  }
  return hi
}
