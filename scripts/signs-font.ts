import { writeFileSync } from 'node:fs'
import type { Curve2 } from '../src/geometry/curve2.ts'
import { pointAt } from '../src/geometry/evaluate.ts'
import type { Vec2 } from '../src/geometry/vec.ts'
import { drawnSymbols } from '../src/sheet/lettering/symbols.ts'

/**
 * The signs of callouts and frames as a font for the page's own text (npm run signs-font): the strokes that the sheet
 * draws, each in a cell as wide as those of the typed face, so that columns hold. Laid out as ISO/IEC 14496-22 says.
 */
export const SIGNS_FONT = 'src/app/page/style/signs.ttf'

const EM = 1000
/** Cell and height of capitals of the typed face, its stroke, and the white at either side of a sign. */
const CELL = 600
const CAPITAL = 560
const STROKE = 62
const SIDE = 48
/** Stroke of a letter in its ring, and how much wider than on paper an arrowhead is, to be seen at the size of text. */
const FINE = 42
const HEAD = 2.2
/** Ends of the line box. */
const [ASCENT, DESCENT] = [800, -250]

/** Characters that mean a sign and are shown as it. */
const ALSO: Readonly<Record<string, string>> = { '∅': '⌀', '⊥': '⟂', '◯': '○' }

type Contour = readonly Vec2[]

const reach = (curve: Curve2): Vec2[] => {
  const steps = curve.kind === 'line' ? 1 : 24
  return Array.from({ length: steps + 1 }, (_, i) => pointAt(curve, i / steps))
}

/** A closed outline of the line from a to b, its ends round. All turn the same way, so that what overlaps is filled once. */
function inked(a: Vec2, b: Vec2, width = STROKE): Contour {
  const along = Math.atan2(b[1] - a[1], b[0] - a[0])
  const half = (p: Vec2, from: number): Vec2[] =>
    Array.from({ length: 5 }, (_, k): Vec2 => {
      const at = from - (Math.PI * k) / 4
      return [p[0] + (width / 2) * Math.cos(at), p[1] + (width / 2) * Math.sin(at)]
    })
  return [...half(b, along + Math.PI / 2), ...half(a, along - Math.PI / 2)]
}

const turnsLeft = (contour: Contour): boolean =>
  contour.reduce((sum, [x, y], i) => {
    const [u, v] = contour[(i + 1) % contour.length]!
    return sum + x * v - u * y
  }, 0) > 0

/** Outlines of a sign in font units, in the middle of its cell. Round signs stay round; others may be narrowed. */
function outlines(char: string): Contour[] {
  const { strokes, fills } = drawnSymbols.get(char)!
  const all = [...strokes, ...fills.flat()].flatMap(reach)
  const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])]
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const wide = Math.min(CAPITAL, (CELL - 2 * SIDE - STROKE) / (right - left))
  const tall = Math.min(CAPITAL, 760 / (high - low))
  const round = strokes.some((c) => c.kind !== 'line')
  const scale = round ? [Math.min(wide, tall), Math.min(wide, tall)] : [wide, tall]
  const middle = Math.min(0.5, (low + high) / 2)
  const put = ([x, y]: Vec2): Vec2 => [
    CELL / 2 + (x - (left + right) / 2) * scale[0]!,
    CAPITAL / 2 + (y - middle) * scale[1]!,
  ]
  const width = /[Ⓐ-Ⓩ]/u.test(char) ? FINE : STROKE
  const lines = strokes.flatMap((curve) => {
    const points = reach(curve).map(put)
    return points.slice(1).map((b, i) => inked(points[i]!, b, width))
  })
  const solid = fills.map((f) => {
    const [tip, one, other] = f.map((c) => put(pointAt(c, 0))) as [Vec2, Vec2, Vec2]
    const back: Vec2 = [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2]
    const spread = (p: Vec2): Vec2 => [back[0] + (p[0] - back[0]) * HEAD, back[1] + (p[1] - back[1]) * HEAD]
    return [tip, spread(one), spread(other)]
  })
  return [...lines, ...solid].map((c) => (turnsLeft(c) ? c.toReversed() : c))
}

/** Big-endian bytes, the way of every table. */
class Bytes {
  readonly #all: number[] = []
  u16(...values: readonly number[]): this {
    for (const v of values) this.#all.push((v >> 8) & 255, v & 255)
    return this
  }
  u32(...values: readonly number[]): this {
    for (const v of values) this.u16((v >>> 16) & 65535, v & 65535)
    return this
  }
  raw(bytes: Iterable<number>): this {
    for (const b of bytes) this.#all.push(b)
    return this
  }
  get done(): Uint8Array {
    return Uint8Array.from(this.#all)
  }
}

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0))
const padded = (bytes: Uint8Array): Uint8Array =>
  new Uint8Array([...bytes, ...new Array((4 - (bytes.length % 4)) % 4).fill(0)])

interface Glyph {
  readonly bytes: Uint8Array
  readonly box: readonly [number, number, number, number]
  readonly points: number
  readonly contours: number
}

function glyphOf(contours: readonly Contour[]): Glyph {
  const points = contours.flat().map(([x, y]): Vec2 => [Math.round(x), Math.round(y)])
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])]
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const
  const ends: number[] = []
  for (const c of contours) ends.push((ends.at(-1) ?? -1) + c.length)
  const steps = (list: readonly number[]) => list.map((v, i) => v - (list[i - 1] ?? 0))
  // Every point is on its outline; each step takes two bytes.
  const bytes = new Bytes()
    .u16(contours.length, ...box, ...ends, 0)
    .raw(points.map(() => 1))
    .u16(...steps(xs), ...steps(ys))
  return { bytes: padded(bytes.done), box, points: points.length, contours: contours.length }
}

/** The whole font. */
export function signsFont(): Uint8Array {
  const chars = [...drawnSymbols.keys()].sort()
  const box: Contour[] = [
    inked([120, 0], [480, 0]),
    inked([480, 0], [480, CAPITAL]),
    inked([480, CAPITAL], [120, CAPITAL]),
    inked([120, CAPITAL], [120, 0]),
  ]
  const glyphs = [
    glyphOf(box.map((c) => (turnsLeft(c) ? c.toReversed() : c))),
    ...chars.map((c) => glyphOf(outlines(c))),
  ]
  const codes = [
    ...chars.map((c, i) => [c, i + 1] as const),
    ...Object.entries(ALSO).map(([c, of]) => [c, chars.indexOf(of) + 1] as const),
  ]
    .map(([c, id]) => [c.codePointAt(0)!, id] as const)
    .sort((a, b) => a[0] - b[0])
  const whole = [0, 1]
    .map((k) => Math.min(...glyphs.map((g) => g.box[k]!)))
    .concat([2, 3].map((k) => Math.max(...glyphs.map((g) => g.box[k]!))))
  const count = glyphs.length
  const starts = [0]
  for (const g of glyphs) starts.push(starts.at(-1)! + g.bytes.length)
  const segments = codes.length + 1
  const search = (n: number, size: number) => {
    const power = Math.floor(Math.log2(n))
    return [size * 2 ** power, power, size * (n - 2 ** power)] as const
  }
  const names = ['', 'Drawn signs', 'Regular', 'Drawn signs', 'Drawn signs', 'Version 1', 'DrawnSigns']
  const named = names
    .map((text, id) => ({ id, bytes: [...text].flatMap((c) => [0, c.charCodeAt(0)]) }))
    .filter((n) => n.bytes.length)
  let at = 0
  const tables: Readonly<Record<string, Uint8Array>> = {
    'OS/2': new Bytes()
      .u16(4, CELL, 400, 5, 0, 650, 600, 0, 75, 650, 600, 0, 350, 50, 250, 0)
      .raw([2, 0, 5, 9, 0, 0, 0, 0, 0, 0])
      .u32(0, 0, 0, 0)
      .raw(ascii('NONE'))
      .u16(0x40, codes[0]![0], codes.at(-1)![0], ASCENT, DESCENT, 0, ASCENT, -DESCENT)
      .u32(0, 0)
      .u16(400, CAPITAL, 0, 32, 1).done,
    cmap: new Bytes()
      .u16(0, 1, 3, 1)
      .u32(12)
      .u16(4, 16 + 8 * segments, 0, 2 * segments, ...search(segments, 2))
      .u16(...codes.map(([c]) => c), 0xffff, 0, ...codes.map(([c]) => c), 0xffff)
      .u16(...codes.map(([c, id]) => (id - c) & 0xffff), 1, ...new Array(segments).fill(0)).done,
    glyf: new Bytes().raw(glyphs.flatMap((g) => [...g.bytes])).done,
    // No date of making: the same signs give the same bytes.
    head: new Bytes()
      .u32(0x10000, 0x10000, 0, 0x5f0f3cf5)
      .u16(3, EM)
      .u32(0, 0, 0, 0)
      .u16(...whole, 0, 8, 2, 1, 0).done,
    hhea: new Bytes()
      .u32(0x10000)
      .u16(
        ASCENT,
        DESCENT,
        0,
        CELL,
        Math.min(...glyphs.map((g) => g.box[0])),
        Math.min(...glyphs.map((g) => CELL - g.box[2])),
        Math.max(...glyphs.map((g) => g.box[2])),
      )
      .u16(1, 0, 0, 0, 0, 0, 0, 0, count).done,
    hmtx: new Bytes().u16(...glyphs.flatMap((g) => [CELL, g.box[0]])).done,
    loca: new Bytes().u32(...starts).done,
    maxp: new Bytes()
      .u32(0x10000)
      .u16(
        count,
        Math.max(...glyphs.map((g) => g.points)),
        Math.max(...glyphs.map((g) => g.contours)),
        0,
        0,
        2,
        0,
        0,
        0,
        0,
        0,
        0,
        0,
        0,
      ).done,
    name: new Bytes()
      .u16(0, named.length, 6 + 12 * named.length)
      .u16(...named.flatMap(({ id, bytes }) => [3, 1, 0x409, id, bytes.length, (at += bytes.length) - bytes.length]))
      .raw(named.flatMap((n) => n.bytes)).done,
    post: new Bytes().u32(0x30000, 0).u16(-100, 50).u32(1, 0, 0, 0, 0).done,
  }
  return assembled(tables, search(Object.keys(tables).length, 16))
}

function assembled(tables: Readonly<Record<string, Uint8Array>>, search: readonly number[]): Uint8Array {
  const list = Object.entries(tables)
  const directory = new Bytes().u32(0x10000).u16(list.length, ...search)
  const body = new Bytes()
  let offset = 12 + 16 * list.length
  const sum = (bytes: Uint8Array) => {
    const view = new DataView(padded(bytes).buffer)
    let total = 0
    for (let i = 0; i < view.byteLength; i += 4) total = (total + view.getUint32(i)) >>> 0
    return total
  }
  let head = 0
  for (const [tag, bytes] of list) {
    if (tag === 'head') head = offset
    directory.raw(ascii(tag)).u32(sum(bytes), offset, bytes.length)
    body.raw(padded(bytes))
    offset += padded(bytes).length
  }
  const font = new Uint8Array([...directory.done, ...body.done])
  new DataView(font.buffer).setUint32(head + 8, (0xb1b0afba - sum(font)) >>> 0)
  return font
}

if (process.argv[1]?.endsWith('signs-font.ts')) writeFileSync(SIGNS_FONT, signsFont())
