import type { Num } from './size.ts'

const vulgar: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '½': 1 / 2,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
}

const mixed = /^(\d+)(?:\s*-\s*|\s+)(\d+)\/(\d+)$/
const fraction = /^(\d+)\/(\d+)$/
const vulgarNumber = /^(\d*)\s*([¼½¾⅛⅜⅝⅞])$/
const decimal = /^(\d*)[.,](\d+)$/
const whole = /^\d+$/

/**
 * The number written in `text`, which starts at `from` in the brief; a leading sign is kept in the digits.
 * Undefined where the text is no number (a zero denominator included).
 */
export function parseNumber(text: string, from: number): Num | undefined {
  const span = { from, to: from + text.length }
  const sign = /^[-−–]/.test(text) ? -1 : 1
  const body = text.replace(/^[-−–+]\s*/, '')
  let m: RegExpMatchArray | null
  const fractional = (value: number): Num | undefined =>
    Number.isFinite(value) ? { text, value: sign * value || 0, form: 'fraction', decimals: 0, span } : undefined
  if ((m = mixed.exec(body))) return fractional(Number(m[1]) + Number(m[2]) / Number(m[3]))
  if ((m = fraction.exec(body))) return fractional(Number(m[1]) / Number(m[2]))
  if ((m = vulgarNumber.exec(body))) return fractional(Number(m[1] || 0) + vulgar[m[2]!]!)
  if ((m = decimal.exec(body))) {
    const value = Number(`${m[1] || 0}.${m[2]}`)
    return { text, value: sign * value || 0, form: 'decimal', decimals: m[2]!.length, span }
  }
  if (whole.test(body)) {
    const value = Number(body)
    return Number.isFinite(value) ? { text, value: sign * value || 0, form: 'whole', decimals: 0, span } : undefined
  }
  return undefined
}

/** A piece of a run of digits and separators: a number, or the sign between two numbers. */
export interface NumberPiece {
  readonly text: string
  readonly from: number
  readonly number: boolean
}

const pieces = /(\d+-\d+\/\d+(?![\d.]))|(\d+[¼½¾⅛⅜⅝⅞]|[¼½¾⅛⅜⅝⅞])|(\d+\/\d+(?![\d.]))|(\d*\.\d+)|(\d+)|([.,/-])/g
const piecesWithComma =
  /(\d+-\d+\/\d+(?![\d.,]))|(\d+[¼½¾⅛⅜⅝⅞]|[¼½¾⅛⅜⅝⅞])|(\d+\/\d+(?![\d.,]))|(\d*[.,]\d+)|(\d+)|([.,/-])/g

/**
 * Takes a run such as `.500/.498`, `1-3/8`, `12/11.9`, `10,20` apart. With the decimal comma asked for, `5,5` is one
 * number; without it, two with a comma between.
 */
export function splitNumbers(text: string, from: number, decimalComma: boolean): NumberPiece[] {
  const out: NumberPiece[] = []
  for (const m of text.matchAll(decimalComma ? piecesWithComma : pieces)) {
    out.push({ text: m[0], from: from + m.index, number: m[6] === undefined })
  }
  return out
}
