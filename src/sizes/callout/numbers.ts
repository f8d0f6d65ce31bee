import { formSign } from '../../brief/print-size.ts'
import type { Angle, Num, Size, Tolerance, Unit } from '../../brief/size.ts'
import type { CalloutPart } from '../dimension.ts'
import type { SheetWriting } from './habit.ts'

/**
 * A number as this sheet writes it. Fractions and the count of decimals stand as typed. Inch: no zero before the point;
 * millimetre: a zero before it (ASME Y14.5-2018 4.3.1 and 4.3.2, ISO 129-1, from memory).
 */
export function numberText(text: string, unit: Unit, sign: '.' | ','): string {
  const plain = text.replace(',', '.').replace(/^[+\-−±]/, '')
  if (!plain.includes('.')) return plain
  const led = unit === 'inch' ? plain.replace(/^0+(?=\.)/, '') : plain.replace(/^(?=\.)/, '0')
  return sign === ',' ? led.replace('.', ',') : led
}

/** The same number with at least so many decimals. */
function padded(num: Num, decimals: number): string {
  if (num.form === 'fraction' || num.decimals >= decimals) return num.text
  const plain = num.text.replace(',', '.')
  const dot = plain.includes('.') ? plain : `${plain}.`
  return dot + '0'.repeat(decimals - num.decimals)
}

/** A computed length in the sheet's unit: inch with the decimals wanted, millimetres without trailing zeros. */
export function computedText(mm: number, writing: SheetWriting, decimals?: number): string {
  const { unit, sign } = writing
  if (unit === 'inch') return numberText((mm / 25.4).toFixed(decimals ?? 3), 'inch', sign)
  const text = (Math.round(mm * 1000) / 1000).toFixed(decimals ?? 3)
  return numberText(decimals === undefined && text.includes('.') ? text.replace(/\.?0+$/, '') : text, 'mm', sign)
}

/** A size with its prefix (⌀, R, □) and tolerance: one line of a callout. */
export function sizeParts(size: Size, writing: SheetWriting, prefix = ''): CalloutPart[] {
  const { sign } = writing
  const unit = size.unitTyped && size.unit !== writing.unit ? (size.unit === 'mm' ? ' mm' : ' in') : ''
  const { tolerance } = size
  const form = size.formRule ? ` ${formSign[size.formRule.kind]}` : ''
  if (size.unknown) {
    const guess = /\d/.test(size.text) ? numberText(size.text.replace('?', ''), size.unit, sign) : ''
    return [`${prefix}${guess}?${unit}${form}`]
  }
  if (tolerance?.kind === 'limits') {
    const places = Math.max(tolerance.upper.decimals, tolerance.lower.decimals)
    const [upper, lower] =
      tolerance.upper.value >= tolerance.lower.value
        ? [tolerance.upper, tolerance.lower]
        : [tolerance.lower, tolerance.upper]
    const write = (num: Num) => numberText(padded(num, places), size.unit, sign)
    return tidy([prefix, { stack: [write(upper), write(lower)] }, unit, form])
  }
  const places = tolerance ? placesOf(tolerance) : 0
  // Inch practice: a size and its own tolerance carry the same number of decimals.
  const nominal = size.unit === 'inch' && places > size.decimals ? padded(size, places) : size.text
  return tidy([`${prefix}${numberText(nominal, size.unit, sign)}`, ...toleranceParts(size, writing), unit, form])
}

function placesOf(tolerance: Tolerance): number {
  if (tolerance.kind === 'plus-minus') return tolerance.value.decimals
  if (tolerance.kind === 'unequal') return Math.max(tolerance.upper.decimals, tolerance.lower.decimals)
  return 0
}

function toleranceParts(size: Size, writing: SheetWriting): CalloutPart[] {
  const { habit, sign } = writing
  const { tolerance } = size
  switch (tolerance?.kind) {
    case 'plus-minus': {
      const text = size.unit === 'inch' ? padded(tolerance.value, size.decimals) : tolerance.value.text
      return [` ±${numberText(text, size.unit, sign)}`]
    }
    case 'unequal': {
      const places = Math.max(
        tolerance.upper.decimals,
        tolerance.lower.decimals,
        size.unit === 'inch' ? size.decimals : 0,
      )
      return [
        ' ',
        {
          stack: [
            deviation(tolerance.upper, '+', places, size.unit, writing),
            deviation(tolerance.lower, '−', places, size.unit, writing),
          ],
        },
      ]
    }
    case 'fit':
      return [` ${tolerance.symbol}`]
    case 'stock':
      return [habit.stock]
    case 'max':
      return [habit.max]
    case 'min':
      return [habit.min]
    default:
      return []
  }
}

/** `+.002`, `−.000` in inch; in millimetres a nil deviation is a bare 0 (ASME Y14.5-2018 5.3.1, from memory). */
function deviation(num: Num, at: '+' | '−', places: number, unit: Unit, writing: SheetWriting): string {
  if (num.value === 0 && unit === 'mm') return writing.habit.zero
  const sign = num.value > 0 ? '+' : num.value < 0 ? '−' : at
  return sign + numberText(padded({ ...num, text: num.text.replace(/^[+\-−±]/, '') }, places), unit, writing.sign)
}

/** An angle in degrees with its tolerance: `45°`, `90° ±0.5°`. */
export function angleParts(angle: Angle, writing: SheetWriting): CalloutPart[] {
  const write = (num: Num) => `${numberText(num.text.replace(/°$/, ''), 'mm', writing.sign)}°`
  const { tolerance } = angle
  switch (tolerance?.kind) {
    case 'plus-minus':
      return [`${write(angle)} ±${write(tolerance.value)}`]
    case 'unequal':
      return [
        `${write(angle)} `,
        {
          stack: [
            `${tolerance.upper.value < 0 ? '−' : '+'}${write(tolerance.upper)}`,
            `${tolerance.lower.value > 0 ? '+' : '−'}${write(tolerance.lower)}`,
          ],
        },
      ]
    case 'limits':
      return [{ stack: [write(tolerance.upper), write(tolerance.lower)] }]
    case 'max':
      return [`${write(angle)}${writing.habit.max}`]
    case 'min':
      return [`${write(angle)}${writing.habit.min}`]
    default:
      return [write(angle)]
  }
}

/** Neighbouring strings joined, empty ones dropped. */
export function tidy(parts: readonly CalloutPart[]): CalloutPart[] {
  const out: CalloutPart[] = []
  for (const part of parts) {
    const last = out.at(-1)
    if (typeof part === 'string') {
      if (part === '') continue
      if (typeof last === 'string') out[out.length - 1] = last + part
      else out.push(part)
    } else out.push(part)
  }
  return out
}
