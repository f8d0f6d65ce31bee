import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import { calloutBlock } from './callout-block.ts'
import type { PlacementFigures } from './figures.ts'
import {
  type Alternative,
  arrow,
  type Desk,
  type Drawn,
  drawn,
  Later,
  line,
  type Member,
  nothing,
  type Option,
  readable,
  textSlab,
  tieOf,
} from './form.ts'
import { leaderToEdge } from './leader-units.ts'
import { at, type Span1 } from './line-setting.ts'
import { once } from './once.ts'
import { bar, type Shape, type Slab } from './shapes.ts'
import { back, turned } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/** A step narrower than this (mm) holds no dimension line: the line would read as one of its faces. */
const NARROWEST = 6
/** Closer to the end of the step than this (mm) the line begins to crowd its face. */
const EASE = 6
/** Places tried along a step. */
const MOST_PLACES = 7
/** The reach of an end that stands at no edge. */
const EVERYWHERE: readonly [number, number] = [-Infinity, Infinity]
/** Tails from the outline to text outside, mm. */
const TAILS = [3, 5.5, 9, 14, 20]

/** A size from edge to edge of a step: its diameter, or that across its flats. */
export const isAcross = ({ direction, states }: Dimension): boolean => direction === 'diameter' || isAcrossFlats(states)

const isAcrossFlats = (states: Dimension['states']): boolean => states?.some((s) => s.kind === 'flats alike') === true

/**
 * Places of a diameter at its own step of a profile: the dimension line from edge to edge through the step, with the text
 * in the line, past its end or on a shoulder; or a leader to the edge. No extension lines.
 */
export function acrossStep(desk: Desk, owner: number, span: Span1): Option[] {
  if (!isAcross(span.dimension)) return []
  const signs = span.dimension.signs ?? []
  // In ISO practice a frame on a leader to the edge would hold the surface, not the axis.
  if (signs.length > 0 && desk.figures.iso) return []
  const n = turned(span.u)
  const { open } = span
  const edge = (end: 'lo' | 'hi') => (open === end ? EVERYWHERE : desk.ink.edge(owner, span[end], n))
  const [lo, hi] = [edge('lo'), edge('hi')]
  if (!lo || !hi) return []
  const [from, to] = [Math.max(lo[0], hi[0]), Math.min(lo[1], hi[1])]
  const wide = to - from
  const options: Option[] = []
  if (wide >= NARROWEST && signs.length === 0) {
    const count = Math.max(1, Math.min(MOST_PLACES, Math.floor(wide / EASE)))
    for (let i = 0; i < count; i++) {
      const level = from + (wide * (i + 0.5)) / count
      const crowded = Math.max(0, EASE - Math.min(level - from, to - level))
      options.push({
        own: WEIGHTS.acrossStep + WEIGHTS.nearFace * crowded,
        members: once(() => [member(desk, span, n, level)]),
      })
    }
  }
  // a leader to a flat would be of one face
  if (wide > 1 && !isAcrossFlats(span.dimension.states)) {
    // In a narrow groove off the middle too: a slanting leader then clears the corners of its mouth.
    const inGroove = wide < 2 * desk.figures.arrow.length
    const places = wide > 20 ? [0.5, 0.25, 0.75] : inGroove ? [0.5, 0.2, 0.8] : [0.5]
    for (const [i, t] of places.entries()) {
      const level = from + wide * t
      for (const [s, sign, end] of [
        [span.s1, 1, 'hi'],
        [span.s0, -1, 'lo'],
      ] as const) {
        if (end === open) continue
        const normal: Vec2 = [span.u[0] * sign, span.u[1] * sign]
        const tip = at(span.u, n, s, level)
        options.push(
          ...leaderToEdge(
            desk,
            owner,
            span.dimension,
            calloutBlock(span.dimension, desk.figures),
            tip,
            normal,
            WEIGHTS.leaderToStep + 0.2 * i,
            inGroove,
          ),
        )
      }
    }
  }
  return options
}

/** The ways to set text and heads of a line through the step, cheapest first. */
function member(desk: Desk, span: Span1, n: Vec2, level: number): Member {
  const f = desk.figures
  const { s0, s1 } = span
  const line = new AcrossLine(f, span, n, level)
  const out: Alternative[] = []
  if (line.inside) {
    const room = (s1 - s0) / 2 - line.along / 2 - f.textGap - f.arrow.length - 1
    // Best off the middle: the axis runs there, and must be broken.
    for (const [i, t] of room > 0 ? [1, -1, 0.6, -0.6, 0].entries() : []) {
      out.push(new Later(WEIGHTS.textInStep + 0.1 * i, () => line.inLine((s0 + s1) / 2 + t * room)))
    }
  }
  for (const [i, tail] of TAILS.entries()) {
    for (const end of ['hi', 'lo'] as const) {
      if (end === span.open) continue
      const own = WEIGHTS.textPastStep + WEIGHTS.longTail * i + (end === 'hi' ? 0 : WEIGHTS.belowOrLeft)
      out.push(new Later(own + WEIGHTS.longTextOutside * line.along, () => line.past(end, tail)))
      if (span.u[0] !== 0) continue
      out.push(new Later(own + WEIGHTS.bent, () => line.bent(end, tail, 1)))
      out.push(new Later(own + WEIGHTS.bent + 0.1, () => line.bent(end, tail, -1)))
    }
  }
  return {
    dimension: span.dimension,
    tie: tieOf(span.dimension),
    fixed: nothing(),
    alternatives: out.sort((a, b) => a.own - b.own),
  }
}

/** Sets a dimension line from edge to edge of a step. */
class AcrossLine {
  /** Heads between the edges; else outside, pointing in. */
  readonly inside: boolean
  /** Extent of the text along the line. */
  readonly along: number
  readonly #f: PlacementFigures
  readonly #span: Span1
  readonly #p: (s: number) => Vec2
  readonly #angle: number

  constructor(f: PlacementFigures, span: Span1, n: Vec2, level: number) {
    this.#f = f
    this.#span = span
    this.#p = (s) => at(span.u, n, s, level)
    this.inside = span.s1 - span.s0 >= 2 * f.arrow.length + 1
    this.#angle = f.iso ? readable(span.u) : 0
    const { width, height } = span.block
    this.along = f.iso || span.u[1] === 0 ? width : height
  }

  /** Text in the line, between the edges. */
  inLine(s: number): Drawn {
    const { s0, s1, block } = this.#span
    const half = this.along / 2 + this.#f.textGap
    const set = this.#heads()
    if (this.#f.iso) set.line(s0, s1)
    else {
      set.line(s0, s - half)
      set.line(s + half, s1)
    }
    const centre = this.#beside(s)
    const text: Slab = { ...textSlab(block, centre, this.#angle), inStep: true }
    return drawn([text, ...set.shapes], set.strokes, [{ block, centre, angle: this.#angle, justify: 'middle' }])
  }

  /** Text in line with the dimension line, `tail` mm past an edge. */
  past(end: 'lo' | 'hi', tail: number): Drawn {
    const f = this.#f
    const { block } = this.#span
    const set = this.#through(end, f.iso ? tail + this.along + 0.5 : tail)
    const [edge, sign] = this.#edge(end)
    const start = edge + sign * (tail + set.behind)
    const centre = this.#beside(start + sign * (this.along / 2 + (f.iso ? 0 : f.textGap)))
    const text = textSlab(block, centre, this.#angle)
    return drawn([text, ...set.shapes], set.strokes, [{ block, centre, angle: this.#angle, justify: 'middle' }])
  }

  /** Level text on a shoulder at the end of the line, `tail` mm past an edge. */
  bent(end: 'lo' | 'hi', tail: number, way: 1 | -1): Drawn {
    const f = this.#f
    const { block } = this.#span
    const set = this.#through(end, tail)
    const [edge, sign] = this.#edge(end)
    const corner = this.#p(edge + sign * (tail + set.behind))
    const length = f.iso ? block.width + 1 : f.shoulder
    const tip: Vec2 = [corner[0] + way * length, corner[1]]
    const centre: Vec2 = f.iso
      ? [corner[0] + (way * length) / 2, corner[1] + f.textGap + block.height / 2]
      : [
          tip[0] + way * (f.practice.leader.gap + block.width / 2),
          corner[1] - (way > 0 ? block.firstMid : block.lastMid),
        ]
    const shoulder = line('shoulder', corner, tip)
    return drawn(
      [textSlab(block, centre, 0), ...set.shapes, shoulder.shape],
      [...set.strokes, { kind: 'leader', curve: shoulder.curve }],
      [{ block, centre, angle: 0, justify: f.iso || way > 0 ? 'start' : 'end' }],
    )
  }

  #edge(end: 'lo' | 'hi'): readonly [s: number, outward: 1 | -1] {
    return end === 'hi' ? [this.#span.s1, 1] : [this.#span.s0, -1]
  }

  /** ISO text stands beside the line, on its reading side. */
  #beside(s: number): Vec2 {
    const p = this.#p(s)
    if (!this.#f.iso) return p
    const a = (this.#angle * Math.PI) / 180
    const lift = this.#f.textGap + this.#span.block.height / 2
    return [p[0] - Math.sin(a) * lift, p[1] + Math.cos(a) * lift]
  }

  /** The line from edge to edge and on past one end by `tail`. */
  #through(end: 'lo' | 'hi', tail: number) {
    const { s0, s1 } = this.#span
    const set = this.#heads()
    // ASME draws no line between heads that point in, but nothing else may stand there.
    if (this.inside || this.#f.iso) set.line(s0, s1)
    else set.shapes.push(bar('across', this.#p(s0), this.#p(s1)))
    const behind = this.inside ? 0 : this.#f.arrow.length
    const [edge, sign] = this.#edge(end)
    const far = edge + sign * (tail + behind)
    set.line(Math.min(edge, far), Math.max(edge, far))
    if (!this.inside && !this.#span.open) {
      const [other, out] = this.#edge(end === 'hi' ? 'lo' : 'hi')
      const back = other + out * (behind + 2.5)
      set.line(Math.min(other, back), Math.max(other, back))
    }
    return { ...set, behind }
  }

  #heads() {
    const { u, s0, s1, open } = this.#span
    const shapes: Shape[] = []
    if (open !== 'lo') shapes.push(arrow(this.#p(s0), this.inside ? back(u) : u, this.#f))
    if (open !== 'hi') shapes.push(arrow(this.#p(s1), this.inside ? u : back(u), this.#f))
    const strokes: Drawn['strokes'][number][] = []
    return {
      shapes,
      strokes,
      line: (from: number, to: number) => {
        if (to - from < 0.05) return
        const l = line('across', this.#p(from), this.#p(to))
        shapes.push(l.shape)
        strokes.push({ kind: 'dimension', curve: l.curve })
      },
    }
  }
}
