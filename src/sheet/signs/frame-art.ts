import type { Curve2 } from '../../geometry/curve2.ts'
import { boxOf } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Sign } from '../../sizes/annotation.ts'
import { textWidth } from '../lettering/lettering.ts'
import { drawnSymbol } from '../lettering/symbols.ts'
import { type Art, lines } from './art.ts'

/** Height of a row and least width of a compartment, in lettering heights (ISO 7083, ASME Y14.5 Appendix C; from memory). */
const ROW = 2
/** Space each side of the lettering in a compartment, in lettering heights. */
const SIDE = 0.4
/** Characteristics are drawn no taller than this, so that they stay clear of the frame. */
const TALLEST = 1.5

/** A tolerance frame: compartments in rows of one height; a symbol that serves several rows stands in the middle of them. */
export function frameArt(sign: Extract<Sign, { kind: 'frame' }>, height: number): Art {
  const h = height
  const row = ROW * h
  const { rows } = sign
  const tall = rows.length * row
  const cell = (text: string) => Math.max(row, textWidth(text, h) + 2 * SIDE * h)
  const first = Math.max(...rows.map((r) => (r.symbol ? symbolWidth(r.symbol, h) + 2 * SIDE * h : row)), row)
  // Value compartments of stacked rows are as wide as the widest, so that datum letters stand under each other.
  const columns = Math.max(...rows.map((r) => r.cells.length))
  const widths = Array.from({ length: columns }, (_, k) =>
    Math.max(...rows.flatMap((r) => (r.cells[k] === undefined ? [] : [cell(r.cells[k])]))),
  )
  const strokes: Curve2[] = []
  const texts: Art['texts'][number][] = []
  const glyphs: Art['glyphs'][number][] = []
  const ends = rows.map((r) => first + widths.slice(0, r.cells.length).reduce((a, b) => a + b, 0))
  rows.forEach((r, i) => {
    const top = tall - i * row
    const bottom = top - row
    const span = r.symbol ? shared(rows, i) : 0
    if (r.symbol) {
      const low = top - span * row
      strokes.push(...lines([0, low], [0, top]))
      glyphs.push(symbolGlyph(r.symbol, [first / 2, (top + low) / 2], h))
      strokes.push(...lines([first, low], [first, top]))
    }
    // The upper line of a row reaches as far as the longer of the two rows that it parts.
    const joined = r.symbol === undefined ? first : 0
    strokes.push(...lines([joined, top], [Math.max(ends[i]!, ends[i - 1] ?? 0), top]))
    let x = first
    r.cells.forEach((text, k) => {
      const w = widths[k]!
      texts.push({ text, at: [x + w / 2, (top + bottom) / 2 - h / 2], anchor: 'middle' })
      x += w
      strokes.push(...lines([x, bottom], [x, top]))
    })
  })
  strokes.push(...lines([0, 0], [ends.at(-1)!, 0]))
  return { sign, width: Math.max(...ends), height: tall, strokes, fills: [], texts, glyphs }
}

/** How many rows the symbol of a row serves. */
function shared(rows: readonly { readonly symbol?: string }[], i: number): number {
  let n = 1
  while (rows[i + n] && rows[i + n]!.symbol === undefined) n++
  return n
}

function bounds(strokes: readonly Curve2[]): readonly [Vec2, Vec2] {
  const boxes = strokes.map(boxOf)
  const least = (k: 0 | 1) => Math.min(...boxes.map((b) => b.min[k]))
  const most = (k: 0 | 1) => Math.max(...boxes.map((b) => b.max[k]))
  return [
    [least(0), least(1)],
    [most(0), most(1)],
  ]
}

function shapeOf(symbol: string): { readonly strokes: readonly Curve2[]; readonly fills: readonly Curve2[][] } {
  const drawn = drawnSymbol(symbol)
  return { strokes: drawn?.strokes ?? [], fills: (drawn?.fills ?? []).map((f) => [...f]) }
}

function scaleOf(symbol: string, h: number): number {
  const { strokes, fills } = shapeOf(symbol)
  const [min, max] = bounds([...strokes, ...fills.flat()])
  return h * Math.min(1, TALLEST / (max[1] - min[1]))
}

function symbolWidth(symbol: string, h: number): number {
  const { strokes, fills } = shapeOf(symbol)
  const [min, max] = bounds([...strokes, ...fills.flat()])
  return (max[0] - min[0]) * scaleOf(symbol, h)
}

/** The symbol with its middle at the point. */
function symbolGlyph(symbol: string, at: Vec2, h: number): Art['glyphs'][number] {
  const { strokes, fills } = shapeOf(symbol)
  const all = [...strokes, ...fills.flat()]
  const [min, max] = bounds(all)
  const s = scaleOf(symbol, h)
  const put = ([x, y]: Vec2): Vec2 => [at[0] + (x - (min[0] + max[0]) / 2) * s, at[1] + (y - (min[1] + max[1]) / 2) * s]
  const set = (c: Curve2): Curve2 => {
    if (c.kind === 'line') return { kind: 'line', a: put(c.a), b: put(c.b) }
    if (c.kind === 'arc') return { ...c, c: put(c.c), r: c.r * s }
    throw new Error('symbols are drawn with lines and arcs')
  }
  return { text: symbol, at: put([min[0], min[1]]), strokes: all.map(set) }
}
