import Flatbush from 'flatbush'
import { meet } from '../../geometry/intersect.ts'
import { pathAt } from '../../geometry/path2.ts'
import { isHidden, type Occluders } from './occluders.ts'
import { piercings } from './piercings.ts'
import { spacePoint, type Track } from './track.ts'
import { behindTwins, depthAt, depthRange } from './twins.ts'

/** A stretch of a track that is seen, or not, throughout. */
export interface Piece {
  readonly track: Track
  readonly t0: number
  readonly t1: number
  readonly visible: boolean
}

/** Cuts every track where lines that may end something in front of it cross it, and decides each stretch. */
export function splitAndDecide(tracks: readonly Track[], all: Occluders): Piece[] {
  const { line, touch } = all.model.tolerances
  const d = all.frame.toViewer
  const behind = behindTwins(tracks, d, line, touch)
  const dividers = tracks.filter((t) => t.divides && !behind.has(t))
  const nearest = Float64Array.from(dividers, (t) => depthRange(t, d)[1])
  let index: Flatbush | undefined
  if (dividers.length > 0) {
    index = new Flatbush(dividers.length)
    for (const t of dividers) index.add(t.box[0] - line, t.box[1] - line, t.box[2] + line, t.box[3] + line)
    index.finish()
  }
  const several = all.model.shells > 1
  const out: Piece[] = []
  const found: number[] = []
  // the second half of the whole: what edges and faces have given, each with its share
  const share = (all.model.edges.length + all.model.faces.length) / Math.max(1, tracks.length)
  for (const track of tracks) {
    all.watcher.step()
    all.watcher.advance(share)
    const { t0, t1 } = track.flat
    if (track.buried || behind.has(track)) {
      out.push({ track, t0, t1, visible: false })
      continue
    }
    const stops: number[] = []
    const [furthest, foremost] = depthRange(track, d)
    if (several) pierced(track, furthest, foremost, all, stops)
    if (index) {
      index.search(track.box[0], track.box[1], track.box[2], track.box[3], (i) => {
        const other = dividers[i]!
        if (other === track || nearest[i]! < furthest - touch) return false
        all.watcher.step()
        found.length = 0
        meet(track.flat, other.flat, line, found)
        for (let j = 0; j < found.length; j += 2)
          if (depthAt(other, found[j + 1]!, d) >= depthAt(track, found[j]!, d) - touch) stops.push(found[j]!)
        return false
      })
    }
    decide(track, stops, all, out)
  }
  return out
}

/** Where a track passes into another solid through a face turned to the eye. */
function pierced(track: Track, furthest: number, foremost: number, all: Occluders, stops: number[]): void {
  const { model, frame, list, index } = all
  const { touch } = model.tolerances
  const own = model.shellOf.get(track.faces[0]!)
  index?.search(track.box[0], track.box[1], track.box[2], track.box[3], (i) => {
    const o = list[i]!
    if (o.nearest < furthest - touch || o.furthest > foremost + touch) return false
    if (model.shellOf.get(o.face) === own) return false
    all.watcher.step()
    piercings(model, frame, track, o.face, stops)
    return false
  })
}

const p = [0, 0, 0]
const q = [0, 0, 0]

function decide(track: Track, stops: number[], all: Occluders, out: Piece[]): void {
  const { t0, t1 } = track.flat
  stops.sort((a, b) => a - b)
  const cuts = [t0]
  for (const t of [...stops, t1]) {
    const last = cuts[cuts.length - 1]!
    if (t <= last) continue
    pathAt(track.flat, last, p)
    pathAt(track.flat, t, q)
    const gap = Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!)
    // a closed curve comes back to where it began
    if (gap > all.model.tolerances.line || t - last > 0.5 * (t1 - t0)) cuts.push(t)
  }
  if (cuts.length === 1) cuts.push(t1)
  else cuts[cuts.length - 1] = t1
  for (let i = 1; i < cuts.length; i++) {
    const a = cuts[i - 1]!
    const b = cuts[i]!
    spacePoint(track, a + 0.4871 * (b - a), p)
    const visible = !isHidden(all, p, track.faces)
    const last = out[out.length - 1]
    if (last && last.track === track && last.visible === visible)
      out[out.length - 1] = { track, t0: last.t0, t1: b, visible }
    else out.push({ track, t0: a, t1: b, visible })
  }
}
