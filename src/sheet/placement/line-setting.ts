import type { Vec2 } from '../../geometry/vec.ts'
import type { Sign } from '../../sizes/annotation.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import { datumBox, standingDatum, triangleHeight } from '../signs/datum-art.ts'
import { type Block, signBlock } from './callout-block.ts'
import { CLEAR } from './clearances.ts'
import type { PlacementFigures } from './figures.ts'
import { arrow, type Drawn, drawn, endDot, type Lettered, line, readable, textSlab } from './form.ts'
import { type Bar, bar, entersSlab, type Shape, slab } from './shapes.ts'
import { back, turned } from './vec.ts'

/** A linear size on paper. `u` is its direction, turned so that it points right, or up where upright. */
export interface Span1 {
  readonly dimension: Dimension
  readonly block: Block
  /** Frames that stand on the other side of the line. */
  readonly under?: Block
  /** Datum letter at an end of the line. */
  readonly letter?: Extract<Sign, { kind: 'datum' }>
  readonly u: Vec2
  /** Feature points, lower coordinate along `u` first. */
  readonly lo: Vec2
  readonly hi: Vec2
  readonly s0: number
  readonly s1: number
  /** The end that stands past the axis, at no feature: the size is a diameter of which one side is drawn. */
  readonly open?: 'lo' | 'hi'
  /** Coordinates along `u` where the extension lines of longer sizes of the view will run. */
  readonly outer: readonly number[]
}

/**
 * How one end of a dimension line is finished: head inside, head outside, a dot shared with a close neighbour, a datum's
 * triangle, or not at all past an axis.
 */
export type End = 'in' | 'out' | 'dot' | 'letter' | 'open'

/** Whether another member of the same line follows at the lower and upper end; `false` outside chains. */
export type InChain = false | readonly [lower: boolean, upper: boolean]

export function at(u: Vec2, n: Vec2, s: number, c: number): Vec2 {
  return [u[0] * s + n[0] * c, u[1] * s + n[1] * c]
}

/** From a dimension line down to the frame that stands under it, mm. */
const UNDER = 1.2

/** Sets one dimension line: heads, line pieces, text. */
export class LineSetting {
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
    this.along = f.iso ? Math.max(block.width, span.under?.width ?? 0) : chord
  }

  /** What stands under the line where the text's middle is `on` it, `up` being the text's own way up. */
  #underLine(on: Vec2, up: Vec2, angle: number): { readonly shapes: Shape[]; readonly texts: Drawn['texts'] } {
    const { under } = this.#span
    if (!under) return { shapes: [], texts: [] }
    const drop = UNDER + under.height / 2
    const centre: Vec2 = [on[0] - up[0] * drop, on[1] - up[1] * drop]
    return { shapes: [textSlab(under, centre, angle)], texts: [{ block: under, centre, angle, justify: 'middle' }] }
  }

  #p(s: number): Vec2 {
    return at(this.#span.u, this.#n, s, this.#level)
  }

  /** Whether text on such a leader stands clear of the line itself and the tails behind its heads. */
  leads(lead: Vec2): boolean {
    const tail = this.#f.arrow.length + 3.5
    const [a, b] = [this.#p(this.#span.s0 - tail), this.#p(this.#span.s1 + tail)]
    return !entersSlab(a[0], a[1], b[0], b[1], this.#led(lead).text, CLEAR.line)
  }

  /** Leader, shoulder and text from the middle of the line: (along, outward) to the elbow, mm. */
  #led([along, outward]: Vec2) {
    const f = this.#f
    const { u, s0, s1, block } = this.#span
    const from = this.#p((s0 + s1) / 2)
    const n = this.#n
    const elbow: Vec2 = [from[0] + u[0] * along + n[0] * outward, from[1] + u[1] * along + n[1] * outward]
    const sx = elbow[0] >= from[0] ? 1 : -1
    const boxed = block.joint !== undefined && this.#span.under === undefined
    const over = f.iso && !boxed
    const length = over ? Math.max(block.width, this.#span.under?.width ?? 0) + 1 : f.shoulder
    const end: Vec2 = [elbow[0] + sx * length, elbow[1]]
    // Over the shoulder (ISO), or beside it at mid-height of its first letter, or the last where it stands left (ASME).
    const beside = end[0] + sx * ((boxed ? 0 : f.practice.leader.gap) + block.width / 2)
    const centre: Vec2 = over
      ? [elbow[0] + (sx * length) / 2, elbow[1] + f.textGap + block.height / 2]
      : [beside, elbow[1] - (block.joint ?? (sx > 0 ? block.firstMid : block.lastMid))]
    return { from, elbow, end, centre, text: textSlab(block, centre, 0) }
  }

  /** Text on a level shoulder at the end of a leader from the middle of the line. */
  lead(ends: readonly [End, End], lead: Vec2): Drawn {
    const { s0, s1, block } = this.#span
    const bare = this.set(ends, (s0 + s1) / 2, 0, true)
    const { from, elbow, end, centre, text } = this.#led(lead)
    const shapes: Shape[] = [
      text,
      bar('leader', from, elbow),
      bar('shoulder', elbow, end),
      ...bare.shapes.filter((s) => s.shape === 'bar' || s.role !== 'text'),
    ]
    const strokes: Drawn['strokes'][number][] = [
      ...bare.strokes,
      { kind: 'leader', curve: { kind: 'line', a: from, b: elbow } },
      { kind: 'leader', curve: { kind: 'line', a: elbow, b: end } },
    ]
    const under = this.#underLine([centre[0], elbow[1]], [0, 1], 0)
    return drawn([...shapes, ...under.shapes], strokes, [{ block, centre, angle: 0, justify: 'start' }, ...under.texts])
  }

  /** The line with a datum letter at one end: its triangle stands outside on the extension line, in an outside head's place. */
  lettered(
    ends: readonly [End, End],
    text: number | 'lo' | 'hi',
    least: number,
    letter: NonNullable<Span1['letter']>,
    side: 'lo' | 'hi',
    stem: number,
  ): Drawn {
    const f = this.#f
    const { u, s0, s1 } = this.#span
    const at = this.#p(side === 'hi' ? s1 : s0)
    const way = side === 'hi' ? u : back(u)
    const [own, k] = side === 'hi' ? [ends[1], 1] : [ends[0], 0]
    const others: readonly [End, End] = own === 'out' ? (k === 1 ? [ends[0], 'letter'] : ['letter', ends[1]]) : ends
    const bare = this.set(others, text, least)
    const { art, centre, foot } = standingDatum(letter, way, stem, f.text)
    const [w, tall] = datumBox(letter, f.text)
    const middle: Vec2 = [at[0] + centre[0], at[1] + centre[1]]
    const across = turned(way)
    const reach = triangleHeight(f.text)
    const leg = (sign: number): Bar =>
      bar(
        'leader',
        [at[0] + across[0] * foot * sign + way[0] * 0.2, at[1] + across[1] * foot * sign + way[1] * 0.2],
        [at[0] + way[0] * reach, at[1] + way[1] * reach],
      )
    const box = slab('text', middle, [1, 0], w / 2, tall / 2)
    const end = Math.hypot(centre[0], centre[1]) - Math.min(w, tall) / 2
    const line = bar(
      'leader',
      [at[0] + way[0] * 0.2, at[1] + way[1] * 0.2],
      [at[0] + way[0] * end, at[1] + way[1] * end],
    )
    return drawn([...bare.shapes, box, leg(1), leg(-1), line], bare.strokes, [
      ...bare.texts,
      { block: signBlock([art]), centre: at, angle: 0, justify: 'start' },
    ])
  }

  /** Middle of the text along the line. */
  middle(text: number | 'lo' | 'hi', least = 0): number {
    if (typeof text === 'number') return text
    const f = this.#f
    const far = this.#reach(least) + (f.iso ? 0 : f.textGap) + this.along / 2
    return text === 'hi' ? this.#span.s1 + far : this.#span.s0 - far
  }

  /** From an end of the line to text outside it. */
  #reach(least: number): number {
    return Math.max(least, this.#f.arrow.length + (this.#f.iso ? 1.5 : 2))
  }

  /**
   * `text`: its middle along the line, or the side it stands outside of, at least `least` from the extension line;
   * `whole`: the line is not broken for it.
   */
  set(ends: readonly [End, End], text: number | 'lo' | 'hi', least = 0, whole = this.#f.iso): Drawn {
    const f = this.#f
    const { u, s0, s1, block } = this.#span
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
    const reach = this.#reach(least)
    const s = this.middle(text, least)
    const [e0, e1] = ends
    if (e0 === 'in') shapes.push(arrow(this.#p(s0), back(u), f))
    else if (e0 === 'out') shapes.push(arrow(this.#p(s0), u, f))
    else if (e0 === 'dot') shapes.push(endDot(this.#p(s0), u))
    if (e1 === 'in') shapes.push(arrow(this.#p(s1), u, f))
    else if (e1 === 'out') shapes.push(arrow(this.#p(s1), back(u), f))
    else if (e1 === 'dot') shapes.push(endDot(this.#p(s1), u))
    if (typeof text === 'number') {
      if (whole) draw('dimension', s0, s1)
      else {
        if (e0 !== 'out') draw('dimension', s0, s - half - f.textGap)
        if (e1 !== 'out') draw('dimension', s + half + f.textGap, s1)
      }
      // Between heads that point in from outside no line is drawn (ASME), but nothing else may stand there either.
      if (!whole && e0 === 'out' && e1 === 'out') shapes.push(bar('dimension', this.#p(s0), this.#p(s1)))
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
    const texts: Lettered[] = []
    if (f.iso) {
      const a = (this.#angle * Math.PI) / 180
      const up = turned([Math.cos(a), Math.sin(a)])
      const under = this.#underLine(centre, up, this.#angle)
      shapes.push(...under.shapes)
      texts.push(...under.texts)
      const lift = f.textGap + block.height / 2
      centre = [centre[0] + up[0] * lift, centre[1] + up[1] * lift]
    } else if (block.signs.length > 0 && u[1] === 0) {
      // The line runs through the callout's own middle; frames hang below it.
      centre = [centre[0], centre[1] - (block.firstMid + block.lastMid) / 2]
    }
    shapes.unshift(textSlab(block, centre, this.#angle))
    return drawn(shapes, strokes, [{ block, centre, angle: this.#angle, justify: 'middle' }, ...texts])
  }
}
