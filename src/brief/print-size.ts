import type { Angle, Count, FormRequirement, Size } from './size.ts'

/** A size as it is written in canonical form: digits as typed, then limits, unit and tolerance. */
export function printSize(size: Size): string {
  const { tolerance: t } = size
  const digits = size.unknown && size.text !== '?' ? `${size.text}?` : size.text
  const limit = t?.kind === 'limits' ? `/${t.upper.text === size.text ? t.lower.text : t.upper.text}` : ''
  const unit = size.unitTyped ? (size.unit === 'mm' ? ' mm' : ' in') : ''
  const length = digits + limit + unit
  const form = size.formRule ? ` ${formSign[size.formRule.kind]}` : ''
  if (t?.kind === 'reference') return `(${length})${form}`
  const after = t && printTolerance(t)
  return (after ? `${length} ${after}` : length) + form
}

/** The letter in its circle, on the brief and on the sheet. */
export const formSign: Readonly<Record<FormRequirement['kind'], string>> = { envelope: 'Ⓔ', independent: 'Ⓘ' }

function printTolerance(t: NonNullable<Size['tolerance']>): string {
  switch (t.kind) {
    case 'plus-minus':
      return `±${t.value.text}`
    case 'unequal':
      return `${t.upper.text} ${t.lower.text}`
    case 'fit':
      return t.symbol
    case 'stock':
      return 'STK'
    case 'max':
      return 'MAX'
    case 'min':
      return 'MIN'
    case 'basic':
      return 'BASIC'
    case 'limits':
    case 'reference':
      return ''
  }
}

export function printAngle(angle: Angle): string {
  const t = angle.tolerance
  if (angle.rate) return angle.text
  return `${angle.text}°${t?.kind === 'plus-minus' ? ` ±${t.value.text}°` : ''}`
}

/** `4X `, or nothing for one. */
export const printCount = (count: Count): string => (count.value === 1 ? '' : `${count.value}X `)

export const dia = (size: Size): string => `⌀${printSize(size)}`
