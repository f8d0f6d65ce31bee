import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { spacePoint, type Track } from './track.ts'

/**
 * Tracks that lie wholly behind another one with the same projection: rims and walls of holes in rows. What is seen there
 * is decided by the foremost, and it ends what the others would end.
 */
export function behindTwins(tracks: readonly Track[], d: Vec3, line: number, touch: number): Set<Track> {
  const groups = new Map<number, Placed[]>()
  const behind = new Set<Track>()
  for (const track of tracks) {
    if (track.flat.kind === 'chain' || track.buried) continue
    const one = placed(track, line)
    const key = one.numbers.reduce((h, x) => (Math.imul(h, 31) + x) | 0, 7)
    const group = groups.get(key)
    if (group) group.push(one)
    else groups.set(key, [one])
  }
  for (const group of groups.values()) {
    if (group.length < 2) continue
    const byDepth = group.map((one) => ({ one, depths: depthsOf(one, d) })).sort((x, y) => y.depths[1] - x.depths[1])
    // whatever lies behind a hidden one lies behind what hides that
    const fronts: typeof byDepth = []
    for (const next of byDepth) {
      if (fronts.some((f) => sameLine(f.one, next.one) && before(f.depths, next.depths, touch)))
        behind.add(next.one.track)
      else fronts.push(next)
    }
  }
  return behind
}

function sameLine(a: Placed, b: Placed): boolean {
  return a.numbers.length === b.numbers.length && a.numbers.every((x, k) => x === b.numbers[k])
}

function before(near: Depths, far: Depths, touch: number): boolean {
  return far[1] < near[1] - touch && far.every((x, k) => x <= near[k]! + touch)
}

/** Depths at a track's start, middle and end. */
type Depths = readonly [number, number, number]

/** A track with rounded numbers that are equal for one projection, and whether its ends were exchanged to make them so. */
interface Placed {
  readonly track: Track
  readonly turned: boolean
  readonly numbers: readonly number[]
}

function depthsOf({ track, turned }: Placed, d: Vec3): Depths {
  const { t0, t1 } = track.flat
  const [a, m, b] = [depthAt(track, t0, d), depthAt(track, 0.5 * (t0 + t1), d), depthAt(track, t1, d)]
  return turned ? [b, m, a] : [a, m, b]
}

function placed(track: Track, line: number): Placed {
  const { flat } = track
  const round = (x: number) => Math.round(x / (4 * line))
  if (flat.kind === 'segment') {
    const [ax, ay, bx, by] = [round(flat.ax), round(flat.ay), round(flat.bx), round(flat.by)]
    const turned = ax > bx || (ax === bx && ay > by)
    return { track, turned, numbers: turned ? [bx, by, ax, ay] : [ax, ay, bx, by] }
  }
  if (flat.kind === 'conic') {
    const { cx, cy, ux, uy, vx, vy, t0, t1 } = flat
    const angle = (t: number) => Math.round(t * 1e7)
    return {
      track,
      turned: false,
      numbers: [round(cx), round(cy), round(ux), round(uy), round(vx), round(vy), angle(t0), angle(t1)],
    }
  }
  return { track, turned: false, numbers: [] }
}

const p = [0, 0, 0]

export function depthAt(track: Track, t: number, d: Vec3): number {
  spacePoint(track, t, p)
  return p[0]! * d[0] + p[1]! * d[1] + p[2]! * d[2]
}

/** Depths between which a track lies, nearest to the eye last. */
export function depthRange(track: Track, d: Vec3): [number, number] {
  const { space } = track
  if (space.kind === 'segment') {
    const a = dot(space.a, d)
    const b = dot(space.b, d)
    return a < b ? [a, b] : [b, a]
  }
  if (space.kind === 'conic') {
    const o = dot(space.o, d)
    const [u, v] = [dot(space.u, d), dot(space.v, d)]
    const reach = Math.sqrt(u * u + v * v)
    return [o - reach, o + reach]
  }
  let [lo, hi] = [Infinity, -Infinity]
  const { poles } = space.chain
  for (let i = 0; i < poles.length; i += 4) {
    const w = poles[i + 3]!
    const x = dot([poles[i]! / w, poles[i + 1]! / w, poles[i + 2]! / w], d)
    lo = Math.min(lo, x)
    hi = Math.max(hi, x)
  }
  return [lo, hi]
}
