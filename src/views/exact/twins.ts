import type { Vec3 } from '../../geometry/vec.ts'
import { spacePoint, type Track } from './track.ts'

/**
 * Tracks that lie wholly behind another one with the same projection: rims and walls of holes in rows. What is seen there
 * is decided by the foremost, and it ends what the others would end.
 */
export function behindTwins(tracks: readonly Track[], d: Vec3, line: number, touch: number): Set<Track> {
  const groups = new Map<string, { track: Track; turned: boolean; depths: readonly [number, number, number] }[]>()
  const behind = new Set<Track>()
  for (const track of tracks) {
    if (track.flat.kind === 'chain' || track.buried) continue
    const [key, turned] = keyOf(track, line)
    const { t0, t1 } = track.flat
    const places = [t0, 0.5 * (t0 + t1), t1].map((t) => depthAt(track, t, d))
    if (turned) places.reverse()
    const one = { track, turned, depths: [places[0]!, places[1]!, places[2]!] as const }
    const group = groups.get(key)
    if (group) group.push(one)
    else groups.set(key, [one])
  }
  for (const group of groups.values()) {
    if (group.length < 2) continue
    const first = group.reduce((a, b) => (b.depths[1] > a.depths[1] ? b : a))
    for (const one of group)
      if (
        one !== first &&
        one.depths.every((x, i) => x <= first.depths[i]! + touch) &&
        one.depths[1] < first.depths[1] - touch
      )
        behind.add(one.track)
  }
  return behind
}

/** Equal for tracks with one projection; whether its ends were exchanged to make it so. */
function keyOf(track: Track, line: number): [string, boolean] {
  const { flat } = track
  const round = (x: number) => Math.round(x / (4 * line))
  if (flat.kind === 'segment') {
    const a = [round(flat.ax), round(flat.ay)] as const
    const b = [round(flat.bx), round(flat.by)] as const
    const turned = a[0] > b[0] || (a[0] === b[0] && a[1] > b[1])
    return [turned ? `s${b},${a}` : `s${a},${b}`, turned]
  }
  if (flat.kind === 'conic') {
    const { cx, cy, ux, uy, vx, vy, t0, t1 } = flat
    return [`c${[cx, cy, ux, uy, vx, vy].map(round)},${t0.toFixed(7)},${t1.toFixed(7)}`, false]
  }
  return ['', false]
}

const p = [0, 0, 0]

export function depthAt(track: Track, t: number, d: Vec3): number {
  spacePoint(track, t, p)
  return p[0]! * d[0] + p[1]! * d[1] + p[2]! * d[2]
}

/** Depths between which a track lies, nearest to the eye last. */
export function depthRange(track: Track, d: Vec3): [number, number] {
  const { space } = track
  const dot = (q: Vec3) => q[0] * d[0] + q[1] * d[1] + q[2] * d[2]
  if (space.kind === 'segment') {
    const [a, b] = [dot(space.a), dot(space.b)]
    return a < b ? [a, b] : [b, a]
  }
  if (space.kind === 'conic') {
    const [o, reach] = [dot(space.o), Math.hypot(dot(space.u), dot(space.v))]
    return [o - reach, o + reach]
  }
  let [lo, hi] = [Infinity, -Infinity]
  const { poles } = space.chain
  for (let i = 0; i < poles.length; i += 4) {
    const x = dot([poles[i]! / poles[i + 3]!, poles[i + 1]! / poles[i + 3]!, poles[i + 2]! / poles[i + 3]!])
    lo = Math.min(lo, x)
    hi = Math.max(hi, x)
  }
  return [lo, hi]
}
