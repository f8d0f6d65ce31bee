import type { Arc2, Curve2 } from '../../geometry/curve2.ts'
import { type Box2, boxOf, endOf, lengthOf, pointAt, startOf } from '../../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Body, Surface3 } from '../../kernel/body.ts'
import { boxOfCurve3, unionOfBoxes } from '../../kernel/box3.ts'
import type { View, ViewLine } from '../../views/view.ts'

const NEAR = 1e-4

export interface Found {
  readonly at: Vec2
  readonly seen: 'visible' | 'hidden' | 'nothing'
  /** It is a line of the faces asked for. */
  readonly own?: boolean
}

/** Which of several lines at one level is taken. */
interface Choice {
  /** Whichever comes nearest, not the longest. */
  readonly nearest?: boolean
  /** One of the faces' own, be it hidden, before another's that is at the same level by chance. */
  readonly own?: boolean
}

/** One view as a place for sizes: what can be seen where. */
export class Sight {
  readonly view: View
  readonly order: number
  private readonly outline: readonly ViewLine[]
  private readonly arcs: readonly { readonly curve: Arc2; readonly line: ViewLine }[]

  private readonly surfaces: ReadonlyMap<number, Surface3>
  private readonly body: Body
  private readonly boxes = new Map<number, Box2>()
  private readonly cutAt: number | undefined

  /** `all`: the views among which stands the one with this section's cutting-plane line. */
  constructor(view: View, order: number, body: Body, all: readonly View[] = []) {
    this.view = view
    this.cutAt = view.kind === 'section' ? cutLevel(view, all) : undefined
    this.order = order
    this.body = body
    this.surfaces = new Map(body.faces.map((f) => [f.id, f.surface]))
    this.outline = view.lines.filter((l) => l.kind === 'visible' || l.kind === 'hidden')
    this.arcs = this.outline.flatMap((line) => (line.curve.kind === 'arc' ? [{ curve: line.curve, line }] : []))
  }

  flat(p: Vec3): Vec2 {
    const { right, up } = this.view.frame
    return [dot(p, right), dot(p, up)]
  }

  /** Whether a section goes by these faces: it may show what stands behind it, but what it cuts is another's. */
  passesBy(faces: readonly number[]): boolean {
    const { cutAt, body, view } = this
    if (cutAt === undefined || faces.length === 0) return false
    const levels = body.edges.flatMap(({ curve, faces: sides }) => {
      if (!sides.some((f) => f !== undefined && faces.includes(f))) return []
      const { min, max } = boxOfCurve3(curve)
      return [min, max].map((p) => dot(p, view.frame.toViewer))
    })
    return Math.min(...levels) > cutAt - NEAR || Math.max(...levels) < cutAt + NEAR
  }

  /** The direction as seen, when it lies in the view's plane. */
  inPlane(direction: Vec3): Vec2 | undefined {
    return Math.abs(dot(direction, this.view.frame.toViewer)) < 1e-6 ? this.flat(direction) : undefined
  }

  /** Seen end-on: a circle about this axis shows true. */
  facing(axis: Vec3): boolean {
    return Math.abs(dot(axis, this.view.frame.toViewer)) > 1 - 1e-9
  }

  /** Whether a face shows its own roundness: a cylinder only end-on, for its edges with another may lie on that one's arc. */
  showsRound(face: number): boolean {
    const surface = this.surfaces.get(face)
    return surface?.kind !== 'cylinder' || this.facing(surface.axes.z)
  }

  /** Visible and hidden arcs about a point, largest first. */
  circles(centre: Vec2, radii?: readonly number[]): { curve: Arc2; visible: boolean }[] {
    return this.arcs
      .filter(({ curve }) => Math.hypot(curve.c[0] - centre[0], curve.c[1] - centre[1]) < NEAR)
      .filter(({ curve }) => !radii || radii.some((r) => Math.abs(r - curve.r) < NEAR))
      .map(({ curve, line }) => ({ curve: { ...curve, ...line.tapped?.open }, visible: line.kind === 'visible' }))
      .sort((a, b) => b.curve.r - a.curve.r || Number(b.visible) - Number(a.visible))
  }

  /** Whether a whole visible circle goes round the point. */
  withinCircle(at: Vec2): boolean {
    return this.arcs.some(
      ({ curve, line }) =>
        line.kind === 'visible' &&
        Math.abs(curve.sweep) > 2 * Math.PI - 1e-6 &&
        Math.hypot(at[0] - curve.c[0], at[1] - curve.c[1]) < curve.r + NEAR,
    )
  }

  /** Lines drawn for any of the faces. A section's own faces are others than the part's: there the geometry tells. */
  linesOf(faces: readonly number[]): ViewLine[] {
    if (this.view.kind !== 'section')
      return this.outline.filter((l) => l.sources.some((s) => s.faces.some((f) => faces.includes(f))))
    const own = faces.flatMap((f) => {
      const surface = this.surfaces.get(f)
      return surface ? [{ surface, box: this.boxOfFace(f) }] : []
    })
    return this.outline.filter((l) => own.some(({ surface, box }) => within(l.curve, box) && this.tracesOf(surface, l)))
  }

  /** The face's reach in this view: another on the same surface is not it. */
  private boxOfFace(face: number): Box2 | undefined {
    const known = this.boxes.get(face)
    if (known) return known
    const boxes = this.body.edges.flatMap(({ curve, faces }) => (faces.includes(face) ? [boxOfCurve3(curve)] : []))
    if (boxes.length === 0) return undefined
    const { min, max } = unionOfBoxes(boxes)
    const corners = [min, max].flatMap((p) =>
      [min, max].flatMap((q) => [min, max].map((s) => this.flat([p[0], q[1], s[2]]))),
    )
    const [xs, ys] = [corners.map((c) => c[0]), corners.map((c) => c[1])]
    const box: Box2 = { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] }
    this.boxes.set(face, box)
    return box
  }

  /** Whether a line of this view can be the outline or cut border of a surface that stands square to the view or about an axis in it. */
  private tracesOf(surface: Surface3, { curve }: ViewLine): boolean {
    if (surface.kind === 'spline') return false
    const { origin, z } = surface.axes
    const centre = this.flat(origin)
    const facing = this.facing(z)
    if (curve.kind === 'arc') {
      const r =
        surface.kind === 'torus'
          ? surface.minor
          : surface.kind === 'cylinder' || surface.kind === 'sphere'
            ? surface.r
            : -1
      if (Math.abs(curve.r - r) > NEAR) return false
      if (surface.kind !== 'torus') return facing || surface.kind === 'sphere' ? near(curve.c, centre) : false
      const way = this.inPlane(z)
      return !!way && Math.abs(Math.abs(cross2(sub2(curve.c, centre), way)) - surface.major) < NEAR
    }
    if (curve.kind !== 'line' || facing) return false
    const way = this.inPlane(z)
    if (!way) return false
    return [curve.a, curve.b].every((p) => {
      const d = sub2(p, centre)
      const along = d[0] * way[0] + d[1] * way[1]
      const off = Math.abs(cross2(d, way))
      if (surface.kind === 'plane') return Math.abs(along) < NEAR
      if (surface.kind === 'cylinder') return Math.abs(off - surface.r) < NEAR
      if (surface.kind === 'cone')
        return Math.abs(off - Math.abs(surface.r + along * Math.tan(surface.halfAngle))) < NEAR
      return false
    })
  }

  /**
   * Where a line square to `along` stands at the level, of the faces if possible: the end of the longest such line
   * that is nearest to `toward`.
   */
  level(along: Vec2, level: number, faces: readonly number[], toward?: Vec2, choice: Choice = {}): Found | undefined {
    const across: Vec2 = [-along[1], along[0]]
    const own = new Set(faces)
    const traced = this.view.kind === 'section' ? new Set(this.linesOf(faces)) : undefined
    let best: { score: number; at: Vec2; visible: boolean; mine: boolean } | undefined
    for (const line of this.outline) {
      const { curve } = line
      const ends = [startOf(curve), endOf(curve)]
      const on = (p: Vec2) => Math.abs(p[0] * along[0] + p[1] * along[1] - level) < NEAR
      const whole = curve.kind === 'line' && ends.every(on)
      const touch = whole ? ends : ends.filter(on)
      if (touch.length === 0) continue
      const mine = traced ? traced.has(line) : line.sources.some((s) => s.faces.some((f) => own.has(f)))
      const visible = line.kind === 'visible'
      const at = toward
        ? touch.reduce((p, q) => (distance(q, toward, across) < distance(p, toward, across) ? q : p))
        : touch[0]!
      const worth =
        toward && choice.nearest ? 900 / (1 + distance(at, toward, across) / 1e4) : Math.min(900, lengthOf(curve))
      const score = (visible ? 4000 : 0) + (mine ? (choice.own ? 8000 : 2000) : 0) + (whole ? 1000 + worth : 0)
      if (best && score <= best.score) continue
      best = { score, at, visible, mine }
    }
    return best && { at: best.at, seen: best.visible ? 'visible' : 'hidden', own: best.mine }
  }

  /** The outermost point along `along` of the arcs about a centre: where an overall size of a round end reaches. */
  extreme(along: Vec2, level: number): Found | undefined {
    for (const { curve, line } of this.arcs) {
      const p: Vec2 = [curve.c[0] + curve.r * along[0], curve.c[1] + curve.r * along[1]]
      const q: Vec2 = [curve.c[0] - curve.r * along[0], curve.c[1] - curve.r * along[1]]
      for (const at of [p, q]) {
        if (Math.abs(at[0] * along[0] + at[1] * along[1] - level) > NEAR) continue
        const box = boxOf(curve)
        const inside =
          at[0] > box.min[0] - NEAR &&
          at[0] < box.max[0] + NEAR &&
          at[1] > box.min[1] - NEAR &&
          at[1] < box.max[1] + NEAR
        if (inside) return { at, seen: line.kind === 'visible' ? 'visible' : 'hidden' }
      }
    }
    return undefined
  }

  /** How far the centre lines along `way` run on from a point, part mm: 0 where none stands there. */
  centreLine(from: Vec2, way: Vec2): number {
    const spans = this.view.lines.flatMap(({ kind, curve }): [number, number][] => {
      if (kind !== 'centre' || curve.kind !== 'line') return []
      const [a, b] = [curve.a, curve.b].map((p) => sub2(p, from))
      if (Math.abs(cross2(a!, way)) > NEAR || Math.abs(cross2(b!, way)) > NEAR) return []
      const [s, t] = [a!, b!].map((d) => d[0] * way[0] + d[1] * way[1])
      return [[Math.min(s!, t!), Math.max(s!, t!)]]
    })
    let reach = 0
    for (let grew = true; grew; ) {
      const on = spans.find(([s, t]) => s < reach + NEAR && t > reach + NEAR)
      grew = on !== undefined
      if (on) reach = on[1]
    }
    return reach
  }

  /** Whether any drawn line passes through the point. */
  through(at: Vec2): Found['seen'] {
    let seen: Found['seen'] = 'nothing'
    for (const { curve, kind } of this.outline) {
      const hit =
        curve.kind === 'line'
          ? onSegment(at, curve.a, curve.b)
          : curve.kind === 'arc'
            ? Math.abs(Math.hypot(at[0] - curve.c[0], at[1] - curve.c[1]) - curve.r) < NEAR
            : [0, 0.5, 1].some((t) => Math.hypot(...sub2(pointAt(curve, t), at)) < NEAR)
      if (hit && kind === 'visible') return 'visible'
      if (hit) seen = 'hidden'
    }
    return seen
  }
}

/** How far towards the viewer a section's one plane stands; undefined where it is offset or its line is in no view. */
function cutLevel(view: View, all: readonly View[]): number | undefined {
  for (const { frame, cuttingPlanes } of all) {
    const plane = cuttingPlanes.find((c) => view.id === `section ${c.letter}-${c.letter}`)
    if (!plane) continue
    const { right, up } = frame
    const { toViewer } = view.frame
    const levels = plane.path.map((p) => p[0] * dot(right, toViewer) + p[1] * dot(up, toViewer))
    if (levels.every((l) => Math.abs(l - levels[0]!) < NEAR)) return levels[0]
  }
  return undefined
}

function within(curve: Curve2, box: Box2 | undefined): boolean {
  if (!box) return true
  const own = boxOf(curve)
  return ([0, 1] as const).every((k) => own.min[k] > box.min[k] - NEAR && own.max[k] < box.max[k] + NEAR)
}

const near = (a: Vec2, b: Vec2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < NEAR
const cross2 = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0]
const sub2 = (a: Vec2, b: Vec2): [number, number] => [a[0] - b[0], a[1] - b[1]]
const distance = (a: Vec2, b: Vec2, across: Vec2): number =>
  Math.abs((a[0] - b[0]) * across[0] + (a[1] - b[1]) * across[1])

function onSegment(p: Vec2, a: Vec2, b: Vec2): boolean {
  const d = sub2(b, a)
  const length = Math.hypot(...d)
  if (length === 0) return false
  const t = ((p[0] - a[0]) * d[0] + (p[1] - a[1]) * d[1]) / (length * length)
  if (t < -1e-9 || t > 1 + 1e-9) return false
  return Math.abs((p[0] - a[0]) * d[1] - (p[1] - a[1]) * d[0]) / length < NEAR
}
