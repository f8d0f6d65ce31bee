import type { Header } from '../../brief/brief.ts'
import { asme } from './asme.ts'
import type { SheetWriting } from './habit.ts'
import { iso } from './iso.ts'

/** Words, unit and decimal sign of the sheet, by the header's practice. */
export function writingOf(header: Header): SheetWriting {
  return {
    habit: header.practice === 'ASME' ? asme : iso,
    unit: header.units,
    sign: header.practice === 'ISO' && header.decimalSign === ',' ? ',' : '.',
  }
}
