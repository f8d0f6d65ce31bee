import type { Cursor } from './cursor.ts'
import { show, spanOf } from './cursor.ts'
import { readNum } from './read-size.ts'
import type { Angle } from './size.ts'

/** The sign that may stand before the rate, as on the sheet. */
const SIGNS: Readonly<Record<string, Angle['rate']>> = { '⌲': 'taper', '⌳': 'slope' }

/** `1:10`, `.1:1`, `⌲ 1:10`. */
export function atRate(c: Cursor): boolean {
  const ahead = SIGNS[c.peek().text] ? 1 : 0
  return c.peek(ahead).kind === 'number' && c.peek(ahead + 1).kind === 'colon' && c.peek(ahead + 2).kind === 'number'
}

export const takeRateSign = (c: Cursor, rate: NonNullable<Angle['rate']>): boolean => {
  if (SIGNS[c.peek().text] !== rate) return false
  c.index++
  return true
}

/**
 * A rate as the angle that it makes: of a taper the cone's whole angle, 2 atan(rate / 2) (ISO 3040:2016 3.1: difference
 * of diameters to length; from memory), of a slope its angle to the base, atan(rate). Steeper than 1:1 is refused.
 */
export function readRate(c: Cursor, rate: NonNullable<Angle['rate']>): Angle | undefined {
  takeRateSign(c, rate)
  const first = readNum(c)
  c.take('colon')
  const second = readNum(c)
  const example = c.setting.practice === 'ASME' ? '.1:1 or 1:10' : '1:10'
  if (!first || !second)
    return c.mark('missing-size', spanOf(c.peek()), `the rate of the ${rate} is missing`, { expected: example })
  const span = { from: first.span.from, to: second.span.to }
  const text = `${first.text}:${second.text}`
  const ratio = first.value / second.value
  if (!(first.value > 0) || !(second.value > 0) || ratio > 1)
    return c.mark('angle-out-of-range', span, `a ${rate} of ${show(text)} cannot be`, {
      expected: `a rate such as ${example}, not above 1:1`,
    })
  const radians = rate === 'taper' ? 2 * Math.atan(ratio / 2) : Math.atan(ratio)
  return { text, value: (radians * 180) / Math.PI, form: 'whole', decimals: 0, span, rate }
}
