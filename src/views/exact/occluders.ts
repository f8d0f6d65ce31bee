import Flatbush from 'flatbush'
import { rootsBernstein } from '../../geometry/bernstein.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Frame } from '../view.ts'
import type { BodyModel } from './body-model.ts'
import { SQUARE } from './edge-tracks.ts'
import { covers, type FaceModel, localDirection, toLocal } from './face-model.ts'
import { SheetSight } from './spline-sight.ts'
import type { Track } from './track.ts'
import { depthRange } from './twins.ts'
import type { Watcher } from './watch.ts'

/** A face that may hide something in one view. */
interface Occluder {
  readonly face: FaceModel
  /** Line of sight in the face's frame. */
  readonly l: Vec3
  /** No point of the face lies nearer to the eye than this. */
  readonly nearest: number
  /** Nor further away than this. */
  readonly furthest: number
  /** Of a spline surface. */
  readonly sight?: SheetSight
}

/** All faces of a body that may hide something in one view, found by place. */
export interface Occluders {
  readonly list: readonly Occluder[]
  readonly index: Flatbush | undefined
  readonly model: BodyModel
  readonly frame: Frame
  readonly watcher: Watcher
}

export function occluders(model: BodyModel, frame: Frame, tracks: readonly Track[], watcher: Watcher): Occluders {
  const d = frame.toViewer
  const boxes = new Map<number, Bounds>()
  for (const face of model.faces) boxes.set(face.id, ownBounds(face, frame))
  for (const track of tracks) {
    if (track.edge === undefined) continue
    const { space } = track
    let [low, high] = [-Infinity, Infinity]
    if (space.kind !== 'chain') [low, high] = depthRange(track, d)
    for (const face of track.faces) grow(boxes.get(face.id)!, track.box, low, high)
  }
  const list: Occluder[] = []
  const places: Bounds[] = []
  for (const face of model.faces) {
    watcher.step()
    const l = localDirection(face, d)
    if (face.kind === 'plane' && (model.closed ? l[2] <= SQUARE : Math.abs(l[2]) <= SQUARE)) continue
    if (face.kind === 'cylinder' && Math.hypot(l[0], l[1]) < SQUARE) continue
    const b = boxes.get(face.id)!
    const sight = face.kind === 'spline' ? new SheetSight(face.sheet(), frame) : undefined
    if (sight) {
      const [x0, y0, x1, y1, high] = sight.bounds
      grow(b, [x0, y0, x1, y1], -Infinity, high)
    }
    if (!(b.x1 >= b.x0)) continue
    list.push({ face, l, nearest: b.high, furthest: b.low, ...(sight ? { sight } : {}) })
    places.push(b)
  }
  let index: Flatbush | undefined
  if (list.length > 0) {
    const pad = model.tolerances.touch
    index = new Flatbush(list.length)
    for (const b of places) index.add(b.x0 - pad, b.y0 - pad, b.x1 + pad, b.y1 + pad)
    index.finish()
  }
  return { list, index, model, frame, watcher }
}

interface Bounds {
  x0: number
  y0: number
  x1: number
  y1: number
  low: number
  high: number
}

/** What a face reaches beyond its borders: ruled faces nothing but their apex. */
function ownBounds(face: FaceModel, frame: Frame): Bounds {
  const b: Bounds = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity, low: Infinity, high: -Infinity }
  const add = (c: Vec3, reach: number) => {
    const x = dot(c, frame.right)
    const y = dot(c, frame.up)
    const depth = dot(c, frame.toViewer)
    grow(b, [x - reach, y - reach, x + reach, y + reach], depth - reach, depth + reach)
  }
  if (face.kind === 'sphere') add(face.o, face.r)
  if (face.kind === 'torus') add(face.o, face.major + face.r)
  if (face.kind === 'cone') {
    const h = -face.r / face.k
    add([face.o[0] + h * face.z[0], face.o[1] + h * face.z[1], face.o[2] + h * face.z[2]], 0)
  }
  return b
}

function grow(b: Bounds, box: readonly [number, number, number, number], low: number, high: number): void {
  b.x0 = Math.min(b.x0, box[0])
  b.y0 = Math.min(b.y0, box[1])
  b.x1 = Math.max(b.x1, box[2])
  b.y1 = Math.max(b.y1, box[3])
  b.low = Math.min(b.low, low)
  b.high = Math.max(b.high, high)
}

/** Whether anything lies between a point of the solid's border curves and the eye. `own`: faces the point lies on. */
export function isHidden(all: Occluders, p: readonly number[], own: readonly FaceModel[]): boolean {
  if (!all.index) return false
  const { right, up, toViewer: d } = all.frame
  const x = p[0]! * right[0] + p[1]! * right[1] + p[2]! * right[2]
  const y = p[0]! * up[0] + p[1]! * up[1] + p[2]! * up[2]
  const depth = p[0]! * d[0] + p[1]! * d[1] + p[2]! * d[2]
  const touch = all.model.tolerances.touch
  let hidden = false
  all.index.search(x, y, x, y, (i) => {
    if (hidden) return false
    const o = all.list[i]!
    if (o.nearest <= depth + touch) return false
    all.watcher.step()
    const mine = own.includes(o.face)
    if (o.sight ? sheetHides(all.model, o.face, o.sight, [x, y, depth], mine) : hides(all.model, o, p, mine))
      hidden = true
    return false
  })
  return hidden
}

const q = [0, 0, 0]
const hit = [0, 0, 0]

function hides(model: BodyModel, o: Occluder, p: readonly number[], own: boolean): boolean {
  const { face, l } = o
  toLocal(face, p, q)
  if (face.kind === 'plane') {
    if (own) return false
    // distance of the plane in front of the point, square to it
    const h = l[2] > 0 ? -q[2]! : q[2]!
    if (h <= model.tolerances.touch) return false
    return reaches(face, l, -q[2]! / l[2])
  }
  if (face.kind === 'torus') return torusHides(model, o, own)
  const { r, k, e, sign } = face
  const w = r + k * q[2]!
  const a = l[0] * l[0] + l[1] * l[1] + (e - k * k) * l[2] * l[2]
  const b = q[0]! * l[0] + q[1]! * l[1] + (e * q[2]! - k * w) * l[2]
  const c = q[0]! * q[0]! + q[1]! * q[1]! + e * q[2]! * q[2]! - (k === 0 ? r * r : w * w)
  const disc = b * b - a * c
  if (disc <= 0) return false
  // a line that only grazes the surface is not stopped by it: the outline there is drawn anyway
  if (a > 1e-12 && disc / a < 2 * r * model.tolerances.touch) return false
  const root = Math.sqrt(disc)
  const gradient = Math.sqrt(q[0]! * q[0]! + q[1]! * q[1]! + e * q[2]! * q[2]! + k * k * w * w)
  const touches = own || Math.abs(c) <= 2 * model.tolerances.touch * gradient
  for (const side of model.closed ? [sign] : [1, -1]) {
    // the root at which gradient · d has this sign
    if (touches && b * side >= 0) continue
    const s = side > 0 ? nearer(a, b, c, root) : -nearer(a, -b, c, root)
    if (s > 0 && Number.isFinite(s) && (k === 0 || w + k * s * l[2] > 0) && reaches(face, l, s)) return true
  }
  return false
}

/** The root of a s² + 2 b s + c at which a s + b = +root, without cancellation. */
function nearer(a: number, b: number, c: number, root: number): number {
  return b > 0 ? -c / (b + root) : (root - b) / a
}

function reaches(face: FaceModel, l: Vec3, s: number): boolean {
  hit[0] = q[0]! + s * l[0]
  hit[1] = q[1]! + s * l[1]
  hit[2] = q[2]! + s * l[2]
  return covers(face, hit)
}

/** [x, y, depth] in view coordinates. */
function sheetHides(
  model: BodyModel,
  face: FaceModel,
  sight: SheetSight,
  [x, y, depth]: readonly [number, number, number],
  own: boolean,
): boolean {
  const { touch, spline } = model.tolerances
  let hits = sight.hits(x, y)
  // the point itself; edges lie off a spline surface by what the kernel takes for nothing
  const contact = hits.reduce(
    (a, h) => (Math.abs(h.depth - depth) < Math.abs(a - depth) ? h.depth : a),
    Number.POSITIVE_INFINITY,
  )
  if (own) hits = hits.filter((h) => h.depth !== contact)
  for (const h of hits) {
    const facing = face.sign * h.facing
    if (h.depth - depth <= (own ? Math.max(touch, spline) : touch)) continue
    // grazing within the tolerance
    if (facing * facing * model.size < 4 * touch) continue
    if (model.closed && facing <= 0) continue
    if (face.splineTrim().covers([h.u, h.v])) return true
  }
  return false
}

/** A line of sight meets a torus where a quartic vanishes. */
function torusHides(model: BodyModel, o: Occluder, own: boolean): boolean {
  const { face, l } = o
  const { major, r, sign } = face
  const touch = model.tolerances.touch
  const off = Math.abs(Math.hypot(Math.hypot(q[0]!, q[1]!) - major, q[2]!) - r)
  const touches = own || off <= touch
  const along = q[0]! * l[0] + q[1]! * l[1] + q[2]! * l[2]
  // the stretch of the line within the torus' ball; where the point lies on the surface, its own meeting included
  const reach2 = (major + r) ** 2 - (q[0]! ** 2 + q[1]! ** 2 + q[2]! ** 2 - along * along)
  if (reach2 <= 0) return false
  const reach = Math.sqrt(reach2) + r
  const from = Math.max(-along - reach, touches ? -2 * r : 0)
  const to = -along + reach
  if (to <= 0) return false
  const len = to - from
  // F = (|p|² + R² - r²)² - 4 R² (x² + y²) on the line, in powers of u = (s - from) / len
  const x = q[0]! + from * l[0]
  const y = q[1]! + from * l[1]
  const z = q[2]! + from * l[2]
  const m = (x * l[0] + y * l[1] + z * l[2]) * len
  const g0 = x * x + y * y + z * z + major * major - r * r
  const g = [g0, g0 + m, g0 + 2 * m + len * len]
  const h0 = x * x + y * y
  const h1 = (x * l[0] + y * l[1]) * len
  const h2 = (l[0] * l[0] + l[1] * l[1]) * len * len
  const h = [h0, h0 + h1, h0 + 2 * h1 + h2]
  const four = 4 * major * major
  // degree 2 raised to 4, and the square of a degree 2
  const up = [h[0]!, (h[0]! + h[1]!) / 2, (h[0]! + 4 * h[1]! + h[2]!) / 6, (h[1]! + h[2]!) / 2, h[2]!]
  const sq = [g[0]! * g[0]!, g[0]! * g[1]!, (g[0]! * g[2]! + 2 * g[1]! * g[1]!) / 3, g[1]! * g[2]!, g[2]! * g[2]!]
  const roots = rootsBernstein(
    sq.map((v, i) => v - four * up[i]!),
    0,
  ).map((u) => from + u * len)
  let contact = -1
  if (touches) {
    let least = Infinity
    roots.forEach((s, i) => {
      if (Math.abs(s) < least) {
        least = Math.abs(s)
        contact = i
      }
    })
  }
  for (let i = 0; i < roots.length; i++) {
    const s = roots[i]!
    if (i === contact || s <= 0) continue
    const hx = q[0]! + s * l[0]
    const hy = q[1]! + s * l[1]
    const hz = q[2]! + s * l[2]
    const rho = Math.hypot(hx, hy) || 1e-300
    const f = (rho - major) / rho
    const facing = (sign * (f * (hx * l[0] + hy * l[1]) + hz * l[2])) / r
    // grazing within the tolerance: half chord² / 2r
    if (Math.abs(facing) * Math.abs(facing) * r < 4 * touch) continue
    if (model.closed && facing <= 0) continue
    if (reaches(face, l, s)) return true
  }
  return false
}
