import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { wayMarks } from '../../sizes/callout/sign-ways.ts'

/** A drawn sign, in units of the lettering height: base line at y = 0, capitals up to y = 1. */
export interface DrawnSymbol {
  /** Width it takes in a line of text, side bearings included. */
  readonly advance: number
  readonly strokes: readonly Curve2[]
  /** Filled closed outlines (arrowheads). */
  readonly fills: readonly (readonly Curve2[])[]
}

const line = (...p: readonly Vec2[]): Curve2[] => p.slice(1).map((b, i) => ({ kind: 'line', a: p[i]!, b }))
const closed = (...p: readonly Vec2[]): Curve2[] => line(...p, p[0]!)
const arc = (c: Vec2, r: number, from: number, sweep: number): Curve2 => ({
  kind: 'arc',
  c,
  r,
  from: (from * Math.PI) / 180,
  sweep: (sweep * Math.PI) / 180,
})
const circle = (c: Vec2, r: number): Curve2 => arc(c, r, 0, 360)

/** Arrowhead 3:1 with its point at `tip`, looking along `degrees`. */
function head(tip: Vec2, degrees: number, length: number): Curve2[] {
  const a = (degrees * Math.PI) / 180
  const back = (side: number): Vec2 => [
    tip[0] - length * Math.cos(a) - (side * length * Math.sin(a)) / 6,
    tip[1] - length * Math.sin(a) + (side * length * Math.cos(a)) / 6,
  ]
  return closed(tip, back(1), back(-1))
}

const BEARING = 0.2
const sin60 = Math.sqrt(3) / 2

function symbol(width: number, strokes: readonly Curve2[], fills: readonly (readonly Curve2[])[] = []): DrawnSymbol {
  return { advance: width + 2 * BEARING, strokes: strokes.map(moved), fills: fills.map((f) => f.map(moved)) }
}

function moved(c: Curve2): Curve2 {
  if (c.kind === 'line') return { kind: 'line', a: [c.a[0] + BEARING, c.a[1]], b: [c.b[0] + BEARING, c.b[1]] }
  if (c.kind === 'spline') return c
  return { ...c, c: [c.c[0] + BEARING, c.c[1]] }
}

/**
 * Signs that no text face carries, in the proportions of ASME Y14.5-2018 Nonmandatory Appendix C (figures there are
 * multiples of the lettering height; from memory). ISO 7083 and ISO 3098-5 draw the same forms. Each is centred on
 * the mid-height of the capitals, or stands on the base line where the appendix lets it stand.
 */
export const drawnSymbols: ReadonlyMap<string, DrawnSymbol> = new Map([
  // Diameter: circle h, bar at 60°, 1.5h overall.
  ['⌀', symbol(1, [circle([0.5, 0.5], 0.5), ...bar60([0.5, 0.5], 1.5)])],
  ['□', symbol(1, closed([0, 0], [1, 0], [1, 1], [0, 1]))],
  // Counterbore: 2h wide, h high, open at the top.
  ['⌴', symbol(2, line([0, 1], [0, 0], [2, 0], [2, 1]))],
  // Countersink: 90°, 2h wide, h high.
  ['⌵', symbol(2, line([0, 1], [1, 0], [2, 1]))],
  // Depth: h high under a bar h wide.
  ['↧', symbol(1, [...line([0, 1], [1, 1]), ...line([0.5, 1], [0.5, 0.5])], [head([0.5, 0], 270, 0.6)])],
  ['⌲', symbol(2, [...closed([0, 0], [2, 0.5], [0, 1]), ...line([-0.2, 0.5], [2.2, 0.5])])],
  ['⌳', symbol(2, closed([0, 0], [2, 0], [0, 0.6]))],
  ['↔', symbol(2.4, line([0.5, 0.5], [1.9, 0.5]), [head([0, 0.5], 180, 0.6), head([2.4, 0.5], 0, 0.6)])],
  // Geometric characteristics, ASME Y14.5-2018 Fig. C-1 / ISO 7083.
  ['⏤', symbol(2, line([0, 0.5], [2, 0.5]))],
  ['⏥', symbol(2, closed([0, 0], [1.3, 0], [1.3 + 0.577, 1], [0.577, 1]))],
  ['○', symbol(1.5, [circle([0.75, 0.5], 0.75)])],
  ['⌭', symbol(2, [circle([1, 0.5], 0.5), ...tangent60(-1), ...tangent60(1)])],
  ['⌒', symbol(2, [arc([1, 0], 1, 0, 180)])],
  ['⌓', symbol(2, [arc([1, 0], 1, 0, 180), ...line([0, 0], [2, 0])])],
  ['∠', symbol(2, line([2, 0], [0, 0], [1.732, 1]))],
  ['⟂', symbol(2, [...line([0, 0], [2, 0]), ...line([1, 0], [1, 1.5])])],
  ['∥', symbol(1.2, [...bar60([0.3, 0.5], 1.5), ...bar60([0.9, 0.5], 1.5)])],
  ['⌖', symbol(2, [circle([1, 0.5], 0.5), ...line([0, 0.5], [2, 0.5]), ...line([1, -0.5], [1, 1.5])])],
  ['◎', symbol(1.5, [circle([0.75, 0.5], 0.75), circle([0.75, 0.5], 0.4)])],
  ['⌯', symbol(2, [...line([0, 0.5], [2, 0.5]), ...line([0.4, 0], [1.6, 0]), ...line([0.4, 1], [1.6, 1])])],
  ['↗', symbol(1.06, line([0, -0.03], [0.72, 0.69]), [head([1.06, 1.03], 45, 0.6)])],
  [
    '⌰',
    symbol(
      1.86,
      [...line([0, -0.03], [0.72, 0.69]), ...line([0.8, -0.03], [1.52, 0.69]), ...line([0, -0.03], [0.8, -0.03])],
      [head([1.06, 1.03], 45, 0.6), head([1.86, 1.03], 45, 0.6)],
    ),
  ],
  // Modifiers: a letter in a circle of 1.5h.
  ['Ⓜ', modifier(line([-0.33, -0.4], [-0.33, 0.4], [0, -0.1], [0.33, 0.4], [0.33, -0.4]))],
  ['Ⓛ', modifier(line([-0.22, 0.4], [-0.22, -0.4], [0.26, -0.4]))],
  [
    'Ⓟ',
    modifier([
      ...line([-0.24, -0.4], [-0.24, 0.4], [0.06, 0.4]),
      arc([0.06, 0.18], 0.22, 90, -180),
      ...line([0.06, -0.04], [-0.24, -0.04]),
    ]),
  ],
  ['Ⓕ', modifier([...line([-0.22, -0.4], [-0.22, 0.4], [0.26, 0.4]), ...line([-0.22, 0.04], [0.18, 0.04])])],
  [
    'Ⓔ',
    modifier([...line([0.26, -0.4], [-0.22, -0.4], [-0.22, 0.4], [0.26, 0.4]), ...line([-0.22, 0.02], [0.18, 0.02])]),
  ],
  ['Ⓘ', modifier(line([0, 0.4], [0, -0.4]))],
  ['Ⓣ', modifier([...line([-0.3, 0.4], [0.3, 0.4]), ...line([0, 0.4], [0, -0.4])])],
  [
    'Ⓤ',
    modifier([
      ...line([-0.28, 0.4], [-0.28, -0.12]),
      arc([0, -0.12], 0.28, 180, 180),
      ...line([0.28, -0.12], [0.28, 0.4]),
    ]),
  ],
  ['≤', symbol(0.8, [...line([0.8, 1], [0, 0.62], [0.8, 0.24]), ...line([0, 0], [0.8, 0])])],
  ['≥', symbol(0.8, [...line([0, 1], [0.8, 0.62], [0, 0.24]), ...line([0, 0], [0.8, 0])])],
])

const turnedSigns = ['⌲', '⌳'].flatMap((sign) =>
  (['left', 'up', 'down'] as const).map((way): [string, DrawnSymbol] => {
    const { strokes, advance } = drawnSymbols.get(sign)!
    if (way === 'left')
      return [sign + wayMarks.left, { advance, strokes: strokes.map((c) => placed(c, mirrored(advance))), fills: [] }]
    const middle = sign === '⌳' ? 0.3 : 0.5
    const turn = way === 'up' ? 1 : -1
    const tall = ([x, y]: Vec2): Vec2 => [BEARING + 0.5 - turn * (y - middle), 0.5 + turn * (x - advance / 2)]
    return [sign + wayMarks[way], { advance: 1 + 2 * BEARING, strokes: strokes.map((c) => placed(c, tall)), fills: [] }]
  }),
)

/** Signs written with more than one character, by the characters. */
const composedSigns: ReadonlyMap<string, DrawnSymbol> = new Map([
  ...turnedSigns,
  // Spotface: a counterbore with SF within (ASME Y14.5-2018 Fig. 6-1, from memory; height of the letters: common practice).
  [
    '⌴SF',
    symbol(2, [
      ...line([0, 1], [0, 0], [2, 0], [2, 1]),
      arc([0.6, 0.69], 0.16, 30, 240),
      arc([0.6, 0.37], 0.16, 90, -240),
      ...line([1.11, 0.21], [1.11, 0.85], [1.5, 0.85]),
      ...line([1.11, 0.54], [1.42, 0.54]),
    ]),
  ],
])

/** Spellings of signs by their first character, longest first. */
const spellings = new Map<string, string[]>()
for (const s of [...composedSigns.keys(), ...drawnSymbols.keys()])
  spellings.set(s[0]!, [...(spellings.get(s[0]!) ?? []), s])

/** The sign that the text begins with at `index`, if any. */
export const signAt = (text: string, index: number): string | undefined =>
  spellings.get(text[index]!)?.find((s) => text.startsWith(s, index))

function mirrored(width: number): (p: Vec2) => Vec2 {
  return ([x, y]) => [width - x, y]
}

/** A stroke of straight lines with its points put elsewhere. */
function placed(c: Curve2, put: (p: Vec2) => Vec2): Curve2 {
  return c.kind === 'line' ? { kind: 'line', a: put(c.a), b: put(c.b) } : c
}

/** A letter drawn about (0, 0), in its circle. */
function modifier(letter: readonly Curve2[]): DrawnSymbol {
  const set = (c: Curve2): Curve2 => {
    const put = ([x, y]: Vec2): Vec2 => [x + 0.75, y + 0.5]
    if (c.kind === 'line') return { kind: 'line', a: put(c.a), b: put(c.b) }
    return c.kind === 'arc' ? { ...c, c: put(c.c) } : c
  }
  return symbol(1.5, [circle([0.75, 0.5], 0.75), ...letter.map(set)])
}

/** A bar at 60° through a point. */
function bar60([x, y]: Vec2, length: number): Curve2[] {
  const [dx, dy] = [(length / 2) * 0.5, (length / 2) * sin60]
  return line([x - dx, y - dy], [x + dx, y + dy])
}

/** Tangent at 60° to the circle of radius 0.5 about (1, 0.5), 1.5h long. */
function tangent60(side: number): Curve2[] {
  return bar60([1 + side * 0.5 * sin60, 0.5 - side * 0.25], 1.5)
}

/** Other characters that mean the same sign. */
const sameAs: ReadonlyMap<string, string> = new Map([
  ['∅', '⌀'],
  ['Ø', '⌀'],
  ['ø', '⌀'],
])

/** The drawn sign for a character; Ø and ø count as diameter only in front of a figure (see `lettering`). */
export function drawnSymbol(char: string): DrawnSymbol | undefined {
  return drawnSymbols.get(char) ?? composedSigns.get(char)
}

/** `∅` and, before a figure, `Ø` and `ø` as the diameter sign. */
export function withDiameterSigns(text: string): string {
  return text.replace(/∅|[Øø](?=\s?[.,]?\d)/g, (c) => sameAs.get(c)!)
}
