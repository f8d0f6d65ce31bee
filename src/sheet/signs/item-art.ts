import type { Sign } from '../../sizes/annotation.ts'
import { textWidth } from '../lettering/lettering.ts'
import type { Art } from './art.ts'

type ItemSign = Extract<Sign, { kind: 'item' }>

/** Radius of the ring round an item number of two digits at most, in lettering heights (common practice, no source). */
const RING = 1.25

/** An item number in a ring, which tells it from the sizes (ISO 6433:2012, from memory). */
export function itemArt(sign: ItemSign, h: number): Art {
  const r = Math.max(RING * h, Math.hypot(textWidth(sign.number, h), h) / 2 + 0.3 * h)
  return {
    sign,
    width: 2 * r,
    height: 2 * r,
    strokes: [{ kind: 'arc', c: [r, r], r, from: 0, sweep: 2 * Math.PI }],
    fills: [],
    texts: [{ text: sign.number, at: [r, r - h / 2], anchor: 'middle' }],
    glyphs: [],
  }
}
