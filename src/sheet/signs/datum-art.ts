import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Sign } from '../../sizes/annotation.ts'
import { textWidth } from '../lettering/lettering.ts'
import { type Art, box, lines } from './art.ts'

type DatumSign = Extract<Sign, { kind: 'datum' }>

/** Box and triangle of a datum feature symbol, in lettering heights (ISO 7083, ASME Y14.5 Appendix C; from memory). */
const BOX = 2
const TRIANGLE = 1
const SIDE = 0.4

/** Height of the triangle, its base to its point: it is equilateral with sides of 1.15 h. */
export const triangleHeight = (h: number): number => TRIANGLE * h

export const datumBox = (sign: DatumSign, h: number): Vec2 => [
  Math.max(BOX * h, textWidth(sign.letter, h) + 2 * SIDE * h),
  BOX * h,
]

/** The box with its letter alone. */
export function datumBoxArt(sign: DatumSign, h: number): Art {
  const [width, height] = datumBox(sign, h)
  return {
    sign,
    width,
    height,
    strokes: box(0, 0, width, height),
    fills: [],
    texts: [{ text: sign.letter, at: [width / 2, height / 2 - h / 2], anchor: 'middle', upright: true }],
    glyphs: [],
  }
}

/** Filled triangle that stands with the middle of its base at `at` and points along the unit vector `way`. */
export function triangle(at: Vec2, way: Vec2, h: number): Curve2[] {
  const tall = triangleHeight(h)
  const half = tall / Math.sqrt(3)
  const across: Vec2 = [-way[1], way[0]]
  return lines(
    [at[0] + way[0] * tall, at[1] + way[1] * tall],
    [at[0] + across[0] * half, at[1] + across[1] * half],
    [at[0] - across[0] * half, at[1] - across[1] * half],
    [at[0] + way[0] * tall, at[1] + way[1] * tall],
  )
}

/** The whole symbol hanging from a line at its upper edge; `rule` is how far that line is drawn with it, mm. */
export function hangingDatum(sign: DatumSign, h: number, rule: number): Art {
  const own = datumBoxArt(sign, h)
  const stem = 0.8 * h
  const top = own.height + stem + triangleHeight(h)
  const x = own.width / 2
  return {
    ...own,
    width: Math.max(own.width, rule),
    height: top,
    strokes: [
      ...own.strokes,
      ...lines([x, own.height], [x, own.height + stem]),
      ...(rule > 0 ? lines([0, top], [Math.max(own.width, rule), top]) : []),
    ],
    fills: [triangle([x, top], [0, -1], h)],
  }
}

/** The whole symbol standing at (0, 0) along the unit vector `way`: its box's middle, and half the triangle's base. */
export function standingDatum(
  sign: DatumSign,
  way: Vec2,
  stem: number,
  h: number,
): { readonly art: Art; readonly centre: Vec2; readonly foot: number } {
  const [w, tall] = datumBox(sign, h)
  const half = Math.min(w / 2 / Math.abs(way[0] || 1e-9), tall / 2 / Math.abs(way[1] || 1e-9))
  const from = triangleHeight(h)
  const reach = from + stem + half
  const centre: Vec2 = [way[0] * reach, way[1] * reach]
  const art: Art = {
    sign,
    width: 0,
    height: 0,
    strokes: [
      ...lines([way[0] * from, way[1] * from], [way[0] * (from + stem), way[1] * (from + stem)]),
      ...box(centre[0] - w / 2, centre[1] - tall / 2, w, tall),
    ],
    fills: [triangle([0, 0], way, h)],
    texts: [{ text: sign.letter, at: [centre[0], centre[1] - h / 2], anchor: 'middle' }],
    glyphs: [],
  }
  return { art, centre, foot: from / Math.sqrt(3) }
}
