import { turnInto } from '../../geometry/trig-roots.ts'
import { type Path3, path3At, samplePlaces } from './path3.ts'
import { bisected, rootWithin } from './sweep-pieces.ts'
import { type Border, nearestPassing, Trim } from './trim.ts'

const TURN = 2 * Math.PI
/** Radians, wider than rounding by far, narrower than any face. */
const HAIR = 1e-7

/** A border stretch on which the angle about the tube only rises or only falls. */
interface TubePiece {
  readonly path: Path3
  readonly t0: number
  readonly t1: number
  lo: number
  hi: number
  readonly forward: boolean
}

/** Gives ends that differ only by rounding, or by a piece left out, one and the same angle: no line slips between. */
function snapTurns(pieces: readonly TubePiece[], within: number): void {
  const ends = pieces.flatMap((p) => [
    { at: p.lo, set: (x: number) => (p.lo = x) },
    { at: p.hi, set: (x: number) => (p.hi = x) },
  ])
  ends.sort((a, b) => a.at - b.at)
  for (let i = 0; i < ends.length; ) {
    const head = ends[i]!.at
    let j = i
    while (j < ends.length && ends[j]!.at - head <= within) j++
    const quarter = (Math.round((2 * head) / Math.PI) * Math.PI) / 2
    for (; i < j; i++) ends[i]!.set(Math.abs(quarter - head) <= within ? quarter : head)
  }
}

/** A border passed on going round, and how far back. */
interface Met {
  readonly gap: number
  readonly path: Path3
  readonly t: number
  readonly forward: boolean
}

/**
 * The part of a torus that a face covers. A torus is closed both ways round, so what counts is on which side of the
 * nearest border passing a point lies: round the tube first, round the axis if no border is passed that way.
 */
export class TorusTrim {
  private readonly trim: Trim
  private readonly tube: TubePiece[] = []
  private readonly forward = new Map<number, boolean>()
  private readonly major: number
  private readonly sign: 1 | -1

  constructor(borders: readonly Border[], major: number, minor: number, sign: 1 | -1, tolerance: number) {
    this.major = major
    this.sign = sign
    this.trim = new Trim('angle', borders, tolerance, major + minor)
    for (const b of borders) {
      this.forward.set(b.edge, b.forward)
      for (const piece of this.tubePieces(b)) if (piece.hi - piece.lo > tolerance / minor) this.tube.push(piece)
    }
    snapTurns(this.tube, tolerance / minor)
  }

  private tubeAngle(p: readonly number[]): number {
    return Math.atan2(p[2]!, Math.hypot(p[0]!, p[1]!) - this.major)
  }

  private tubePieces(b: Border): TubePiece[] {
    const p = [0, 0, 0]
    const d = [0, 0, 0]
    const slope = (t: number) => {
      path3At(b.path, t, p, d)
      const rho = Math.hypot(p[0]!, p[1]!)
      const drho = (p[0]! * d[0]! + p[1]! * d[1]!) / rho
      return (rho - this.major) * d[2]! - p[2]! * drho
    }
    const rise = (t: number) => {
      path3At(b.path, t, p)
      return p[2]!
    }
    const reach = (t: number) => {
      path3At(b.path, t, p)
      return Math.hypot(p[0]!, p[1]!) - this.major
    }
    const stops: number[] = [b.path.t0]
    const places = samplePlaces(b.path, 8)
    for (let i = 1; i < places.length; i++) {
      const [x, y] = [places[i - 1]!, places[i]!]
      const cuts: number[] = []
      const sx = slope(x)
      if (sx < 0 !== slope(y) < 0) cuts.push(bisected(slope, x, y, sx))
      // parted at every quarter turn, a piece holds each angle once and never its opposite
      for (const f of [rise, reach]) {
        const fx = f(x)
        if (fx < 0 !== f(y) < 0) cuts.push(bisected(f, x, y, fx))
      }
      stops.push(...cuts.sort((m, n) => m - n))
    }
    stops.push(b.path.t1)
    const out: TubePiece[] = []
    for (let i = 1; i < stops.length; i++) {
      const [t0, t1] = [stops[i - 1]!, stops[i]!]
      if (!(t1 > t0)) continue
      path3At(b.path, 0.5 * (t0 + t1), p)
      const mid = this.tubeAngle(p)
      const near = (t: number) => {
        path3At(b.path, t, p)
        const s = this.tubeAngle(p)
        // each piece lies within a quarter turn: at ±π its inside tells which is meant
        return Math.abs(s - mid) > Math.PI ? Math.sign(mid) * Math.PI : s
      }
      const [x, y] = [near(t0), near(t1)]
      out.push({ path: b.path, t0, t1, lo: Math.min(x, y), hi: Math.max(x, y), forward: b.forward })
    }
    return out
  }

  /** p in the face's frame, on the torus. */
  covers(p: readonly number[]): boolean {
    let s = Math.atan2(p[1]!, p[0]!)
    if (s >= Math.PI) s = -Math.PI
    if (this.trim.parityAbove(s, p) === 'on') return true
    const angle = this.tubeAngle(p)
    const first = this.byTube(s, angle) ?? this.byAxis(s, angle)
    if (first !== undefined) return first
    // No border either way round: nothing changes on going round to where there is one.
    const elsewhere = this.clearestPlace(angle)
    if (elsewhere !== undefined) return this.byTube(elsewhere, angle) === true
    // A border that runs round at this very angle: look a hair beside it.
    const beside = this.byAxis(s, angle + HAIR) ?? this.byAxis(s, angle - HAIR)
    if (beside !== undefined) return beside
    const longest = [...this.tube].sort((a, b) => b.hi - b.lo - (a.hi - a.lo))[0]
    if (longest) return this.byAxis(s, longest.lo + 0.4387 * (longest.hi - longest.lo)) !== false
    return true
  }

  /** A place round the axis where borders are passed round the tube, none of them near the given angle. */
  private clearestPlace(angle: number): number | undefined {
    const q = [0, 0, 0]
    let best: number | undefined
    let clearest = HAIR
    for (const { lo, hi } of this.trim.pieces) {
      const s = lo + 0.4387 * (hi - lo)
      let least = Infinity
      for (const { piece, t } of this.trim.passings(s)) {
        path3At(piece.path, t, q)
        least = Math.min(least, Math.abs(turnInto(angle - this.tubeAngle(q), -Math.PI)))
      }
      if (least > clearest && this.byTube(s, angle) !== undefined) {
        clearest = least
        best = s
      }
    }
    return best
  }

  /** By the nearest border passed on going back round the tube at a fixed place round the axis. */
  private byTube(s: number, angle: number): boolean | undefined {
    const q = [0, 0, 0]
    const met = this.trim.passings(s).map(({ piece, t }): Met => {
      path3At(piece.path, t, q)
      const gap = turnInto(angle - this.tubeAngle(q), 0)
      return { gap, path: piece.path, t, forward: this.forward.get(piece.edge) !== false }
    })
    const first = nearestPassing(met)
    return first && this.interior(first.path, first.t, first.forward, 'tube')
  }

  /** By the nearest border passed on going back round the axis at a fixed place round the tube. */
  private byAxis(s: number, angle: number): boolean | undefined {
    const q = [0, 0, 0]
    const met: Met[] = []
    const a = angle >= Math.PI ? -Math.PI : angle
    for (const piece of this.tube) {
      if (a < piece.lo || a >= piece.hi) continue
      const t = rootWithin(
        (x) => {
          path3At(piece.path, x, q)
          const d = this.tubeAngle(q) - a
          return d - TURN * Math.round(d / TURN)
        },
        piece.t0,
        piece.t1,
      )
      path3At(piece.path, t, q)
      const gap = turnInto(s - Math.atan2(q[1]!, q[0]!), 0)
      met.push({ gap, path: piece.path, t, forward: piece.forward })
    }
    const first = nearestPassing(met)
    return first && this.interior(first.path, first.t, first.forward, 'axis')
  }

  /** Whether the face lies on the side of rising angle (about the tube or the axis) of a border. */
  private interior(path: Path3, t: number, forward: boolean, way: 'tube' | 'axis'): boolean {
    const p = [0, 0, 0]
    const d = [0, 0, 0]
    path3At(path, t, p, d)
    const rho = Math.hypot(p[0]!, p[1]!) || 1
    const [cx, cy] = [p[0]! / rho, p[1]! / rho]
    const [a, b] = [rho - this.major, p[2]!]
    const len = Math.hypot(a, b) || 1
    const g = (this.sign * (forward ? 1 : -1)) / len
    const n = [g * a * cx, g * a * cy, g * b]
    const m = [n[1]! * d[2]! - n[2]! * d[1]!, n[2]! * d[0]! - n[0]! * d[2]!, n[0]! * d[1]! - n[1]! * d[0]!]
    if (way === 'axis') return m[1]! * cx - m[0]! * cy > 0
    // rising about the tube: (-b, a) in the half plane of (radius, z)
    return -b * (m[0]! * cx + m[1]! * cy) + a * m[2]! > 0
  }
}
