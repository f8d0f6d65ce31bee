import type { BezierChain } from '../../geometry/bezier-chain.ts'
import { nearestOnChain } from '../../geometry/intersect-chains.ts'
import { type Chain2, pathAt } from '../../geometry/path2.ts'
import type { Piece } from './split.ts'
import type { Track } from './track.ts'
import type { Watcher } from './watch.ts'

/** Pieces that lie on one spline, each with the stretch of the spline's parameter that it covers. */
export interface SplineGroup {
  readonly chain: BezierChain
  readonly laid: readonly { readonly piece: Piece; readonly a: number; readonly b: number }[]
  /** Change of the parameter that amounts to the line tolerance. */
  readonly step: number
}

interface Leader {
  readonly track: Track
  readonly flat: Chain2
}

/**
 * Groups pieces of splines that coincide in the view. A track joins another when it lies on it throughout, to within
 * `near` (mm): splines from the kernel are themselves approximations, and two mirrored ones differ a little.
 */
export function splineGroups(pieces: readonly Piece[], line: number, near: number, watcher: Watcher): SplineGroup[] {
  const leaders: Leader[] = []
  const leaderOf = new Map<Track, Leader>()
  const tracks = [...new Set(pieces.map((p) => p.track))].sort((a, b) => extent(b) - extent(a))
  for (const track of tracks) {
    const flat = track.flat as Chain2
    const leader = leaders.find((l) => {
      watcher.step()
      return contains(l, track, flat, near)
    })
    if (leader) leaderOf.set(track, leader)
    else {
      const own = { track, flat }
      leaders.push(own)
      leaderOf.set(track, own)
    }
  }
  const groups = new Map<
    number | Track,
    { chain: BezierChain; laid: { piece: Piece; a: number; b: number }[]; reach: number }
  >()
  const p = [0, 0]
  for (const piece of pieces) {
    const leader = leaderOf.get(piece.track)!
    let [a, b] = [piece.t0, piece.t1]
    if (leader.track !== piece.track) {
      const place = (t: number) => {
        pathAt(piece.track.flat, t, p)
        return nearestOnChain(leader.flat, p[0]!, p[1]!)
      }
      const [x, y] = [place(a), place(b)]
      a = Math.min(x, y)
      b = Math.max(x, y)
    }
    // stretches of one edge, parted where a face turns away, are laid on the whole edge and so join again
    const key = leader.track.edge ?? leader.track
    const group = groups.get(key)
    if (group) group.laid.push({ piece, a, b })
    else
      groups.set(key, {
        chain: leader.track.carrier ?? leader.flat.chain,
        laid: [{ piece, a, b }],
        reach: extent(leader.track) / (leader.flat.t1 - leader.flat.t0),
      })
  }
  return [...groups.values()].map((g) => ({ chain: g.chain, laid: g.laid, step: line / g.reach }))
}

function extent(track: Track): number {
  return Math.hypot(track.box[2] - track.box[0], track.box[3] - track.box[1])
}

function contains(leader: Leader, track: Track, flat: Chain2, near: number): boolean {
  const [m, n] = [leader.track.box, track.box]
  if (n[0] < m[0] - near || n[1] < m[1] - near || n[2] > m[2] + near || n[3] > m[3] + near) return false
  const p = [0, 0]
  const q = [0, 0]
  for (const f of [0.5, 0, 1, 0.23, 0.79]) {
    pathAt(flat, flat.t0 + f * (flat.t1 - flat.t0), p)
    pathAt(leader.flat, nearestOnChain(leader.flat, p[0]!, p[1]!), q)
    if (Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!) > near) return false
  }
  return true
}
