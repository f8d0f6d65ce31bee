import type { Curve2 } from '../../geometry/curve2.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { ABOVE, wayMarks, withoutSignMarks } from '../../sizes/callout/sign-ways.ts'
import type { CalloutPart } from '../../sizes/dimension.ts'
import type { SheetItem, Tie } from '../sheet.ts'
import { figureOutline } from './figures.ts'
import { bold, type Face, lettersWidth, regular } from './metrics.ts'
import { drawnSymbol, signAt, withDiameterSigns } from './symbols.ts'

export type TextRole = Extract<SheetItem, { item: 'text' }>['role']

/** A string, or the parts of one line of a callout. */
export type Lettering = string | readonly CalloutPart[]

export interface LetteringStyle {
  readonly bold?: boolean
  /**
   * `stacked`: fractions stand over a level bar (sizes on the drawing, ASME Y14.2-2014 §4.3 Fig. 13, from memory);
   * `inline`: as typed, with the slanted bar (notes and title block).
   */
  readonly fractions?: 'stacked' | 'inline'
}

export interface LetteringPlace extends LetteringStyle {
  /** Base line point at `anchor`, paper mm. */
  readonly at: Vec2
  /** Capital height, mm. */
  readonly height: number
  readonly anchor?: 'start' | 'middle' | 'end'
  /** Degrees, counter-clockwise. */
  readonly angle?: number
  readonly role: TextRole
  readonly tie?: Tie
}

/** Space a line of lettering takes, mm: along the base line, and above and below it. */
export interface Extent {
  readonly width: number
  readonly above: number
  readonly below: number
}

/** Figures of a stacked fraction, in lettering heights. */
const FRACTION = { height: 0.8, gap: 0.2, bearing: 0.12 }
/** Two tolerances over one another stand at the full height, a fifth of it either side of the middle. */
const STACK = { gap: 0.2, bearing: 0.3 }
/** The arc sign above figures, as wide as they are, in lettering heights (common practice, no source). */
const ARC = { gap: 0.25, rise: 0.4 }
const ARC_ABOVE = `⌒${ABOVE}`
/** Signs turned to look up or down. */
const UPRIGHT = new RegExp(`[${wayMarks.up}${wayMarks.down}]$`)
/** Strokes of drawn signs: a tenth of the lettering height (ISO 3098-1 type B). */
const STROKE = 0.1

type Piece =
  | { readonly kind: 'letters'; readonly text: string; readonly width: number }
  | { readonly kind: 'sign'; readonly text: string; readonly width: number }
  /** Figures with the arc sign above them. */
  | { readonly kind: 'under arc'; readonly text: string; readonly width: number }
  | {
      readonly kind: 'fraction'
      readonly upper: string
      readonly lower: string
      readonly lead: string
      readonly width: number
    }
  | { readonly kind: 'stack'; readonly upper: string; readonly lower: string; readonly width: number }

/** Width on paper in mm of a line of lettering of the given capital height. */
export function textWidth(text: Lettering, height: number, style: LetteringStyle = {}): number {
  return pieces(text, style).reduce((sum, p) => sum + p.width, 0) * height
}

/** Width and rise on paper in mm, drawn signs, fractions and stacked tolerances included. */
export function textExtent(text: Lettering, height: number, style: LetteringStyle = {}): Extent {
  const all = pieces(text, style)
  let [above, below] = [1, 0]
  for (const p of all) {
    if (p.kind === 'fraction') {
      above = Math.max(above, 0.5 + FRACTION.gap + FRACTION.height)
      below = Math.max(below, FRACTION.gap + FRACTION.height - 0.5)
    } else if (p.kind === 'stack') {
      above = Math.max(above, 1.5 + STACK.gap)
      below = Math.max(below, 0.5 + STACK.gap)
    } else if (p.kind === 'letters') {
      // Tails and brackets hang about a quarter of the height below the line.
      if (/[gjpqy,;()[\]{}_Q|/\\]/.test(p.text)) below = Math.max(below, 0.25)
    } else if (p.kind === 'under arc') {
      above = Math.max(above, 1 + ARC.gap + ARC.rise)
    } else if (UPRIGHT.test(p.text)) {
      above = Math.max(above, 1.8)
      below = Math.max(below, 0.8)
    } else if (OVERSHOOT.has(p.text)) {
      above = Math.max(above, 1.25)
      below = Math.max(below, 0.25)
    }
  }
  return { width: all.reduce((sum, p) => sum + p.width, 0) * height, above: above * height, below: below * height }
}

/** Signs that reach past the capitals by a quarter height. */
const OVERSHOOT = new Set(['⌀', '○', '⌭', '∥', '⌖', '◎', '⟂', 'Ⓜ', 'Ⓛ', 'Ⓟ', 'Ⓕ', 'Ⓣ', 'Ⓤ', 'Ⓔ', 'Ⓘ'])

/** Turns a line of lettering into sheet items: runs of text, drawn signs, fraction bars. */
export function lettering(text: Lettering, place: LetteringPlace): SheetItem[] {
  const all = pieces(text, place)
  const { height: h, role, tie } = place
  const anchor = place.anchor ?? 'start'
  const angle = place.angle ?? 0
  const weight = place.bold ? bold : regular
  const common = {
    role,
    angle,
    ...(place.bold ? { bold: true as const } : {}),
    ...(tie ? { tie } : {}),
  }
  const only = all.length === 1 ? all[0]! : undefined
  if (only?.kind === 'letters') return [{ item: 'text', ...common, text: only.text, at: place.at, height: h, anchor }]
  const width = all.reduce((sum, p) => sum + p.width, 0) * h
  let x = anchor === 'middle' ? -width / 2 : anchor === 'end' ? -width : 0
  const turn = (angle * Math.PI) / 180
  const on = ([u, v]: Vec2): Vec2 => [
    place.at[0] + u * Math.cos(turn) - v * Math.sin(turn),
    place.at[1] + u * Math.sin(turn) + v * Math.cos(turn),
  ]
  const items: SheetItem[] = []
  const tied = tie ? { tie } : {}
  const letters = (t: string, at: Vec2) =>
    items.push({ item: 'text', ...common, text: t, at: on(at), height: h, anchor: 'start' })
  for (const p of all) {
    const w = p.width * h
    if (p.kind === 'letters') letters(p.text, [x, 0])
    else if (p.kind === 'under arc') {
      const arc = setDown(arcOver(p.width), h, [x, (1 + ARC.gap) * h], turn, place.at)
      // its blank character before the figures, so that both are found together
      items.push(glyph('⌒', on([x - 0.6 * h, 0]), h, angle, [arc], tie))
      letters(p.text, [x, 0])
    } else if (p.kind === 'sign') {
      const drawn = drawnSymbol(p.text)!
      const set = (c: Curve2) => setDown(c, h, [x, 0], turn, place.at)
      items.push(glyph(withoutSignMarks(p.text), on([x, 0]), h, angle, drawn.strokes.map(set), tie))
      for (const f of drawn.fills) items.push({ item: 'fill', kind: 'symbol', outline: f.map(set), ...tied })
    } else if (p.kind === 'fraction') {
      const edge = (FRACTION.bearing / 2) * h
      const bar: Curve2 = { kind: 'line', a: on([x + edge, h / 2]), b: on([x + w - edge, h / 2]) }
      items.push(glyph(`${p.lead}${p.upper}/${p.lower}`, on([x, 0]), h, angle, [bar], tie))
      const fh = FRACTION.height * h
      for (const [figures, y] of [
        [p.upper, (0.5 + FRACTION.gap) * h],
        [p.lower, (0.5 - FRACTION.gap) * h - fh],
      ] as const) {
        let left = x + (w - lettersWidth(figures, regular) * fh) / 2
        for (const c of figures) {
          const outline = figureOutline(c).map((k) => setDown(k, fh, [left, y], turn, place.at))
          items.push({ item: 'fill', kind: 'symbol', outline, ...tied })
          left += lettersWidth(c, regular) * fh
        }
      }
    } else {
      const left = x + STACK.bearing * h
      letters(p.upper, [left + signRoom(p.upper, p.lower, weight) * h, (0.5 + STACK.gap) * h])
      letters(p.lower, [left + signRoom(p.lower, p.upper, weight) * h, (-0.5 - STACK.gap) * h])
    }
    x += w
  }
  return items
}

/** An arc of that width, its ends on the base line. */
function arcOver(width: number): Curve2 {
  const half = Math.min(width, 2.4) / 2
  const r = (half * half + ARC.rise * ARC.rise) / (2 * ARC.rise)
  const open = Math.asin(Math.min(1, half / r))
  return { kind: 'arc', c: [width / 2, ARC.rise - r], r, from: Math.PI / 2 - open, sweep: 2 * open }
}

/** Box on paper of a line of lettering, axis-parallel, for the angles 0 and 90. */
export function letteringBox(text: Lettering, place: LetteringPlace): Box2 {
  const e = textExtent(text, place.height, place)
  const x = place.anchor === 'middle' ? -e.width / 2 : place.anchor === 'end' ? -e.width : 0
  const turn = ((place.angle ?? 0) * Math.PI) / 180
  const corners = [
    [x, -e.below],
    [x + e.width, -e.below],
    [x, e.above],
    [x + e.width, e.above],
  ].map(
    ([u, v]): Vec2 => [
      place.at[0] + u! * Math.cos(turn) - v! * Math.sin(turn),
      place.at[1] + u! * Math.sin(turn) + v! * Math.cos(turn),
    ],
  )
  const [xs, ys] = [corners.map((c) => c[0]), corners.map((c) => c[1])]
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] }
}

function pieces(text: Lettering, style: LetteringStyle): Piece[] {
  const weight = style.bold ? bold : regular
  const parts = typeof text === 'string' ? [text] : text
  const out: Piece[] = []
  for (const part of parts) {
    if (typeof part !== 'string') {
      const [upper, lower] = part.stack
      const one = (own: string, other: string) => signRoom(own, other, weight) + lettersWidth(own, weight)
      const width = Math.max(one(upper, lower), one(lower, upper)) + STACK.bearing
      out.push({ kind: 'stack', upper, lower, width })
    } else out.push(...linePieces(withDiameterSigns(part), weight, style.fractions === 'stacked'))
  }
  return out
}

const SIGN = /^[-+−±]/

/** Room left for the sign that the other of two stacked tolerances has: a bare 0 stands under the other's units (ISO 129-1:2018, from memory). */
function signRoom(own: string, other: string, weight: Face): number {
  return !SIGN.test(own) && SIGN.test(other) ? lettersWidth(other[0]!, weight) : 0
}

/** Not dates, ratios or thread designations (1/2-20, G1/4, 1/4 NPT). */
const FRACTION_PATTERN = /(?:(\d+)[- ])?(?<![\d./]|\bG ?|\bR[pc] ?)(?!\d+\/\d+ ?NP)(\d{1,3})\/(\d{1,3})(?![\d/]|-\d)/

function linePieces(text: string, weight: Face, stacked: boolean): Piece[] {
  if (stacked) {
    const found = FRACTION_PATTERN.exec(text)
    if (found) {
      const whole = found[1] ?? ''
      const [upper, lower] = [found[2]!, found[3]!]
      // `1-3/8`: the hyphen is not drawn; a search still finds it.
      const lead = found[0].slice(whole.length, found[0].length - upper.length - lower.length - 1)
      const width = Math.max(lettersWidth(upper, weight), lettersWidth(lower, weight)) * FRACTION.height
      return [
        ...linePieces(text.slice(0, found.index) + whole, weight, false),
        { kind: 'fraction', upper, lower, lead, width: width + 2 * FRACTION.bearing },
        ...linePieces(text.slice(found.index + found[0].length), weight, true),
      ]
    }
  }
  const out: Piece[] = []
  let run = ''
  const flush = () => {
    if (run) out.push({ kind: 'letters', text: run, width: lettersWidth(run, weight) })
    run = ''
  }
  for (let i = 0; i < text.length; ) {
    const under = text.startsWith(ARC_ABOVE, i) ? /^[\d.,]+/.exec(text.slice(i + ARC_ABOVE.length))?.[0] : undefined
    const sign = under === undefined ? signAt(text, i) : undefined
    if (under === undefined && sign === undefined) {
      run += text[i]
      i++
      continue
    }
    flush()
    if (under !== undefined) out.push({ kind: 'under arc', text: under, width: lettersWidth(under, weight) })
    else if (sign) out.push({ kind: 'sign', text: sign, width: drawnSymbol(sign)!.advance })
    i += under === undefined ? sign!.length : ARC_ABOVE.length + under.length
  }
  flush()
  return out
}

function glyph(
  text: string,
  at: Vec2,
  height: number,
  angle: number,
  strokes: readonly Curve2[],
  tie: Tie | undefined,
): SheetItem {
  return { item: 'glyph', text, at, height, angle, strokes, width: STROKE * height, ...(tie ? { tie } : {}) }
}

/** A curve given in lettering heights, scaled, shifted along and up, turned and put at `at`. */
function setDown(c: Curve2, h: number, [x, y]: Vec2, turn: number, at: Vec2): Curve2 {
  const p = ([u, v]: Vec2): Vec2 => {
    const [a, b] = [u * h + x, v * h + y]
    return [at[0] + a * Math.cos(turn) - b * Math.sin(turn), at[1] + a * Math.sin(turn) + b * Math.cos(turn)]
  }
  switch (c.kind) {
    case 'line':
      return { kind: 'line', a: p(c.a), b: p(c.b) }
    case 'arc':
      return { ...c, c: p(c.c), r: c.r * h, from: c.from + turn }
    case 'spline':
      return { ...c, poles: c.poles.map(p) }
    case 'ellipse':
      throw new Error('drawn signs hold no ellipses')
  }
}
