import { type Path2, pathBox, segment2 } from '../../geometry/path2.ts'
import { turnInto } from '../../geometry/trig-roots.ts'
import { cross, dot } from '../../geometry/vec3.ts'
import type { Frame } from '../view.ts'
import type { FaceModel } from './face-model.ts'
import { type Chain3, path3At, samplePlaces } from './path3.ts'
import { bisected, rootWithin } from './sweep-pieces.ts'

/** Below this a direction counts as square or parallel to the line of sight (rad). */
const EDGE_ON = 1e-9

interface Part {
  readonly flat: Path2
  readonly space: Chain3
  readonly through: (t: number) => number
  readonly box: readonly [number, number, number, number]
}

/**
 * A spline border of a plane seen edge-on is a straight line in the view, of a cylinder seen along its axis a circular
 * arc, both exactly; one part for each way the curve runs along it. Undefined where no face is seen so.
 */
export function alongEdgeOnFace(
  space: Chain3,
  frame: Frame,
  faces: readonly FaceModel[],
  least: number,
): Part[] | undefined {
  const d = frame.toViewer
  for (const face of faces) {
    if (face.kind === 'plane' && Math.abs(dot(face.z, d)) < EDGE_ON) return straight(space, frame, face, least)
    if (face.kind === 'cylinder' && Math.hypot(...cross(face.z, d)) < EDGE_ON) return round(space, frame, face, least)
  }
  return undefined
}

function straight(space: Chain3, frame: Frame, face: FaceModel, least: number): Part[] {
  const way = cross(face.z, frame.toViewer)
  const [ex, ey] = [dot(way, frame.right), dot(way, frame.up)]
  const [nx, ny] = [dot(face.z, frame.right), dot(face.z, frame.up)]
  const off = dot(face.o, face.z)
  const p = [0, 0, 0]
  const d = [0, 0, 0]
  const place = (t: number) => {
    path3At(space, t, p)
    return p[0]! * way[0] + p[1]! * way[1] + p[2]! * way[2]
  }
  const slope = (t: number) => {
    path3At(space, t, p, d)
    return d[0]! * way[0] + d[1]! * way[1] + d[2]! * way[2]
  }
  return parts(space, slope).flatMap(([a, b]) => {
    const from = place(a)
    const to = place(b)
    if (Math.abs(to - from) <= least) return []
    const flat = segment2(from * ex + off * nx, from * ey + off * ny, to * ex + off * nx, to * ey + off * ny)
    const through = (t: number) => rootWithin((x) => place(x) - (from + t * (to - from)), a, b)
    return [{ flat, space: { ...space, t0: a, t1: b }, through, box: pathBox(flat) }]
  })
}

function round(space: Chain3, frame: Frame, face: FaceModel, least: number): Part[] {
  const { right, up } = frame
  const [cx, cy] = [dot(face.o, right), dot(face.o, up)]
  const p = [0, 0, 0]
  const d = [0, 0, 0]
  const flat2 = (q: readonly number[]) =>
    [q[0]! * right[0] + q[1]! * right[1] + q[2]! * right[2], q[0]! * up[0] + q[1]! * up[1] + q[2]! * up[2]] as const
  const angle = (t: number) => {
    path3At(space, t, p)
    const [x, y] = flat2(p)
    return Math.atan2(y - cy, x - cx)
  }
  const slope = (t: number) => {
    path3At(space, t, p, d)
    const [x, y] = flat2(p)
    const [dx, dy] = flat2(d)
    return (x - cx) * dy - (y - cy) * dx
  }
  return parts(space, slope).flatMap(([a, b]) => {
    const mid = 0.5 * (a + b)
    const rising = slope(mid) > 0
    // the smaller end first, whichever way the curve runs
    const [first, last] = rising ? [a, b] : [b, a]
    const from = angle(first)
    const half = turnInto(angle(mid), from)
    const to = half + turnInto(angle(last) - half, 0)
    if ((to - from) * face.r <= least) return []
    const flat: Path2 = { kind: 'conic', cx, cy, ux: face.r, uy: 0, vx: 0, vy: face.r, t0: from, t1: to }
    // angles counted on from the middle of the part, so that none jumps
    const near = (x: number) => turnInto(angle(x), half - Math.PI)
    const through = (t: number) => rootWithin((x) => near(x) - t, first, last)
    return [{ flat, space: { ...space, t0: a, t1: b }, through, box: pathBox(flat) }]
  })
}

/** Stretches of a curve between the places where the given slope changes sign. */
function parts(space: Chain3, slope: (t: number) => number): [number, number][] {
  const places = samplePlaces(space, 4 * space.chain.degree).filter((t) => t > space.t0 && t < space.t1)
  const stops = [space.t0]
  let before = space.t0
  // an end may itself be a turning place
  let value = slope(space.t0 + 1e-6 * (space.t1 - space.t0))
  for (const t of [...places, space.t1 - 1e-6 * (space.t1 - space.t0)]) {
    if (t <= before) continue
    const now = slope(t)
    if (now < 0 !== value < 0) stops.push(bisected(slope, before, t, value))
    before = t
    value = now
  }
  stops.push(space.t1)
  return stops.slice(1).map((b, i) => [stops[i]!, b])
}
