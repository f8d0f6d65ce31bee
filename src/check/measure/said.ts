import { formSign } from '../../brief/print-size.ts'
import type { Size, Unit } from '../../brief/size.ts'

/** A length in the drafter's unit, to what a checker can tell apart: `2.3 mm`, `.09 in`. */
export function said(mm: number, unit: Unit): string {
  if (unit === 'inch')
    return `${(mm / 25.4)
      .toFixed(3)
      .replace(/^(-?)0\./, '$1.')
      .replace(/(\.\d\d)0$/, '$1')} in`
  return `${Number(mm.toFixed(Math.abs(mm) < 0.1 ? 3 : Math.abs(mm) < 1 ? 2 : 1))} mm`
}

/** A length that can be typed into the brief: no unit, up to hundredths of a mm or thousandths of an inch. */
export function typed(mm: number, unit: Unit): string {
  return unit === 'inch' ? (mm / 25.4).toFixed(3).replace(/^0\./, '.') : String(Number(mm.toFixed(2)))
}

/** A size with its tolerance, as a mark quotes it. */
export function quoted(size: Size): string {
  return size.formRule ? `${toleranced(size)} ${formSign[size.formRule.kind]}` : toleranced(size)
}

function toleranced(size: Size): string {
  const t = size.tolerance
  if (t?.kind === 'fit') return `${size.text} ${t.symbol}`
  if (t?.kind === 'plus-minus') return `${size.text} ±${t.value.text}`
  if (t?.kind === 'unequal') return `${size.text} ${t.upper.text} ${t.lower.text}`
  if (t?.kind === 'limits') return `${t.upper.text}/${t.lower.text}`
  return size.text
}
