import type { Curve2 } from '../../geometry/curve2.ts'
import type { Sign } from '../../sizes/annotation.ts'
import { textWidth } from '../lettering/lettering.ts'
import { type Art, lines } from './art.ts'

type TextureSign = Extract<Sign, { kind: 'texture' }>

/** Short leg's and long leg's heights, in lettering heights (ISO 21920-1, ASME Y14.36; from memory). */
const SHORT = 1.4
const LONG = 3
const SLOPE = Math.tan(Math.PI / 3)

export interface TextureArt extends Art {
  /** From the left edge to the symbol's point. */
  readonly point: number
  /** Lower edge of the lettering, and top of the short leg. */
  readonly clear: number
  readonly short: number
}

/**
 * The surface texture symbol, its point at (`point`, 0): legs at 60°, value under the bar, the way of making over it,
 * the lay beside the point. The bar across the vee asks for machining, the circle in it forbids machining.
 */
export function textureArt(sign: TextureSign, height: number): TextureArt {
  const h = height
  const point = (SHORT * h) / SLOPE
  const knee = point + (LONG * h) / SLOPE
  // Clear of the long leg at the top of the lettering.
  const value = knee + 0.15 * h
  const wide = Math.max(textWidth(sign.value, h), sign.process ? textWidth(sign.process, h) : 0)
  const right = value + wide + 0.2 * h
  const strokes: Curve2[] = [
    ...lines([0, SHORT * h], [point, 0]),
    ...lines([point, 0], [knee, LONG * h]),
    ...lines([knee, LONG * h], [right, LONG * h]),
  ]
  if (sign.removal === 'required') strokes.push(...lines([0, SHORT * h], [2 * point, SHORT * h]))
  if (sign.removal === 'prohibited') {
    // Inscribed between the legs, its top level with the short leg's.
    const r = (SHORT * h) / 3
    strokes.push({ kind: 'arc', c: [point, SHORT * h - r], r, from: 0, sweep: 2 * Math.PI })
  }
  const texts: Art['texts'][number][] = [{ text: sign.value, at: [value, (LONG - 1.4) * h], anchor: 'start' }]
  if (sign.process) texts.push({ text: sign.process, at: [knee + 0.15 * h, (LONG + 0.35) * h], anchor: 'start' })
  if (sign.lay) texts.push({ text: sign.lay, at: [point + 0.95 * h, 0.2 * h], anchor: 'start' })
  return {
    sign,
    width: right,
    height: (sign.process ? LONG + 1.6 : LONG) * h,
    strokes,
    fills: [],
    texts,
    glyphs: [],
    point,
    clear: (LONG - 1.5) * h,
    short: SHORT * h,
  }
}
