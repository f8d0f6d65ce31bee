import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import { type Block, calloutBlock } from './callout-block.ts'
import type { PlacementFigures } from './figures.ts'
import {
  type Alternative,
  arrow,
  type Desk,
  type Drawn,
  drawn,
  endDot,
  line,
  type Member,
  readable,
  textSlab,
  tieOf,
} from './form.ts'
import { onPaper } from './ink.ts'
import { type Bar, bar, type Shape } from './shapes.ts'
import { back, dot, turned } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/** A linear size on paper. `u` is its direction, turned so that it points right, or up where upright. */
export interface Span1 {
  readonly dimension: Dimension
  readonly block: Block
  readonly u: Vec2
  /** Feature points, lower coordinate along `u` first. */
  readonly lo: Vec2
  readonly hi: Vec2
  readonly s0: number
  readonly s1: number
  /** Coordinates along `u` where the extension lines of longer sizes of the view will run. */
  readonly outer: readonly number[]
}

/** How one end of a dimension line is finished: head inside, head outside, or a dot shared with a close neighbour. */
type End = 'in' | 'out' | 'dot'

export function canonical(along: Vec2): Vec2 {
  const length = Math.hypot(along[0], along[1]) || 1
  let u: Vec2 = [along[0] / length, along[1] / length]
  if (Math.abs(u[0]) < 1e-9) u = [0, u[1]]
  if (Math.abs(u[1]) < 1e-9) u = [u[0], 0]
  return u[0] < 0 || (u[0] === 0 && u[1] < 0) ? back(u) : u
}

/** Undefined when the size has no extent on paper. */
export function span1(desk: Desk, owner: number, d: Dimension): Span1 | undefined {
  if (d.measured.kind !== 'linear') return undefined
  const { placed } = desk.ink.views[owner]!
  const u = canonical(d.measured.along)
  const a = onPaper(placed, d.measured.a)
  const b = onPaper(placed, d.measured.b)
  const [lo, hi] = dot(a, u) <= dot(b, u) ? [a, b] : [b, a]
  const [s0, s1] = [dot(lo, u), dot(hi, u)]
  if (!(s1 - s0 > 1e-6)) return undefined
  return { dimension: d, block: calloutBlock(d, desk.figures), u, lo, hi, s0, s1, outer: [] }
}

/** Where the extension line from a feature point towards `n` may start, as a coordinate along `n`. */
export function extensionStart(desk: Desk, owner: number, from: Vec2, n: Vec2): number {
  const out = desk.ink.runOut(owner, from, n)
  return dot(from, n) + out.distance + (out.centre ? 0 : desk.figures.gap)
}

/** Extension line up to a row, with its overshoot; none where the feature itself reaches the row. */
function extensionBar(u: Vec2, n: Vec2, s: number, start: number, level: number, past: number): Bar | undefined {
  if (start > level - 0.3) return undefined
  return bar('extension', at(u, n, s, start), at(u, n, s, level + past))
}

export function at(u: Vec2, n: Vec2, s: number, c: number): Vec2 {
  return [u[0] * s + n[0] * c, u[1] * s + n[1] * c]
}

/** Whether another member of the same line follows at the lower and upper end; `false` outside chains. */
export type InChain = false | readonly [lower: boolean, upper: boolean]

/** A linear size in the row at `level` (coordinate along the outward normal `n`). */
export function linearMember(
  desk: Desk,
  span: Span1,
  n: Vec2,
  level: number,
  starts: readonly [number, number],
  inChain: InChain,
): Member {
  const { u } = span
  const past = desk.figures.overshoot
  const shapes = [
    extensionBar(u, n, span.s0, starts[0], level, past),
    extensionBar(u, n, span.s1, starts[1], level, past),
  ].filter((b) => b !== undefined)
  return {
    dimension: span.dimension,
    tie: tieOf(span.dimension),
    fixed: drawn(shapes),
    alternatives: alternatives(desk.figures, span, n, level, inChain),
  }
}

/** The ways to set text and heads of a size whose row is settled, cheapest first. */
function alternatives(f: PlacementFigures, span: Span1, n: Vec2, level: number, inChain: InChain): Alternative[] {
  const line = new LineSetting(f, span, n, level, inChain)
  const out: Alternative[] = []
  const length = span.s1 - span.s0
  const A = f.arrow.length
  const mid = (span.s0 + span.s1) / 2
  const between = (ends: readonly [End, End], own: number, half: number) => {
    if (half < 0) return
    const step = Math.max(5, line.along * 0.6)
    for (let k = 0; k * step <= half && k <= 4; k++) {
      out.push({ own: own + k * WEIGHTS.textShift, ...line.set(ends, mid + k * step) })
      if (k > 0) out.push({ own: own + k * WEIGHTS.textShift, ...line.set(ends, mid - k * step) })
    }
  }
  // Heads stand outside only where there is no room for them inside.
  const fitsHeads = f.iso ? length >= 2 * A + 1.5 : length >= line.along + 2 * f.textGap + 2 * (A + 1)
  const inner = length / 2 - line.along / 2 - (f.iso ? 0.9 : f.textGap)
  if (fitsHeads) between(['in', 'in'], 0, f.iso ? inner : inner - A - 1)
  else between(['out', 'out'], WEIGHTS.arrowsOutside, inner)
  const headsFit = length >= 2 * A + 1
  const outer: readonly [End, End] = f.iso && headsFit ? ['in', 'in'] : ['out', 'out']
  if (!fitsHeads || inner < 0) {
    const own = WEIGHTS.textOutside + WEIGHTS.longTextOutside * line.along
    out.push({ own, ...line.set(outer, 'hi') })
    out.push({ own: own + 0.3, ...line.set(outer, 'lo') })
    // Further out, past where a longer size will have its extension line.
    const past = (s: number, side: 'hi' | 'lo') => (side === 'hi' ? s - span.s1 : span.s0 - s)
    for (const side of ['hi', 'lo'] as const) {
      const gaps = span.outer.map((s) => past(s, side)).filter((g) => g > 1 && g < 30)
      for (const g of [...new Set(gaps.map((x) => Math.round(x * 10) / 10))].sort((a, b) => a - b).slice(0, 3)) {
        out.push({ own: own + 0.8 + 0.04 * g, ...line.set(outer, side, g + 2) })
      }
    }
  }
  if (!fitsHeads || inner < 0) {
    // ISO 129-1 §5.7: the value may stand on a leader that ends on the dimension line.
    if (f.iso)
      for (const [i, lead] of LEADS.entries())
        out.push({ own: WEIGHTS.textOnLeader + 0.3 * i, ...line.lead(outer, lead) })
  }
  if (inChain && !headsFit) {
    for (const ends of [
      ['out', 'dot'],
      ['dot', 'out'],
      ['dot', 'dot'],
    ] as const) {
      const own = WEIGHTS.arrowsOutside + WEIGHTS.dot * ends.filter((e) => e === 'dot').length
      between(ends, own, inner)
      if (ends[1] === 'out') out.push({ own: own + WEIGHTS.textOutside, ...line.set(ends, 'hi') })
      if (ends[0] === 'out') out.push({ own: own + WEIGHTS.textOutside, ...line.set(ends, 'lo') })
    }
  }
  return out.map((a) => inTheWay(a, span)).sort((a, b) => a.own - b.own)
}

/** Charges text that stands where longer sizes will want their extension lines. */
function inTheWay(a: Alternative, { u, outer }: Span1): Alternative {
  const text = a.shapes[0]
  if (outer.length === 0 || text?.shape !== 'slab') return a
  const mid = text.cx * u[0] + text.cy * u[1]
  const half = Math.abs(text.ux * u[0] + text.uy * u[1]) * text.hw + Math.abs(text.ux * u[1] - text.uy * u[0]) * text.hh
  const count = outer.reduce((n, s) => n + (Math.abs(s - mid) < half + 1 ? 1 : 0), 0)
  return count === 0 ? a : { ...a, own: a.own + WEIGHTS.textInTheWay * count }
}

/** Leaders from a dimension line to its text: along and outward from the line's middle, mm. */
const LEADS: readonly Vec2[] = [
  [6, 8],
  [-6, 8],
  [8, 14],
  [-8, 14],
  [6, -7],
  [-6, -7],
]

/** Sets one dimension line: heads, line pieces, text. */
class LineSetting {
  /** Extent of the text along the line. */
  readonly along: number
  readonly #f: PlacementFigures
  readonly #span: Span1
  readonly #n: Vec2
  readonly #level: number
  readonly #angle: number
  /** Length of the line behind an outside head at either end. */
  readonly #tails: readonly [number, number]

  constructor(f: PlacementFigures, span: Span1, n: Vec2, level: number, inChain: InChain) {
    this.#f = f
    this.#span = span
    this.#n = n
    this.#level = level
    // Next to another member the head alone is enough: it lies on that member's line.
    const tail = (next: boolean) => f.arrow.length + (next ? 0 : 2.5)
    this.#tails = inChain ? [tail(inChain[0]), tail(inChain[1])] : [tail(false), tail(false)]
    const { u, block } = span
    this.#angle = f.iso ? readable(u) : 0
    const chord = Math.min(block.width / Math.abs(u[0] || 1e-9), block.height / Math.abs(u[1] || 1e-9))
    this.along = f.iso ? block.width : chord
  }

  #p(s: number): Vec2 {
    return at(this.#span.u, this.#n, s, this.#level)
  }

  /** Text on a level shoulder at the end of a leader from the middle of the line. */
  lead(ends: readonly [End, End], [along, outward]: Vec2): Drawn {
    const f = this.#f
    const { u, s0, s1, block } = this.#span
    const bare = this.set(ends, (s0 + s1) / 2)
    const from = this.#p((s0 + s1) / 2)
    const n = this.#n
    const elbow: Vec2 = [from[0] + u[0] * along + n[0] * outward, from[1] + u[1] * along + n[1] * outward]
    const sx = elbow[0] >= from[0] ? 1 : -1
    const length = block.width + 1
    const end: Vec2 = [elbow[0] + sx * length, elbow[1]]
    const centre: Vec2 = [elbow[0] + (sx * length) / 2, elbow[1] + f.textGap + block.height / 2]
    const shapes: Shape[] = [
      textSlab(block, centre, 0),
      bar('leader', from, elbow),
      bar('shoulder', elbow, end),
      ...bare.shapes.filter((s) => s.shape === 'bar' || s.role !== 'text'),
    ]
    const strokes: Drawn['strokes'][number][] = [
      ...bare.strokes,
      { kind: 'leader', curve: { kind: 'line', a: from, b: elbow } },
      { kind: 'leader', curve: { kind: 'line', a: elbow, b: end } },
    ]
    return drawn(shapes, strokes, [{ block, centre, angle: 0, justify: 'start' }])
  }

  /** `text`: its middle along the line, or the side it stands outside of, at least `least` from the extension line. */
  set(ends: readonly [End, End], text: number | 'lo' | 'hi', least = 0): Drawn {
    const f = this.#f
    const { u, s0, s1, block } = this.#span
    const A = f.arrow.length
    const shapes: Shape[] = []
    const strokes: Drawn['strokes'][number][] = []
    const draw = (role: Bar['role'], from: number, to: number) => {
      if (to - from < 0.05) return
      const l = line(role, this.#p(from), this.#p(to))
      shapes.push(l.shape)
      strokes.push({ kind: 'dimension', curve: l.curve })
    }
    const half = this.along / 2
    const [t0, t1] = this.#tails
    const reach = Math.max(least, f.iso ? A + 1.5 : A + 2)
    let s: number
    if (text === 'hi') s = s1 + reach + (f.iso ? half : f.textGap + half)
    else if (text === 'lo') s = s0 - reach - (f.iso ? half : f.textGap + half)
    else s = text
    const [e0, e1] = ends
    if (e0 === 'in') shapes.push(arrow(this.#p(s0), back(u), f))
    else if (e0 === 'out') shapes.push(arrow(this.#p(s0), u, f))
    else shapes.push(endDot(this.#p(s0), u))
    if (e1 === 'in') shapes.push(arrow(this.#p(s1), u, f))
    else if (e1 === 'out') shapes.push(arrow(this.#p(s1), back(u), f))
    else shapes.push(endDot(this.#p(s1), u))
    if (typeof text === 'number') {
      if (f.iso) draw('dimension', s0, s1)
      else {
        if (e0 === 'in' || e0 === 'dot') draw('dimension', s0, s - half - f.textGap)
        if (e1 === 'in' || e1 === 'dot') draw('dimension', s + half + f.textGap, s1)
      }
      // Between heads that point in from outside no line is drawn (ASME), but nothing else may stand there either.
      if (!f.iso && e0 === 'out' && e1 === 'out') shapes.push(bar('dimension', this.#p(s0), this.#p(s1)))
      if (e0 === 'out') draw('tail', s0 - t0, s0)
      if (e1 === 'out') draw('tail', s1, s1 + t1)
    } else {
      if (f.iso || e0 === 'dot' || e1 === 'dot') draw('dimension', s0, s1)
      else shapes.push(bar('dimension', this.#p(s0), this.#p(s1)))
      const far = f.iso ? reach + 2 * half : reach
      if (text === 'hi') draw('tail', s1, s1 + far)
      else draw('tail', s0 - far, s0)
      if (text === 'hi' && e0 === 'out') draw('tail', s0 - t0, s0)
      if (text === 'lo' && e1 === 'out') draw('tail', s1, s1 + t1)
    }
    let centre = this.#p(s)
    if (f.iso) {
      const a = (this.#angle * Math.PI) / 180
      const up = turned([Math.cos(a), Math.sin(a)])
      const lift = f.textGap + block.height / 2
      centre = [centre[0] + up[0] * lift, centre[1] + up[1] * lift]
    }
    shapes.unshift(textSlab(block, centre, this.#angle))
    return drawn(shapes, strokes, [{ block, centre, angle: this.#angle, justify: 'middle' }])
  }
}
