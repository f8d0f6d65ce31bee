import { rootsDegree1, turnInto } from '../../geometry/trig-roots.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot } from '../../geometry/vec3.ts'
import type { Frame } from '../view.ts'
import type { BodyModel } from './body-model.ts'
import { facingRoots, SQUARE } from './edge-tracks.ts'
import { covers, type FaceModel, fromLocal, localDirection, toLocal } from './face-model.ts'
import { type Path3, path3At } from './path3.ts'
import { splineSilhouettes } from './spline-silhouettes.ts'
import { torusSilhouettes } from './torus-silhouettes.ts'
import { project, type Track, type TrackUse } from './track.ts'
import type { Watcher } from './watch.ts'

/** The outlines of all curved faces in one view, within the faces' extent. */
export function silhouetteTracks(model: BodyModel, frame: Frame, out: Track[], watcher: Watcher): void {
  for (const face of model.faces) {
    watcher.step()
    watcher.advance(1)
    const use: TrackUse = {
      faces: [face],
      kind: 'silhouette',
      divides: face.sign > 0 || !model.closed,
      buried: model.closed && face.sign < 0,
    }
    switch (face.kind) {
      case 'cylinder':
      case 'cone':
        for (const path of rulings(face, frame.toViewer)) out.push(...project(path, frame, use, model.tolerances.line))
        break
      case 'sphere':
        for (const path of greatCircle(model, face, frame.toViewer))
          out.push(...project(path, frame, use, model.tolerances.line))
        break
      case 'torus':
        torusSilhouettes(model, face, frame, out)
        break
      case 'spline':
        splineSilhouettes(model, face, frame, out, watcher)
        break
    }
  }
}

/** Straight outlines of a cylinder or cone: the rulings on which the normal is square to the line of sight. */
function rulings(face: FaceModel, d: Vec3): Path3[] {
  const l = localDirection(face, d)
  const across = Math.hypot(l[0], l[1])
  if (across < SQUARE) return []
  const angles = rootsDegree1(l[0], l[1], face.k * l[2])
  if (!angles || angles[0] === angles[1]) return []
  const trim = face.trim()
  const out: Path3[] = []
  for (const angle of angles) {
    const settled = trim.settled(turnInto(angle, -Math.PI), face.r)
    const s = settled.s
    // on a border the face lies to one side only; the outline belongs to it all the same
    const spans = settled.standing ? union([...columns(face, s, -1), ...columns(face, s, 1)]) : columns(face, s, 1)
    const [c, e] = [Math.cos(s), Math.sin(s)]
    for (const [a, b] of spans) {
      const ra = face.r + face.k * a
      const rb = face.r + face.k * b
      out.push({
        kind: 'segment',
        a: fromLocal(face, ra * c, ra * e, a),
        b: fromLocal(face, rb * c, rb * e, b),
        t0: 0,
        t1: 1,
      })
    }
  }
  return out
}

/** Stretches of the ruling at angle s that the face covers. */
function columns(face: FaceModel, s: number, side: -1 | 1): [number, number][] {
  // ±π is one ruling: its lower side is at the upper end of the range
  const at = side < 0 && s <= -Math.PI ? Math.PI : side > 0 && s >= Math.PI ? -Math.PI : s
  const heights = face
    .trim()
    .passings(at, side)
    .map((x) => x.height)
  const out: [number, number][] = []
  for (let i = heights.length - 1; i >= 0; i -= 2) {
    if (i > 0) out.push([heights[i - 1]!, heights[i]!])
    else if (face.kind === 'cone') out.push([-face.r / face.k, heights[0]!])
  }
  return out
}

function union(spans: [number, number][]): [number, number][] {
  const out: [number, number][] = []
  for (const [a, b] of spans.sort((x, y) => x[0] - y[0])) {
    const last = out[out.length - 1]
    if (last && a <= last[1]) last[1] = Math.max(last[1], b)
    else out.push([a, b])
  }
  return out
}

function greatCircle(model: BodyModel, face: FaceModel, d: Vec3): Path3[] {
  const helper: Vec3 = Math.abs(d[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]
  const raw = cross(d, helper)
  const n = Math.hypot(...raw)
  const x: Vec3 = [raw[0] / n, raw[1] / n, raw[2] / n]
  const y = cross(d, x)
  const { o, r } = face
  const cuts: number[] = []
  for (const { edge } of face.borders) {
    const path = model.pathOf(edge)
    const roots: number[] = []
    facingRoots(face, path, d, roots)
    // border ends lying on the outline part it as well
    for (const t of [...roots, path.t0, path.t1]) {
      path3At(path, t, p)
      const q: Vec3 = [p[0]! - o[0], p[1]! - o[1], p[2]! - o[2]]
      if (Math.abs(dot(q, d)) <= 1e-6 * r) cuts.push(turnInto(Math.atan2(dot(q, y), dot(q, x)), 0))
    }
  }
  cuts.sort((a, b) => a - b)
  const whole: Path3 = {
    kind: 'conic',
    o,
    u: [r * x[0], r * x[1], r * x[2]],
    v: [r * y[0], r * y[1], r * y[2]],
    t0: 0,
    t1: 2 * Math.PI,
  }
  const inside = (t: number) => {
    path3At(whole, t, p)
    toLocal(face, p, local)
    return covers(face, local)
  }
  if (cuts.length === 0) return inside(0.4) ? [whole] : []
  const out: Path3[] = []
  for (let i = 0; i < cuts.length; i++) {
    const a = cuts[i]!
    const b = i + 1 < cuts.length ? cuts[i + 1]! : cuts[0]! + 2 * Math.PI
    if (b - a > 1e-9 && inside(0.5 * (a + b))) out.push({ ...whole, t0: a, t1: b })
  }
  return out
}

const p = [0, 0, 0]
const local = [0, 0, 0]
