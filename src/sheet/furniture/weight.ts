import type { Header } from '../../brief/brief.ts'

/** International avoirdupois pound, exact by definition (NIST SP 811). */
const KG_PER_LB = 0.45359237

/** Mass as printed: three significant figures, pounds on inch sheets, kilograms (grams below one) on metric ones. */
export function weightText(kg: number, header: Pick<Header, 'units' | 'practice' | 'decimalSign'>): string {
  const inch = header.units === 'inch'
  const grams = !inch && kg < 1
  const value = inch ? kg / KG_PER_LB : grams ? kg * 1000 : kg
  const digits = value > 0 ? Math.max(0, 2 - Math.floor(Math.log10(value))) : 0
  let text = value.toFixed(Math.min(digits, 4))
  if (inch && header.practice === 'ASME') text = text.replace(/^0\./, '.')
  if (header.decimalSign === ',') text = text.replace('.', ',')
  const unit = inch ? 'lb' : grams ? 'g' : 'kg'
  return `${text} ${header.practice === 'ASME' ? unit.toUpperCase() : unit}`
}
