import { readTyped } from '../../../brief/edit.ts'
import type { Unit } from '../../../brief/size.ts'

/** A size as it was written on a sketch, and the unit that was chosen then. */
export interface TypedSize {
  readonly text: string
  readonly unit: Unit
}

/** Why the size is refused, as at a size of the sheet; undefined where it is taken. One left empty is still open. */
export function refusalOf(typed: string, unit: Unit): string | undefined {
  if (typed.trim() === '') return undefined
  const read = readTyped(typed, unit)
  return 'refusal' in read ? `${read.refusal.text}. Expected: ${read.refusal.expected ?? 'a size'}.` : undefined
}

/**
 * The size in the unit chosen now: plain digits are converted, to a thousandth of a millimetre or to a ten-thousandth of
 * an inch. One that says its unit, or is no size, stays as it is; one with a tolerance says its unit from then on.
 */
export function inUnit({ text, unit }: TypedSize, now: Unit): string {
  if (unit === now || text.trim() === '') return text
  const read = readTyped(text, unit)
  if ('refusal' in read || read.size.unitTyped || read.size.text === '?') return text
  const { size } = read
  if (size.tolerance) return `${text.trim()} ${unit === 'inch' ? 'in' : 'mm'}`
  const converted =
    now === 'mm' ? String(Number(size.mm.toFixed(3))) : String(Number((size.mm / 25.4).toFixed(4))).replace(/^0\./, '.')
  return size.unknown ? `${converted}?` : converted
}
