import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import { blockOf, calloutBlock } from './callout-block.ts'
import type { PlacementFigures } from './figures.ts'
import { type Alternative, type Desk, drawn, Later, type Member, tieOf } from './form.ts'
import { onPaper } from './ink.ts'
import { at, type End, type InChain, LineSetting, type Span1 } from './line-setting.ts'
import { type Bar, bar } from './shapes.ts'
import { back, dot } from './vec.ts'
import { WEIGHTS } from './weights.ts'

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
  const isRising = dot(a, u) <= dot(b, u)
  const past = d.measured.open ? (isRising ? -PAST_AXIS : PAST_AXIS) : 0
  const start: Vec2 = [a[0] + past * u[0], a[1] + past * u[1]]
  const [lo, hi] = isRising ? [start, b] : [b, start]
  const [s0, s1] = [dot(lo, u), dot(hi, u)]
  if (!(s1 - s0 > 1e-6)) return undefined
  const open = d.measured.open ? { open: isRising ? ('lo' as const) : ('hi' as const) } : {}
  return { dimension: d, ...blocksOf(d, desk.figures), u, lo, hi, s0, s1, ...open, outer: [] }
}

/** How far the line of a diameter runs on past the axis where one side of it is drawn, mm. */
const PAST_AXIS = 4

/**
 * What stands at the line of a linear size: frames under the callout, which in ISO practice means under the line; a
 * datum letter alone at an end of the line, where the extension line is the feature's outline.
 */
function blocksOf(d: Dimension, f: PlacementFigures): Pick<Span1, 'block' | 'under' | 'letter'> {
  const signs = d.signs ?? []
  const letter = signs.find((sign) => sign.kind === 'datum')
  if (!signs.some((sign) => sign.kind === 'frame'))
    return { block: calloutBlock(d, f, []), ...(letter ? { letter } : {}) }
  if (!f.iso) return { block: calloutBlock(d, f) }
  return { block: calloutBlock(d, f, []), under: blockOf({ lines: [] }, f, false, signs) }
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

/** A linear size in the row at `level` (coordinate along the outward normal `n`). */
export function linearMember(
  desk: Desk,
  span: Span1,
  n: Vec2,
  level: number,
  starts: readonly [number, number],
  inChain: InChain,
): Member {
  const { u, open } = span
  const past = desk.figures.overshoot
  const shapes = [
    open === 'lo' ? undefined : extensionBar(u, n, span.s0, starts[0], level, past),
    open === 'hi' ? undefined : extensionBar(u, n, span.s1, starts[1], level, past),
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
  const set = (heads: readonly [End, End], own: number, text: number | 'lo' | 'hi', least = 0) => {
    const ends = opened(heads, span.open)
    const cost = own + inTheWay(span, line.middle(text, least), line.along)
    const { letter } = span
    if (!letter) out.push(new Later(cost, () => line.set(ends, text, least)))
    else
      for (const side of ['hi', 'lo'] as const)
        if (side !== text && side !== span.open)
          for (const [i, stem] of LETTER_STEMS.entries())
            out.push(new Later(cost + 0.2 * i, () => line.lettered(ends, text, least, letter, side, stem)))
  }
  const between = (ends: readonly [End, End], own: number, half: number) => {
    if (half < 0) return
    const step = Math.max(5, line.along * 0.6)
    for (let k = 0; k * step <= half && k <= 4; k++) {
      set(ends, own + k * WEIGHTS.textShift, mid + k * step)
      if (k > 0) set(ends, own + k * WEIGHTS.textShift, mid - k * step)
    }
  }
  const leads = (heads: readonly [End, End], own: number) => {
    const ends = opened(heads, span.open)
    for (const [i, lead] of LEADS.entries())
      if (line.leads(lead)) out.push(new Later(own + WEIGHTS.textOnLeader + 0.3 * i, () => line.lead(ends, lead)))
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
    set(outer, own, 'hi')
    set(outer, own + 0.3, 'lo')
    // Further out, past where a longer size will have its extension line.
    const past = (s: number, side: 'hi' | 'lo') => (side === 'hi' ? s - span.s1 : span.s0 - s)
    for (const side of ['hi', 'lo'] as const) {
      const gaps = span.outer.map((s) => past(s, side)).filter((g) => g > 1 && g < 30)
      for (const g of [...new Set(gaps.map((x) => Math.round(x * 10) / 10))].sort((a, b) => a - b).slice(0, 3)) {
        set(outer, own + 0.8 + 0.04 * g, side, g + 2)
      }
    }
    // ISO 129-1 §5.7: the value may stand on a leader that ends on the dimension line. In a chain, whose line is full,
    // so it does in ASME practice too (common practice, no source).
    if (f.iso || inChain) leads(headsFit ? ['in', 'in'] : outer, 0)
  }
  if (inChain && !headsFit) {
    for (const ends of [
      ['out', 'dot'],
      ['dot', 'out'],
      ['dot', 'dot'],
    ] as const) {
      const own = WEIGHTS.arrowsOutside + WEIGHTS.dot * ends.filter((e) => e === 'dot').length
      between(ends, own, inner)
      if (ends[1] === 'out') set(ends, own + WEIGHTS.textOutside, 'hi')
      if (ends[0] === 'out') set(ends, own + WEIGHTS.textOutside, 'lo')
      if (inner < 0) leads(ends, own)
    }
  }
  return out.sort((a, b) => a.own - b.own)
}

/** No head stands at the end past the axis. */
const opened = ([lo, hi]: readonly [End, End], open: Span1['open']): readonly [End, End] =>
  open === 'lo' ? ['open', hi] : open === 'hi' ? [lo, 'open'] : [lo, hi]

/** From the triangle of a datum letter to its box, mm. */
const LETTER_STEMS = [2.5, 6, 11]

/** Charges text that stands where longer sizes will want their extension lines. */
function inTheWay({ outer }: Span1, middle: number, along: number): number {
  let count = 0
  for (const s of outer) if (Math.abs(s - middle) < along / 2 + 1) count++
  return WEIGHTS.textInTheWay * count
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
