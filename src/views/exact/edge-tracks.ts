import { rootsBernstein } from '../../geometry/bernstein.ts'
import { chainForm, pieceCount } from '../../geometry/bezier-chain.ts'
import { rootsDegree1, turnInto } from '../../geometry/trig-roots.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { along, cross, dot } from '../../geometry/vec3.ts'
import type { Frame } from '../view.ts'
import type { BodyModel, EdgeModel } from './body-model.ts'
import { type FaceModel, heightOver, localDirection, outwardAt } from './face-model.ts'
import { type Path3, path3At, samplePlaces } from './path3.ts'
import { bendAlong } from './spline-bend.ts'
import { bisected } from './sweep-pieces.ts'
import { project, type Track } from './track.ts'
import type { Watcher } from './watch.ts'

/** Below this a normal counts as square to the line of sight (rad). */
export const SQUARE = 1e-9

/** The tracks of all edges of a body in one view. */
export function edgeTracks(model: BodyModel, frame: Frame, out: Track[], watcher: Watcher): void {
  for (const edge of model.edges) {
    watcher.step()
    oneEdge(model, edge, frame, out)
    watcher.advance(1)
  }
}

function oneEdge(model: BodyModel, edge: EdgeModel, frame: Frame, out: Track[]): void {
  const d = frame.toViewer
  const stops: number[] = []
  for (const face of edge.faces) if (face.kind !== 'plane') facingRoots(face, edge.path, d, stops)
  const { t0, t1 } = edge.path
  const least = 1e-12 * (t1 - t0)
  stops.sort((a, b) => a - b)
  let from = t0
  for (let i = 0; i <= stops.length; i++) {
    const to = i < stops.length ? stops[i]! : t1
    if (!(to - from > least)) continue
    const end = t1 - to > least ? to : t1
    stretch(model, edge, from, end, frame, out)
    from = end
  }
}

const p = [0, 0, 0]
const tangent = [0, 0, 0]

function stretch(model: BodyModel, edge: EdgeModel, from: number, to: number, frame: Frame, out: Track[]): void {
  const d = frame.toViewer
  const path: Path3 = from === edge.path.t0 && to === edge.path.t1 ? edge.path : { ...edge.path, t0: from, t1: to }
  path3At(edge.path, from + 0.4871 * (to - from), p, tangent)
  const [f, g] = edge.faces
  let divides = false
  let buried = false
  if (!f || !g || edge.faces.length > 2) divides = true
  else {
    const nf = outwardAt(f, p)
    const ng = outwardAt(g, p)
    const way = edge.forward[0] ? 1 : -1
    const inward = cross(nf, [way * tangent[0]!, way * tangent[1]!, way * tangent[2]!])
    let fold = dot(ng, inward) / Math.hypot(...inward)
    // at a knife edge or in a crack the normals are opposite, and their sines tell little
    if (Math.abs(fold) < FOLDED && dot(nf, ng) < 0) fold = openAngle(f, g, p, inward, 1e-3 * model.size) ?? fold
    const af = dot(nf, d)
    const ag = dot(ng, d)
    if (model.closed) {
      // material fills the wedge behind both faces on a convex edge, all but the wedge before both on a concave one
      const backs = (af < -SQUARE ? 1 : 0) + (ag < -SQUARE ? 1 : 0)
      buried = fold > 1e-7 ? backs > 0 : backs === 2
    }
    divides = fold < -1e-7 && af > SQUARE !== ag > SQUARE
    if (!model.closed) divides = Math.abs(fold) > 1e-7 && af > SQUARE !== ag > SQUARE
  }
  // a spline surface that turns away just at its smooth border has that border for an outline
  const turning = edge.smooth && edge.faces.find((face) => face.kind === 'spline' && turnsAlong(face, path, d))
  if (turning) {
    const bend = bendAlong(turning, turning.sheet().at(...turning.sheet().nearest([p[0]!, p[1]!, p[2]!])), d)
    buried = model.closed && bend < 0
    divides = bend > 0 || !model.closed
  }
  const kind = edge.cut ? 'cut' : turning ? 'silhouette' : edge.smooth ? 'smooth' : 'edge'
  const use = { edge: edge.id, faces: edge.faces, kind, divides: divides && !buried, buried } as const
  out.push(...project(path, frame, use, model.tolerances.line))
}

/** Sine of the angle between two faces below which they nearly lie on each other. */
const FOLDED = 0.02

/** Angle from face g to the place on face f that lies a step inside it: negative where material lies between. */
function openAngle(f: FaceModel, g: FaceModel, at: readonly number[], inward: Vec3, step: number): number | undefined {
  if (f.kind === 'spline' || g.kind === 'spline') return undefined
  const q = along([at[0]!, at[1]!, at[2]!], inward, step / Math.hypot(...inward))
  return heightOver(g, along(q, outwardAt(f, q), -heightOver(f, q))) / step
}

/** Whether a face's normal is square to the line of sight all along a border of it. */
function turnsAlong(face: FaceModel, path: Path3, d: Vec3): boolean {
  const q = [0, 0, 0]
  return [0.11, 0.37, 0.62, 0.89].every((f) => {
    path3At(path, path.t0 + f * (path.t1 - path.t0), q)
    return Math.abs(dot(outwardAt(face, q), d)) < TURNING
  })
}

/** The kernel's own edges on splines lie up to 1e-7 mm off. */
const TURNING = 1e-6

/** Places on a curve lying in a curved face where the face's normal is square to the line of sight. */
export function facingRoots(face: FaceModel, path: Path3, d: Vec3, out: number[]): void {
  if (face.kind === 'torus' || face.kind === 'spline') {
    numericRoots(face, path, d, out)
    return
  }
  // gradient · d of a quadric is linear in the point: a·P + b
  const l = localDirection(face, d)
  const gx = l[0]
  const gy = l[1]
  const gz = (face.e - face.k * face.k) * l[2]
  const a: Vec3 = [
    gx * face.x[0] + gy * face.y[0] + gz * face.z[0],
    gx * face.x[1] + gy * face.y[1] + gz * face.z[1],
    gx * face.x[2] + gy * face.y[2] + gz * face.z[2],
  ]
  const b = -dot(a, face.o) - face.k * face.r * l[2]
  const still = 1e-9 * Math.max(face.r, 1e-3)
  if (path.kind === 'segment') {
    const va = dot(a, path.a) + b
    const vb = dot(a, path.b) + b
    if (Math.abs(va) > still && Math.abs(vb) > still && va < 0 !== vb < 0) out.push(va / (va - vb))
    return
  }
  if (path.kind === 'conic') {
    const [u, v, o] = [dot(a, path.u), dot(a, path.v), dot(a, path.o) + b]
    if (Math.hypot(u, v) <= still) return
    for (const angle of rootsDegree1(u, v, -o) ?? []) {
      const t = turnInto(angle, path.t0)
      if (t < path.t1) out.push(t)
    }
    return
  }
  const { chain } = path
  for (let k = 0; k < pieceCount(chain); k++) {
    const [lo, hi] = [chain.breaks[k]!, chain.breaks[k + 1]!]
    const form = chainForm(chain, k, [...a, b])
    if (form.every((x) => Math.abs(x) < 1e-6 * Math.max(face.r, 1e-3))) continue
    for (const s of rootsBernstein(form, 0)) out.push(lo + s * (hi - lo))
  }
}

function numericRoots(face: FaceModel, path: Path3, d: Vec3, out: number[]): void {
  const q = [0, 0, 0]
  signChanges(
    path,
    (t) => {
      path3At(path, t, q)
      return dot(outwardAt(face, q), d)
    },
    1e-9,
    out,
  )
}

/** Places on a curve where a function of its parameter changes sign; none where it vanishes (within `still`) throughout. */
export function signChanges(path: Path3, f: (t: number) => number, still: number, out: number[]): void {
  const places = samplePlaces(path, 12)
  const values = places.map(f)
  if (values.every((x) => Math.abs(x) < still)) return
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [values[i - 1]!, values[i]!]
    if (a < 0 !== b < 0) out.push(bisected(f, places[i - 1]!, places[i]!, a))
  }
}
