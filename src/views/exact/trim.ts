import type { Path3 } from './path3.ts'
import { path3At } from './path3.ts'
import { placeOnPiece, type Sweep, type SweepPiece, sweepPieces } from './sweep-pieces.ts'

/** A border curve of a face, in the face's frame, and whether the face lies to the left seen from outside. */
export interface Border {
  readonly edge: number
  readonly path: Path3
  readonly forward: boolean
}

/** A passing of the border by a line of constant sweep coordinate. */
export interface Passing {
  readonly height: number
  readonly piece: SweepPiece
  readonly t: number
}

/**
 * The part of a surface that a face covers, as closed set: a point on the border (within the tolerance) belongs to it.
 * Points are given in the face's frame. The second coordinate (`height`) is y on a plane, z about an axis.
 */
export class Trim {
  readonly sweep: Sweep
  readonly pieces: SweepPiece[] = []
  /** Stretches of border along which the sweep coordinate stands still. */
  readonly standing: SweepPiece[] = []
  private readonly tolerance: number
  private readonly buckets: Int32Array[] | undefined
  private readonly start: number = 0
  private readonly step: number = 1

  /** `radius`: largest distance from the axis, to turn the tolerance into an angle. */
  constructor(sweep: Sweep, borders: readonly Border[], tolerance: number, radius: number) {
    this.sweep = sweep
    this.tolerance = tolerance
    const still = sweep === 'x' ? tolerance : tolerance / Math.max(radius, tolerance)
    for (const b of borders) {
      for (const piece of sweepPieces(sweep, b.edge, b.path, still)) {
        if (piece.lo === piece.hi) this.standing.push(piece)
        else this.pieces.push(piece)
      }
    }
    // what is shorter than this was left out as standing still: its neighbours close up over it
    snapEnds([...this.pieces, ...this.standing], still)
    if (this.pieces.length > 24) {
      const lo = Math.min(...this.pieces.map((p) => p.lo))
      const hi = Math.max(...this.pieces.map((p) => p.hi))
      const count = Math.min(4096, this.pieces.length)
      this.start = lo
      this.step = (hi - lo) / count
      const lists: number[][] = Array.from({ length: count }, () => [])
      this.pieces.forEach((p, i) => {
        const last = this.slot(p.hi + still, count)
        for (let k = this.slot(p.lo - still, count); k <= last; k++) lists[k]!.push(i)
      })
      this.buckets = lists.map((l) => Int32Array.from(l))
    }
  }

  private slot(s: number, count: number): number {
    return Math.min(count - 1, Math.max(0, Math.floor((s - this.start) / this.step)))
  }

  /** Whether the number of border passings above the point is odd; 'on' when the point lies on the border. */
  parityAbove(s: number, p: readonly number[]): boolean | 'on' {
    let odd = false
    const list = this.buckets?.[this.slot(s, this.buckets.length)]
    const count = list ? list.length : this.pieces.length
    const slack = this.tolerance
    const height = this.sweep === 'x' ? p[1]! : p[2]!
    for (let i = 0; i < count; i++) {
      const piece = this.pieces[list ? list[i]! : i]!
      if (s < piece.lo || s >= piece.hi) {
        if (this.nearEnd(piece, s, p)) return 'on'
        continue
      }
      const t = placeOnPiece(this.sweep, piece, s)
      path3At(piece.path, t, at, along)
      if (sideways(p) <= slack) return 'on'
      if ((this.sweep === 'x' ? at[1]! : at[2]!) > height) odd = !odd
    }
    for (const piece of this.standing) if (this.onStanding(piece, s, p)) return 'on'
    return odd
  }

  private nearEnd(piece: SweepPiece, s: number, p: readonly number[]): boolean {
    const reach = this.sweep === 'x' ? this.tolerance : this.tolerance / Math.max(1e-9, Math.hypot(p[0]!, p[1]!))
    const low = s < piece.lo
    if (low ? piece.lo - s > reach : s - piece.hi > reach) return false
    path3At(piece.path, low === piece.rising ? piece.t0 : piece.t1, at)
    return Math.hypot(at[0]! - p[0]!, at[1]! - p[1]!, at[2]! - p[2]!) <= this.tolerance
  }

  private onStanding(piece: SweepPiece, s: number, p: readonly number[]): boolean {
    let off = Math.abs(s - piece.lo)
    if (this.sweep === 'angle') {
      if (off > Math.PI) off = Math.abs(off - 2 * Math.PI)
      off *= Math.hypot(p[0]!, p[1]!)
    }
    if (off > this.tolerance) return false
    const k = this.sweep === 'x' ? 1 : 2
    path3At(piece.path, piece.t0, at)
    const a = at[k]!
    path3At(piece.path, piece.t1, at)
    const b = at[k]!
    if (piece.path.kind === 'segment')
      return p[k]! >= Math.min(a, b) - this.tolerance && p[k]! <= Math.max(a, b) + this.tolerance
    // a meridian of a torus comes to each height twice
    return distanceTo(piece, p) <= 2 * this.tolerance
  }

  /** Passings at a sweep coordinate, from the lowest up. `side` -1 looks just below a shared end, 1 just above. */
  passings(s: number, side: -1 | 1 = 1): Passing[] {
    const out: Passing[] = []
    for (const piece of this.pieces) {
      if (side > 0 ? s < piece.lo || s >= piece.hi : s <= piece.lo || s > piece.hi) continue
      const t = placeOnPiece(this.sweep, piece, s)
      path3At(piece.path, t, at)
      out.push({ height: this.sweep === 'x' ? at[1]! : at[2]!, piece, t })
    }
    return out.sort((a, b) => a.height - b.height)
  }

  /** Sweep coordinate of a border end within the tolerance, or s itself; whether border stands still there. */
  settled(s: number, radius: number): { s: number; standing: boolean } {
    const reach = this.sweep === 'x' ? this.tolerance : this.tolerance / radius
    for (const piece of this.standing) {
      let off = Math.abs(s - piece.lo)
      if (this.sweep === 'angle' && off > Math.PI) off = Math.abs(off - 2 * Math.PI)
      if (off <= reach) return { s: piece.lo, standing: true }
    }
    return { s, standing: false }
  }
}

const at = [0, 0, 0]
const along = [0, 0, 0]

/** Distance of p from a stretch of border: the lowest of some places, closed in on by thirds. */
function distanceTo(piece: SweepPiece, p: readonly number[]): number {
  const off = (t: number) => {
    path3At(piece.path, t, at)
    return Math.hypot(at[0]! - p[0]!, at[1]! - p[1]!, at[2]! - p[2]!)
  }
  const steps = 16
  const step = (piece.t1 - piece.t0) / steps
  let best = 0
  for (let i = 1; i <= steps; i++) if (off(piece.t0 + i * step) < off(piece.t0 + best * step)) best = i
  let lo = piece.t0 + Math.max(0, best - 1) * step
  let hi = piece.t0 + Math.min(steps, best + 1) * step
  for (let i = 0; i < 80; i++) {
    const [x, y] = [lo + (hi - lo) / 3, hi - (hi - lo) / 3]
    if (off(x) < off(y)) hi = y
    else lo = x
  }
  return Math.min(off(0.5 * (lo + hi)), off(piece.t0), off(piece.t1))
}

/** Distance of p from the tangent line left in `at` and `along`. */
function sideways(p: readonly number[]): number {
  const x = p[0]! - at[0]!
  const y = p[1]! - at[1]!
  const z = p[2]! - at[2]!
  const l2 = along[0]! ** 2 + along[1]! ** 2 + along[2]! ** 2
  const d2 = x * x + y * y + z * z
  if (l2 === 0) return Math.sqrt(d2)
  const f = x * along[0]! + y * along[1]! + z * along[2]!
  const rest = d2 - (f * f) / l2
  return rest > 0 ? Math.sqrt(rest) : 0
}

/** The nearest passing; a border that only comes up to the line and turns back is passed twice there, and so not at all. */
export function nearestPassing<T extends { readonly gap: number }>(met: T[]): T | undefined {
  met.sort((a, b) => a.gap - b.gap)
  for (let i = 0; i < met.length; i++) {
    if (i + 1 < met.length && met[i + 1]!.gap - met[i]!.gap < 1e-7) i++
    else return met[i]
  }
  return undefined
}

/** Gives ends that differ only by rounding, or by a piece left out, one and the same number, so that no sweep line slips between them. */
function snapEnds(pieces: readonly SweepPiece[], within: number): void {
  const ends: { value: number; set: (x: number) => void }[] = []
  for (const p of pieces) {
    const still = p.lo === p.hi
    ends.push({
      value: p.lo,
      set: (x) => {
        p.lo = x
        if (still) p.hi = x
      },
    })
    if (!still) ends.push({ value: p.hi, set: (x) => (p.hi = x) })
  }
  ends.sort((a, b) => a.value - b.value)
  for (let i = 0; i < ends.length; ) {
    const head = ends[i]!.value
    let j = i
    while (j < ends.length && ends[j]!.value - head <= within) ends[j++]!.set(head)
    i = j
  }
}
