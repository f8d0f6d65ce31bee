import Flatbush from 'flatbush'
import type { Vec3 } from '../../geometry/vec.ts'
import { along, cross, dot, scale } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import { type Box3, boxOfCurve3, unionOfBoxes } from '../../kernel/box3.ts'
import { FRAMES } from '../frames.ts'
import { bodyModel } from './body-model.ts'
import { covers, type FaceModel, heightOver, outwardAt, toLocal } from './face-model.ts'
import { type Path3, path3At, path3Of } from './path3.ts'
import { throughSurface } from './piercings.ts'
import { silhouetteTracks } from './silhouettes.ts'
import type { Track } from './track.ts'
import { type Watch, Watcher } from './watch.ts'

/** Two solids that take up the same room: a face of each, and a place where a curve of one runs into the other, mm. */
export interface Interpenetration {
  readonly faces: readonly [number, number]
  readonly at: Vec3
}

/** Depth by which solids must overlap, and distance from a face's border, to count: less is contact, mm and of the whole. */
const DEEP = 1e-3
const DEEP_SHARE = 1e-6

/**
 * Solids of an assembly that cut into each other, each pair once. An edge, a seam or an outline seen from the front, the
 * top or the right that passes right through a face of another solid tells. Solids that touch, in faces, edges or
 * points, do not count, nor does a solid that lies wholly within another.
 */
export function interpenetrations(body: Body, watch: Watch = {}): Interpenetration[] {
  const watcher = new Watcher(watch, body.edges.length + body.faces.length)
  const model = bodyModel(body, watcher)
  if (model.shells < 2) return []
  const deep = DEEP + DEEP_SHARE * model.size
  const boxes = faceBoxes(body)
  const index = new Flatbush(model.faces.length)
  const faces = model.faces
  for (const { id } of faces) {
    const { min, max } = boxes.get(id)!
    index.add(min[0], min[1], max[0], max[1])
  }
  index.finish()
  const found: Interpenetration[] = []
  const known = new Set<string>()
  const look = (path: Path3, box: Box3, own: FaceModel) => {
    watcher.step()
    const shell = model.shellOf.get(own)!
    index.search(box.min[0], box.min[1], box.max[0], box.max[1], (i) => {
      const face = faces[i]!
      const other = model.shellOf.get(face)!
      if (other === shell) return false
      const { min, max } = boxes.get(face.id)!
      if (min[2] > box.max[2] || max[2] < box.min[2]) return false
      const pair = shell < other ? `${shell} ${other}` : `${other} ${shell}`
      if (known.has(pair)) return false
      watcher.step()
      const places: number[] = []
      throughSurface(model, path, face, places)
      const at = entry(path, places, face, deep)
      if (!at) return false
      known.add(pair)
      found.push({ faces: [own.id, face.id], at })
      return false
    })
  }
  const byId = new Map(faces.map((f) => [f.id, f]))
  for (const { curve, faces: beside } of body.edges) look(path3Of(curve), boxOfCurve3(curve), byId.get(beside[0])!)
  for (const frame of [FRAMES.front, FRAMES.top, FRAMES.right]) {
    const outlines: Track[] = []
    silhouetteTracks(model, frame, outlines, watcher)
    for (const {
      space,
      faces: [own],
    } of outlines)
      look(space, boxes.get(own!.id)!, own!)
  }
  return found
}

function faceBoxes(body: Body): Map<number, Box3> {
  const byEdge = new Map(body.edges.map((e) => [e.id, boxOfCurve3(e.curve)]))
  return new Map(
    body.faces.map(({ id, loops, surface }) => {
      const border = loops.flat().map(({ edge }) => byEdge.get(edge)!)
      if (surface.kind === 'sphere') border.push(ball(surface.axes.origin, surface.r))
      if (surface.kind === 'torus') border.push(ball(surface.axes.origin, surface.major + surface.minor))
      if (surface.kind === 'spline') for (const p of surface.poles.flat()) border.push({ min: p, max: p })
      return [id, unionOfBoxes(border)]
    }),
  )
}

const ball = (o: Vec3, r: number): Box3 => ({
  min: [o[0] - r, o[1] - r, o[2] - r],
  max: [o[0] + r, o[1] + r, o[2] + r],
})

/** The first of the places at which a curve passes from one side of a face to the other, well within its border. */
function entry(path: Path3, places: number[], face: FaceModel, deep: number): Vec3 | undefined {
  const stops = [path.t0, ...places.sort((a, b) => a - b), path.t1]
  for (let i = 1; i < stops.length - 1; i++) {
    const p = pointOn(path, stops[i]!)
    const [before, after] = [reach(path, stops[i - 1]!, stops[i]!, face), reach(path, stops[i]!, stops[i + 1]!, face)]
    if (Math.abs(before) <= deep || Math.abs(after) <= deep || before > 0 === after > 0) continue
    if (wellWithin(face, p, deep)) return p
  }
  return undefined
}

/** Furthest height over the face's surface on a stretch of a curve. */
function reach(path: Path3, from: number, to: number, face: FaceModel): number {
  let most = 0
  for (let i = 0; i <= 8; i++) {
    const h = height(face, pointOn(path, from + (i / 8) * (to - from)))
    if (Math.abs(h) > Math.abs(most)) most = h
  }
  return most
}

function height(face: FaceModel, p: Vec3): number {
  if (face.kind !== 'spline') return heightOver(face, p)
  const sheet = face.sheet()
  const q = sheet.at(...sheet.nearest(p))
  const n = outwardAt(face, p)
  return dot([p[0] - q.p[0], p[1] - q.p[1], p[2] - q.p[2]], n)
}

/** Whether the face goes on by `deep` to all sides of a point of its surface. */
function wellWithin(face: FaceModel, p: Vec3, deep: number): boolean {
  const n = outwardAt(face, p)
  const least = Math.abs(n[0]) < 0.6 ? ([1, 0, 0] as const) : ([0, 1, 0] as const)
  const raw = cross(n, least)
  const u = scale(raw, 1 / Math.hypot(...raw))
  const v = cross(n, u)
  return [u, v].every((side) =>
    [deep, -deep].every((k) => {
      toLocal(face, along(p, side, k), local)
      return covers(face, local)
    }),
  )
}

const local = [0, 0, 0]

function pointOn(path: Path3, t: number): Vec3 {
  const p: [number, number, number] = [0, 0, 0]
  path3At(path, t, p)
  return p
}
