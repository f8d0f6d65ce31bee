import { type BezierChain, subChain } from '../../geometry/bezier-chain.ts'
import { type Path2, pathBox, segment2 } from '../../geometry/path2.ts'
import { turnInto } from '../../geometry/trig-roots.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Frame } from '../view.ts'
import { alongEdgeOnFace } from './edge-on.ts'
import type { FaceModel } from './face-model.ts'
import { type Path3, path3At } from './path3.ts'

/** A curve of the solid on its way into the view: its exact projection and the way back to the point in space. */
export interface Track {
  readonly flat: Path2
  readonly space: Path3
  /** Where the projection has a parameter of its own: from it to the space curve's. */
  readonly through?: (t: number) => number
  /** A spline's whole projection, of which this track may be a part. */
  readonly carrier?: BezierChain
  readonly box: readonly [number, number, number, number]
  /** Edge id; absent on a silhouette. */
  readonly edge?: number
  readonly faces: readonly FaceModel[]
  readonly kind: 'edge' | 'silhouette' | 'smooth' | 'cut'
  /** Ends faces turned to the eye: what lies behind may appear or vanish across it. */
  readonly divides: boolean
  /** Material lies right before it: hidden whatever else there is. */
  readonly buried: boolean
}

export type TrackUse = Omit<Track, 'flat' | 'space' | 'through' | 'carrier' | 'box'>

/** Parameter on the space curve for a parameter of the projection. */
function spaceParameter(track: Track, t: number): number {
  return track.through ? track.through(t) : t
}

export function spacePoint(track: Track, t: number, out: number[]): void {
  path3At(track.space, spaceParameter(track, t), out)
}

/** Projects a space curve; what is seen end-on gives nothing, an arc seen edge-on one segment for each way it runs. */
export function project(space: Path3, frame: Frame, use: TrackUse, least: number): Track[] {
  const { right, up } = frame
  if (space.kind === 'segment') {
    const flat = segment2(
      dot(at(space, space.t0), right),
      dot(at(space, space.t0), up),
      dot(at(space, space.t1), right),
      dot(at(space, space.t1), up),
    )
    if (Math.hypot(flat.bx - flat.ax, flat.by - flat.ay) <= least) return []
    const own: Path3 =
      space.t0 === 0 && space.t1 === 1
        ? space
        : { ...space, a: at(space, space.t0), b: at(space, space.t1), t0: 0, t1: 1 }
    return [track(flat, own, use)]
  }
  if (space.kind === 'chain') {
    const onEdge = alongEdgeOnFace(space, frame, use.faces, least)
    if (onEdge) return onEdge.map((t) => ({ ...t, ...use }))
    const own: Path3 = { ...space, chain: subChain(space.chain, space.t0, space.t1) }
    const carrier = flattened(space.chain, frame)
    const flat: Path2 = { kind: 'chain', chain: flattened(own.chain, frame), t0: space.t0, t1: space.t1 }
    const box = pathBox(flat)
    if (box[2] - box[0] <= least && box[3] - box[1] <= least) return []
    return [{ flat, space: own, carrier, box, ...use }]
  }
  const { o, u, v, t0, t1 } = space
  const cx = dot(o, right)
  const cy = dot(o, up)
  const ux = dot(u, right)
  const uy = dot(u, up)
  const vx = dot(v, right)
  const vy = dot(v, up)
  const uu = ux * ux + uy * uy
  const vv = vx * vx + vy * vy
  if (uu + vv <= least * least) return []
  if (Math.abs(ux * vy - uy * vx) > least * Math.sqrt(uu + vv))
    return [track({ kind: 'conic', cx, cy, ux, uy, vx, vy, t0, t1 }, space, use)]
  // Edge-on: c + e (p cos t + q sin t) along one direction e.
  const [ex, ey] = uu > vv ? [ux / Math.sqrt(uu), uy / Math.sqrt(uu)] : [vx / Math.sqrt(vv), vy / Math.sqrt(vv)]
  const p = ux * ex + uy * ey
  const q = vx * ex + vy * ey
  const reach = Math.hypot(p, q)
  const peak = Math.atan2(q, p)
  const out: Track[] = []
  let base = turnInto(peak, t0 - 2 * Math.PI)
  let down = true
  for (; base < t1; base += Math.PI, down = !down) {
    const a = Math.max(t0, base)
    const b = Math.min(t1, base + Math.PI)
    if (!(b > a)) continue
    const from = Math.cos(a - peak)
    const to = Math.cos(b - peak)
    if (Math.abs(to - from) * reach <= least) continue
    const flat = segment2(cx + ex * reach * from, cy + ey * reach * from, cx + ex * reach * to, cy + ey * reach * to)
    out.push({ flat, space, through: arcThrough(base, down, from, to), box: pathBox(flat), ...use })
  }
  return out
}

/** An arc seen edge-on: the segment's parameter goes through a cosine to the arc's angle. */
function arcThrough(base: number, down: boolean, from: number, to: number): (t: number) => number {
  return (t) => {
    const angle = Math.acos(Math.max(-1, Math.min(1, from + t * (to - from))))
    return down ? base + angle : base + Math.PI - angle
  }
}

function track(flat: Path2, space: Path3, use: TrackUse): Track {
  return { flat, space, box: pathBox(flat), ...use }
}

function at(space: Path3, t: number): Vec3 {
  const p = [0, 0, 0]
  path3At(space, t, p)
  return [p[0]!, p[1]!, p[2]!]
}

function flattened(chain: BezierChain, frame: Frame): BezierChain {
  const { right, up } = frame
  const count = chain.poles.length / 4
  const poles = new Float64Array(count * 3)
  for (let i = 0; i < count; i++) {
    const q: Vec3 = [chain.poles[4 * i]!, chain.poles[4 * i + 1]!, chain.poles[4 * i + 2]!]
    poles[3 * i] = dot(q, right)
    poles[3 * i + 1] = dot(q, up)
    poles[3 * i + 2] = chain.poles[4 * i + 3]!
  }
  return { ...chain, size: 3, poles }
}
