import Flatbush from 'flatbush'
import type { Arc2, Curve2 } from '../../geometry/curve2.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import { lengthOf, placed as placedCurve, pointAt, sweepParameter } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { LineKind, View } from '../../views/view.ts'
import { cuttingPlanePath } from '../cutting-plane-line.ts'
import type { PlacedView } from '../sheet.ts'
import { Squares } from './squares.ts'
import { along, dot } from './vec.ts'

/** A view where it stands on paper. */
export interface StandingView {
  readonly view: View
  readonly placed: PlacedView
  /** Outline's bounds, paper mm. */
  readonly box: Box2
}

export function standing(view: View, placed: PlacedView): StandingView {
  return { view, placed, box: { min: onPaper(placed, view.box.min), max: onPaper(placed, view.box.max) } }
}

export function onPaper(placed: PlacedView, p: Vec2): Vec2 {
  return [placed.origin[0] + p[0] * placed.scale, placed.origin[1] + p[1] * placed.scale]
}

/** Straight pieces of all view lines with a spatial index: what is already drawn when sizes arrive. Dashes count as whole. */
export class Ink {
  readonly views: readonly StandingView[]
  readonly kinds: readonly LineKind[]
  /** Index of the view of each piece. */
  readonly owners: readonly number[]
  /** a.x, a.y, b.x, b.y of each piece. */
  readonly ends: Float64Array
  /** Piece of a straight line, not of a curve. */
  readonly straight: readonly boolean[]
  readonly #index: Flatbush | undefined
  #squares: Squares | undefined
  readonly #lines: readonly { a: Vec2; b: Vec2; kind: LineKind; owner: number }[]
  readonly #hatched: readonly { owner: number; box: Box2; loops: readonly (readonly Vec2[])[] }[]
  readonly #circles: readonly { owner: number; c: Vec2; r: number }[]
  readonly #arcs: readonly { owner: number; arc: Arc2 }[]
  readonly found: Int32Array
  /** By view and direction. */
  readonly #inTheWay: number[] = []

  constructor(views: readonly StandingView[]) {
    this.views = views
    const kinds: LineKind[] = []
    const owners: number[] = []
    const straight: boolean[] = []
    const ends: number[] = []
    const lines: { a: Vec2; b: Vec2; kind: LineKind; owner: number }[] = []
    const hatched: { owner: number; box: Box2; loops: readonly (readonly Vec2[])[] }[] = []
    const circles: { owner: number; c: Vec2; r: number }[] = []
    const arcs: { owner: number; arc: Arc2 }[] = []
    const piece = (kind: LineKind, owner: number, isStraight: boolean, a: Vec2, b: Vec2) => {
      kinds.push(kind)
      owners.push(owner)
      straight.push(isStraight)
      ends.push(a[0], a[1], b[0], b[1])
    }
    views.forEach(({ view, placed: at, box: outline }, owner) => {
      for (const line of view.lines) {
        const curve = grown(placedCurve(line.curve, at.scale, at.origin), line.overrun)
        if (curve.kind === 'line') lines.push({ a: curve.a, b: curve.b, kind: line.kind, owner })
        if (curve.kind === 'arc' && line.kind === 'visible') circles.push({ owner, c: curve.c, r: curve.r })
        if (curve.kind === 'arc' && line.kind !== 'centre') arcs.push({ owner, arc: curve })
        const points = flattened(curve)
        for (let i = 1; i < points.length; i++)
          piece(line.kind, owner, curve.kind === 'line', points[i - 1]!, points[i]!)
      }
      for (const plane of view.cuttingPlanes) {
        const path = cuttingPlanePath(plane, (p) => onPaper(at, p), outline)
        for (let i = 1; i < path.length; i++) piece('cutting plane', owner, true, path[i - 1]!, path[i]!)
      }
      for (const region of view.hatched) {
        const loops = region.map((loop) => loop.flatMap((c) => flattened(placedCurve(c, at.scale, at.origin)).slice(1)))
        const outer = loops[0]
        if (outer && outer.length > 2) hatched.push({ owner, box: boundsOf(outer), loops })
      }
    })
    this.kinds = kinds
    this.owners = owners
    this.straight = straight
    this.ends = Float64Array.from(ends)
    this.found = new Int32Array(kinds.length)
    this.#lines = lines
    this.#hatched = hatched
    this.#circles = circles
    this.#arcs = arcs
    if (kinds.length > 0) {
      const index = new Flatbush(kinds.length)
      for (let i = 0; i < ends.length; i += 4) {
        const [ax, ay, bx, by] = [ends[i]!, ends[i + 1]!, ends[i + 2]!, ends[i + 3]!]
        index.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by))
      }
      index.finish()
      this.#index = index
    }
  }

  /** Numbers of the pieces whose bounds touch the box. */
  search(x0: number, y0: number, x1: number, y1: number): readonly number[] {
    return this.#index ? this.#index.search(x0, y0, x1, y1) : []
  }

  /** Goes through the same pieces without listing them; `look` tells whether it has seen enough. */
  visit(x0: number, y0: number, x1: number, y1: number, look: (piece: number) => boolean): void {
    let enough = false
    this.#index?.search(x0, y0, x1, y1, (piece) => {
      if (!enough) enough = look(piece)
      return false
    })
  }

  /**
   * Numbers of the same pieces, in `found` up to the count that is returned, until the next search of this kind: for loops
   * that run hundreds of thousands of times, in which a function for each piece is dear.
   */
  gather(x0: number, y0: number, x1: number, y1: number): number {
    const { found } = this
    let count = 0
    this.#index?.search(x0, y0, x1, y1, (piece) => {
      found[count++] = piece
      return false
    })
    return count
  }

  /** Goes through the pieces that may meet the line, each once; `look` tells whether it has seen enough. */
  along(ax: number, ay: number, bx: number, by: number, look: (piece: number) => boolean): void {
    this.#squares ??= new Squares(this.ends)
    this.#squares.along(ax, ay, bx, by, look)
  }

  /**
   * Where an extension line that leaves `from` along the unit vector `way` may begin: the distance to the far end of
   * everything of its own view drawn along that ray (the edge itself, a centre line that serves as extension line), and
   * clear of an arc that runs on from there. `straight` is without that arc.
   */
  runOut(
    owner: number,
    from: Vec2,
    way: Vec2,
  ): { readonly distance: number; readonly straight: number; readonly centre: boolean } {
    let outline: number | undefined
    let centre: number | undefined
    for (const line of this.#lines) {
      if (line.owner !== owner || line.kind === 'hatching' || line.kind === 'cutting plane') continue
      const ax = line.a[0] - from[0]
      const ay = line.a[1] - from[1]
      if (Math.abs(ax * way[1] - ay * way[0]) > 0.02) continue
      const bx = line.b[0] - from[0]
      const by = line.b[1] - from[1]
      if (Math.abs(bx * way[1] - by * way[0]) > 0.02) continue
      const end = Math.max(ax * way[0] + ay * way[1], bx * way[0] + by * way[1])
      if (end < -0.05) continue
      if (line.kind === 'centre') centre = Math.max(centre ?? 0, end)
      else outline = Math.max(outline ?? 0, end)
    }
    if (centre !== undefined && centre >= (outline ?? 0) - 0.05)
      return { distance: centre, straight: centre, centre: true }
    const end = outline ?? 0
    return { distance: end + this.#round(owner, along(from, way, end), way), straight: end, centre: false }
  }

  /** Whether a straight line of the view, a centre line or a cutting-plane line runs the whole way from `a` to `b` already. */
  runsAlong(owner: number, a: Vec2, b: Vec2): boolean {
    const within = 0.05
    let found = false
    this.visit(
      Math.min(a[0], b[0]) - within,
      Math.min(a[1], b[1]) - within,
      Math.max(a[0], b[0]) + within,
      Math.max(a[1], b[1]) + within,
      (i) => {
        if (this.owners[i] !== owner || !this.straight[i] || !SERVING.has(this.kinds[i]!)) return false
        const k = 4 * i
        const from: Vec2 = [this.ends[k]!, this.ends[k + 1]!]
        const [ux, uy] = [this.ends[k + 2]! - from[0], this.ends[k + 3]! - from[1]]
        const length = Math.hypot(ux, uy)
        found = [a, b].every(([x, y]) => {
          const [dx, dy] = [x - from[0], y - from[1]]
          const on = (dx * ux + dy * uy) / length
          return Math.abs(dx * uy - dy * ux) < within * length && on > -within && on < length + within
        })
        return found
      },
    )
    return found
  }

  /** Whether a visible line of the view runs through the point, or ends there. */
  atLine(owner: number, p: Vec2): boolean {
    return this.search(p[0] - OWN, p[1] - OWN, p[0] + OWN, p[1] + OWN).some((i) => {
      if (this.owners[i] !== owner || this.kinds[i] !== 'visible') return false
      const k = 4 * i
      const [ax, ay] = [this.ends[k]!, this.ends[k + 1]!]
      const [ux, uy] = [this.ends[k + 2]! - ax, this.ends[k + 3]! - ay]
      const t = Math.max(0, Math.min(1, ((p[0] - ax) * ux + (p[1] - ay) * uy) / (ux * ux + uy * uy || 1)))
      return Math.hypot(ax + t * ux - p[0], ay + t * uy - p[1]) < OWN
    })
  }

  /** The straight visible edge that runs through `p` along `way`: its two ends as coordinates along `way`. */
  edge(owner: number, p: Vec2, way: Vec2): readonly [number, number] | undefined {
    const own = dot(p, way)
    const pieces: [number, number][] = []
    for (const { a, b, kind, owner: o } of this.#lines) {
      if (o !== owner || kind !== 'visible') continue
      if (Math.abs((a[0] - p[0]) * way[1] - (a[1] - p[1]) * way[0]) > 0.02) continue
      if (Math.abs((b[0] - p[0]) * way[1] - (b[1] - p[1]) * way[0]) > 0.02) continue
      const [s, e] = [dot(a, way), dot(b, way)]
      pieces.push(s < e ? [s, e] : [e, s])
    }
    return pieces.find(([s, e]) => e - s > 0.1 && s < own + 0.05 && e > own - 0.05)
  }

  /**
   * Where an arc leaves `at` along `way` (a rounded corner, the end of a slot): how far until it stands clear to one side,
   * so that the gap of an extension line can be seen.
   */
  #round(owner: number, at: Vec2, way: Vec2): number {
    let furthest = 0
    for (const { owner: o, arc } of this.#arcs) {
      if (o !== owner) continue
      const rx = at[0] - arc.c[0]
      const ry = at[1] - arc.c[1]
      if (Math.abs(Math.hypot(rx, ry) - arc.r) > 0.05 || Math.abs(rx * way[0] + ry * way[1]) > 0.05) continue
      const angle = Math.atan2(ry, rx)
      const step = 0.2 * (rx * way[1] - ry * way[0] > 0 ? 1 : -1)
      if (sweepParameter(arc.from, arc.sweep, angle + step) === undefined) continue
      furthest = Math.max(furthest, Math.min(arc.r, Math.sqrt(2 * arc.r * 0.6)))
    }
    return furthest
  }

  /** True when the ray from `p` along the axis-aligned unit vector meets no visible line of the view before leaving it. */
  sees(owner: number, p: Vec2, way: Vec2): boolean {
    return this.#seesFrom(owner, p[0], p[1], way)
  }

  /** True where the point sees out of the view level or upright: it lies beside the part, or in a void open to one side. */
  seesOut(owner: number, x: number, y: number): boolean {
    for (const way of WAYS) if (this.#seesFrom(owner, x, y, way)) return true
    return false
  }

  #seesFrom(owner: number, x: number, y: number, way: Vec2): boolean {
    // What was in the way last time, an edge of the outline as a rule, mostly is again.
    const key = 4 * owner + (way[0] > 0 ? 0 : way[0] < 0 ? 1 : way[1] > 0 ? 2 : 3)
    const last = this.#inTheWay[key]
    if (last !== undefined && this.#inWay(last, owner, x, y, way)) return false
    const { box } = this.views[owner]!
    const reach = Math.max(box.max[0] - box.min[0], box.max[1] - box.min[1]) * 2 + 10
    const q = along([x, y], way, reach)
    let met: number | undefined
    this.visit(Math.min(x, q[0]), Math.min(y, q[1]), Math.max(x, q[0]), Math.max(y, q[1]), (i) => {
      if (this.#inWay(i, owner, x, y, way)) met = i
      return met !== undefined
    })
    if (met !== undefined) this.#inTheWay[key] = met
    return met === undefined
  }

  /** Whether the ray from the point meets the piece, a visible one of the view. */
  #inWay(i: number, owner: number, x: number, y: number, way: Vec2): boolean {
    if (this.owners[i] !== owner || this.kinds[i] !== 'visible') return false
    const k = 4 * i
    const ax = this.ends[k]! - x
    const ay = this.ends[k + 1]! - y
    const bx = this.ends[k + 2]! - x
    const by = this.ends[k + 3]! - y
    const a = ax * way[1] - ay * way[0]
    const b = bx * way[1] - by * way[0]
    if (a * b > 0 || (a === 0 && b === 0)) return false
    const t = a / (a - b)
    return (ax + t * (bx - ax)) * way[0] + (ay + t * (by - ay)) * way[1] > 0.1
  }

  /** Index of the view whose hatched region holds the point. */
  hatchedAt(x: number, y: number): number | undefined {
    for (const region of this.#hatched) {
      const { min, max } = region.box
      if (x < min[0] || x > max[0] || y < min[1] || y > max[1]) continue
      if (region.loops.filter((loop) => inside(loop, x, y)).length % 2 === 1) return region.owner
    }
    return undefined
  }

  get hasHatching(): boolean {
    return this.#hatched.length > 0
  }

  /** Whether an outline of the view other than the circles about `c` comes nearer to `p` than the circle of radius `r`. */
  nearerThan(owner: number, p: Vec2, { c, r }: { readonly c: Vec2; readonly r: number }): boolean {
    const reach = Math.hypot(p[0] - c[0], p[1] - c[1]) - r
    return this.search(p[0] - reach, p[1] - reach, p[0] + reach, p[1] + reach).some((i) => {
      if (this.owners[i] !== owner || this.kinds[i] !== 'visible') return false
      const k = 4 * i
      const [ax, ay, bx, by] = [this.ends[k]!, this.ends[k + 1]!, this.ends[k + 2]!, this.ends[k + 3]!]
      const own = (x: number, y: number) => Math.hypot(x - c[0], y - c[1]) < r + OWN
      if (own(ax, ay) && own(bx, by)) return false
      const [ux, uy] = [bx - ax, by - ay]
      const t = Math.max(0, Math.min(1, ((p[0] - ax) * ux + (p[1] - ay) * uy) / (ux * ux + uy * uy || 1)))
      return Math.hypot(ax + t * ux - p[0], ay + t * uy - p[1]) < reach
    })
  }

  /** Largest visible circle about a point of the view, paper mm; 0 where none. */
  radiusAt(owner: number, c: Vec2): number {
    let r = 0
    for (const circle of this.#circles) {
      if (circle.owner !== owner || circle.r <= r) continue
      if (Math.hypot(circle.c[0] - c[0], circle.c[1] - c[1]) < 0.05) r = circle.r
    }
    return r
  }
}

/** Lines within this of a hole's largest circle are the hole's own, mm. */
const OWN = 0.1

/** Lines that serve as extension lines where they run. */
const SERVING: ReadonlySet<LineKind> = new Set(['visible', 'centre', 'cutting plane'])

const WAYS: readonly Vec2[] = [
  [0, 1],
  [1, 0],
  [0, -1],
  [-1, 0],
]

function boundsOf(points: readonly Vec2[]): Box2 {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    x0 = Math.min(x0, x)
    y0 = Math.min(y0, y)
    x1 = Math.max(x1, x)
    y1 = Math.max(y1, y)
  }
  return { min: [x0, y0], max: [x1, y1] }
}

/** Even-odd rule. */
function inside(loop: readonly Vec2[], x: number, y: number): boolean {
  let is = false
  for (let i = 0, j = loop.length - 1; i < loop.length; j = i++) {
    const [ax, ay] = loop[i]!
    const [bx, by] = loop[j]!
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) is = !is
  }
  return is
}

/** A straight line with its overruns at both ends. */
function grown(curve: Curve2, overrun: readonly [number, number] | undefined): Curve2 {
  if (!overrun || curve.kind !== 'line') return curve
  const length = lengthOf(curve)
  if (length < 1e-9) return curve
  const u: Vec2 = [(curve.b[0] - curve.a[0]) / length, (curve.b[1] - curve.a[1]) / length]
  return { kind: 'line', a: along(curve.a, u, -overrun[0]), b: along(curve.b, u, overrun[1]) }
}

/** Points along a paper curve, chords within 0.05 mm of it. */
export function flattened(curve: Curve2): readonly Vec2[] {
  if (curve.kind === 'line') return [curve.a, curve.b]
  let n: number
  if (curve.kind === 'spline') n = Math.min(64, 6 * curve.poles.length)
  else {
    const r = curve.kind === 'arc' ? curve.r : Math.hypot(curve.major[0], curve.major[1])
    const step = 2 * Math.acos(1 - Math.min(0.5, 0.05 / Math.max(r, 0.1)))
    n = Math.max(2, Math.ceil(Math.abs(curve.sweep) / step))
  }
  return Array.from({ length: n + 1 }, (_, i) => pointAt(curve, i / n))
}
