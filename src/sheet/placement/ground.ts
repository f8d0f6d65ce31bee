import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { LineKind } from '../../views/view.ts'
import { CLEAR } from './clearances.ts'
import { Covered } from './covered.ts'
import type { Ink } from './ink.ts'
import { type Bar, entersSlab, meet, type Shape, type Slab, slab, TOUCH, withinSlab } from './shapes.ts'
import { WEIGHTS } from './weights.ts'

/** What must be left of a centre line, mm, on either side of text that breaks it. */
const LEFT_OF_CENTRE = 6
/** Nothing of a size comes nearer than this to the outline bounds of another view. */
const OTHER_VIEW = 2

/** A shoulder nearer than this to a parallel outline reads as a part of it, mm. */
const SHOULDER = 2.5
/** A leader nearer than this to a corner of the outline seems to point at it, mm. */
const CORNER = 1

/** A line that comes so near to a curve, mm, and within this angle (its sine) of it, grazes it; not where it begins. */
const GRAZE = 1
const GRAZE_ANGLE = 0.42
const BEGINNING = 3

/** An elbow nearer than this to an outline stands on it to the eye, mm. */
const ELBOW = 2

/** An extension line further over the part than this no longer leads the eye from the feature to its size, mm; the figure is ours. */
const FAR = 25

/** From so many texts on it pays to know which paper is covered. */
const MANY = 400

type Weighed = 'visible' | 'hidden' | 'centre' | 'other'

function weighed(kind: LineKind): Weighed {
  return kind === 'visible' || kind === 'hidden' || kind === 'centre' ? kind : 'other'
}

/** What sizes are placed on: the views' ink, the bounds of the drawing area, and what must stay free. */
export class Ground {
  readonly #ink: Ink
  readonly #bounds: Slab
  readonly #obstacles: readonly Slab[]
  readonly #passable: readonly Slab[]
  readonly #views: readonly Slab[]
  readonly #first: number
  readonly #hatchAngle: number
  #covered: Covered | undefined
  #texts = 0
  /** The text that was looked at last: it is asked about when its place is made, and again when that is weighed. */
  #lastText: Slab | undefined
  #lastCost = 0

  constructor(
    ink: Ink,
    bounds: Box2,
    obstacles: readonly Box2[],
    passable: readonly Box2[],
    first: number,
    hatchAngle: number,
  ) {
    this.#ink = ink
    this.#bounds = boxSlab(bounds, 0)
    this.#obstacles = obstacles.map((b) => boxSlab(b, 0))
    this.#passable = passable.map((b) => boxSlab(b, 0))
    this.#views = ink.views.map((v) => boxSlab(v.box, 0))
    this.#first = first
    this.#hatchAngle = (hatchAngle * Math.PI) / 180
  }

  /**
   * Cost of the shapes of view `owner` by themselves; `Infinity` where text would lie on a line or off the field. Where it
   * is more than `most`, something between.
   */
  cost(shapes: readonly Shape[], owner: number, onPart: boolean, most: number): number {
    let sum = 0
    for (const s of shapes) {
      if (!this.#free(s, owner)) return Infinity
      const ink = s.shape === 'slab' ? this.#slabCost(s) : this.#barCost(s, most - sum)
      if (ink === Infinity) return ink
      sum += s.shape === 'slab' ? ink + this.#voidCost(s, owner, onPart) : ink
      if (sum > most) return sum
    }
    return sum
  }

  /** False where text could not stand whatever else is there. */
  holdsText(s: Slab, owner: number): boolean {
    return this.#free(s, owner) && this.#slabCost(s) < Infinity
  }

  #free(s: Shape, owner: number): boolean {
    const b = this.#bounds
    if (s.x0 < b.x0 || s.y0 < b.y0 || s.x1 > b.x1 || s.y1 > b.y1) return false
    const clear = s.shape === 'bar' ? CLEAR.lineToObstacle : CLEAR.obstacle
    for (const o of this.#obstacles) if (touches(s, o, clear)) return false
    if (s.role !== 'extension') for (const o of this.#passable) if (touches(s, o, clear)) return false
    for (let i = 0; i < this.#views.length; i++) {
      if (i !== owner && touches(s, this.#views[i]!, OTHER_VIEW)) return false
    }
    return true
  }

  #slabCost(s: Slab): number {
    if (s.role !== 'text') return this.#inkUnder(s)
    if (s !== this.#lastText) {
      this.#lastText = s
      this.#lastCost = this.#inkUnder(s)
    }
    return this.#lastCost
  }

  #inkUnder(s: Slab): number {
    const ink = this.#ink
    const margin = s.role === 'text' ? CLEAR.ink : -0.1
    const body = s.role === 'arrow' ? behindTip(s) : s
    let sum = 0
    const { ends, kinds, found } = ink
    const count = ink.gather(s.x0 - margin, s.y0 - margin, s.x1 + margin, s.y1 + margin)
    for (let n = 0; n < count; n++) {
      const i = found[n]!
      const k = 4 * i
      if (!entersSlab(ends[k]!, ends[k + 1]!, ends[k + 2]!, ends[k + 3]!, body, margin)) continue
      if (s.role === 'text') sum += this.#breakable(s, i) ? WEIGHTS.textOverCentre : Infinity
      else if (s.inGroove && kinds[i] === 'visible') sum += WEIGHTS.headInGroove
      else sum += WEIGHTS.over.arrow[weighed(kinds[i]!)]
      if (sum === Infinity) return sum
    }
    if (s.role !== 'text') return sum
    if (ink.hasHatching && ink.hatchedAt(s.cx, s.cy) !== undefined) return Infinity
    return sum
  }

  /**
   * True only where level text, given by its middle and half its size, surely lies on a line that is never broken; costs
   * little.
   */
  onUnbreakable(cx: number, cy: number, hw: number, hh: number): boolean {
    this.#texts++
    if (!this.#covered) {
      if (this.#texts < MANY) return false
      const { ends, kinds, straight } = this.#ink
      this.#covered = new Covered(ends, (i) => kinds[i] !== 'centre' || !straight[i])
    }
    return this.#covered.surely(cx - hw - CLEAR.ink, cy - hh - CLEAR.ink, cx + hw + CLEAR.ink, cy + hh + CLEAR.ink)
  }

  /** What a leader costs at the least for the lines that it crosses; looked into no further than that it is more than `most`. */
  crossedBy(tip: Vec2, ex: number, ey: number, most: number): number {
    const ink = this.#ink
    const { ends, kinds } = ink
    let sum = 0
    ink.along(tip[0], tip[1], ex, ey, (i) => {
      const k = 4 * i
      const m = meet(tip[0], tip[1], ex, ey, ends[k]!, ends[k + 1]!, ends[k + 2]!, ends[k + 3]!)
      if (m.how === 'cross') sum += WEIGHTS.over.leader[weighed(kinds[i]!)]
      return sum > most
    })
    return sum
  }

  /** What text costs beside its ink: where it lies on the part, and less in a hole of it. */
  #voidCost(s: Slab, owner: number, onPart: boolean): number {
    if (s.role !== 'text' || onPart || s.inStep) return 0
    if (s.ofLeader) return this.noteCost(s.cx, s.cy, s.hw, s.hh, owner)
    if (!this.#within(s.cx, s.cy, owner)) return 0
    return this.#ink.seesOut(owner, s.cx, s.cy) ? WEIGHTS.textInVoid : WEIGHTS.textOverPart
  }

  /** What the text of a leader, given by its middle and half its size, costs for where it lies on the part. */
  noteCost(cx: number, cy: number, hw: number, hh: number, owner: number): number {
    if (!this.#within(cx, cy, owner)) return 0
    if (this.#ink.seesOut(owner, cx, cy)) return WEIGHTS.textInVoid
    return Math.min(WEIGHTS.textOverPart, WEIGHTS.noteOverPart + WEIGHTS.largeNoteOverPart * 4 * hw * hh)
  }

  #within(x: number, y: number, owner: number): boolean {
    const view = this.#views[owner]!
    return x > view.x0 && x < view.x1 && y > view.y0 && y < view.y1
  }

  /** A straight centre line may be broken for text where enough of it is left on both sides. */
  #breakable(s: Slab, i: number): boolean {
    const ink = this.#ink
    if (ink.kinds[i] !== 'centre' || !ink.straight[i]) return false
    const [ax, ay, bx, by] = [ink.ends[4 * i]!, ink.ends[4 * i + 1]!, ink.ends[4 * i + 2]!, ink.ends[4 * i + 3]!]
    const within = withinSlab(ax, ay, bx, by, s, CLEAR.ink)
    if (!within) return true
    const length = Math.hypot(bx - ax, by - ay)
    const left = Math.min(within[0], 1 - within[1]) * length
    return left > LEFT_OF_CENTRE && (within[1] - within[0]) * 3 < 1
  }

  #barCost(b: Bar, most: number): number {
    const ink = this.#ink
    const role =
      b.role === 'extension' ? 'extension' : b.role === 'leader' || b.role === 'shoulder' ? 'leader' : 'dimension'
    const table = WEIGHTS.over[b.role === 'shoulder' ? 'shoulder' : role]
    const length = Math.hypot(b.bx - b.ax, b.by - b.ay)
    if (length < TOUCH) return 0
    const level = b.ay === b.by || b.ax === b.bx
    // A parallel outline nearer than the first row counts against a dimension line.
    // So does one beside a shoulder, which would read as a double line.
    const reach = !level
      ? 0
      : b.role === 'shoulder'
        ? SHOULDER
        : role === 'dimension' && b.role !== 'across'
          ? this.#first - 0.1
          : 0
    const isLeader = b.role === 'leader'
    const isShoulder = b.role === 'shoulder'
    const mayGraze = isLeader || role === 'extension'
    const wide = mayGraze ? GRAZE : reach
    const rx = isShoulder ? ELBOW : isLeader || b.ax === b.bx ? wide : 0
    const ry = isLeader || b.ay === b.by ? wide : 0
    let sum = 0
    let nearOutline = false
    let atCorner = false
    let atElbow = false
    let grazing = false
    let besideEdge = false
    let overPart = 0
    const { ends, kinds, straight, found } = ink
    const count = ink.gather(b.x0 - rx, b.y0 - ry, b.x1 + rx, b.y1 + ry)
    for (let n = 0; n < count; n++) {
      const i = found[n]!
      const k = 4 * i
      const m = meet(b.ax, b.ay, b.bx, b.by, ends[k]!, ends[k + 1]!, ends[k + 2]!, ends[k + 3]!)
      const kind = kinds[i]!
      if (kind === 'visible') {
        if (isLeader && straight[i] && (overCorner(b, length, ends, k) || overCorner(b, length, ends, k + 2)))
          atCorner = true
        if (isShoulder && nearPiece(b.ax, b.ay, ends, k) < ELBOW) atElbow = true
        if (mayGraze && !straight[i] && grazes(b, length, ends, k)) grazing = true
      }
      if (m.how === 'apart') continue
      if (m.how === 'cross') {
        sum += table[weighed(kind)]
        if (role === 'extension' && kind === 'visible') overPart = Math.max(overPart, crossingAt(b, length, ends, k))
      } else if (m.how === 'along') {
        // A centre line serves as extension line.
        if (role === 'extension' && kind === 'centre') continue
        if (isShoulder) nearOutline = true
        else if (m.overlap > 0.6) sum += role === 'dimension' ? WEIGHTS.nearOutline : WEIGHTS.alongOutline
      } else if (reach > 0 && kind === 'visible' && straight[i] && m.overlap > 1) nearOutline = true
      else if (role === 'extension' && level && kind === 'visible' && m.distance < GRAZE && m.overlap > 3)
        besideEdge = true
      else if (role === 'extension' && !level && m.distance < 1.8 && m.overlap > 3 && kind !== 'centre')
        sum += WEIGHTS.tooClose / 2
      if (sum > most) return sum
    }
    if (role === 'extension') {
      for (const o of this.#passable) if (touches(b, o, 0)) sum += WEIGHTS.extensionOverSectionArrow
    }
    if (nearOutline) sum += b.role === 'shoulder' ? WEIGHTS.shoulderNearOutline : WEIGHTS.nearOutline
    if (atCorner) sum += WEIGHTS.leaderOverCorner
    if (grazing) sum += WEIGHTS.grazing
    if (besideEdge) sum += WEIGHTS.besideEdge
    if (atElbow) sum += WEIGHTS.elbowAtOutline
    sum += WEIGHTS.extensionOverPart * overPart + WEIGHTS.farOverPart * Math.max(0, overPart - FAR)
    if (ink.hasHatching && this.#overHatching(b)) {
      sum += WEIGHTS.overHatching
      if (b.role === 'leader') {
        const a = Math.atan2(b.by - b.ay, b.bx - b.ax)
        // Hatching of a neighbouring part leans the other way; a leader along either misleads.
        for (const h of [this.#hatchAngle, -this.#hatchAngle]) {
          if (Math.abs(Math.sin(a - h)) < Math.sin(Math.PI / 18)) sum += WEIGHTS.alongHatching
        }
      }
    }
    return sum
  }

  /** Looked at in places along the bar, its ends left out: they may touch a hatched edge. */
  #overHatching(b: Bar): boolean {
    return [0.1, 0.25, 0.4, 0.55, 0.7, 0.85].some(
      (t) => this.#ink.hatchedAt(b.ax + t * (b.bx - b.ax), b.ay + t * (b.by - b.ay)) !== undefined,
    )
  }
}

/** An arrowhead without its point, which is too slender to hide a line (narrower than 0.4 mm). */
function behindTip(s: Slab): Slab {
  const cut = Math.min(s.hw, (0.2 * s.hw) / s.hh)
  return slab('arrow', [s.cx - s.ux * cut, s.cy - s.uy * cut], [s.ux, s.uy], s.hw - cut, s.hh)
}

// These are asked of every piece of ink near a line, hundreds of thousands of times: plain numbers, nothing is made.

/** Whether the end `k` of a piece of ink lies on the bar's way, well away from both its ends. */
function overCorner(b: Bar, length: number, ends: Float64Array, k: number): boolean {
  const ux = b.bx - b.ax
  const uy = b.by - b.ay
  const x = ends[k]! - b.ax
  const y = ends[k + 1]! - b.ay
  const on = (x * ux + y * uy) / length
  return on > 2 * CORNER && on < length && Math.abs(x * uy - y * ux) / length < CORNER
}

/** Whether the bar runs beside a piece of a curve, all but along it, other than where the bar begins. */
function grazes(b: Bar, length: number, ends: Float64Array, k: number): boolean {
  const ux = (b.bx - b.ax) / length
  const uy = (b.by - b.ay) / length
  const px = ends[k]! - b.ax
  const py = ends[k + 1]! - b.ay
  const qx = ends[k + 2]! - b.ax
  const qy = ends[k + 3]! - b.ay
  const on = ((px + qx) * ux + (py + qy) * uy) / 2
  if (on < BEGINNING || on > length) return false
  const off = px * uy - py * ux
  const end = qx * uy - qy * ux
  if (Math.abs(off + end) / 2 > GRAZE) return false
  const dx = qx - px
  const dy = qy - py
  return Math.abs(end - off) < GRAZE_ANGLE * Math.sqrt(dx * dx + dy * dy)
}

/** Distance of a point from a piece of ink. */
function nearPiece(x: number, y: number, ends: Float64Array, k: number): number {
  const ax = ends[k]!
  const ay = ends[k + 1]!
  const ux = ends[k + 2]! - ax
  const uy = ends[k + 3]! - ay
  const t = Math.max(0, Math.min(1, ((x - ax) * ux + (y - ay) * uy) / (ux * ux + uy * uy || 1)))
  const dx = ax + t * ux - x
  const dy = ay + t * uy - y
  return Math.sqrt(dx * dx + dy * dy)
}

/** Distance from the bar's start at which the piece of ink crosses it. */
function crossingAt(b: Bar, length: number, ends: Float64Array, k: number): number {
  const ux = b.bx - b.ax
  const uy = b.by - b.ay
  const vx = ends[k + 2]! - ends[k]!
  const vy = ends[k + 3]! - ends[k + 1]!
  const t = ((ends[k]! - b.ax) * vy - (ends[k + 1]! - b.ay) * vx) / (ux * vy - uy * vx)
  return t * length
}

function touches(s: Shape, box: Slab, margin: number): boolean {
  if (s.x0 - margin >= box.x1 || s.x1 + margin <= box.x0 || s.y0 - margin >= box.y1 || s.y1 + margin <= box.y0)
    return false
  if (s.shape === 'bar') return entersSlab(s.ax, s.ay, s.bx, s.by, box, margin)
  return true
}

function boxSlab(box: Box2, margin: number): Slab {
  const { min, max } = box
  return slab(
    'text',
    [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2],
    [1, 0],
    (max[0] - min[0]) / 2 + margin,
    (max[1] - min[1]) / 2 + margin,
  )
}
