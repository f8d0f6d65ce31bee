import type { Mark } from '../../../brief/mark.ts'
import type { Drawn } from '../engine/messages.ts'
import type { Shown } from './use-engine.ts'

/** Whether the brief has no statement of what the part is made from; one that cannot be read is one. */
export const saysNoStock = ({ brief }: Drawn): boolean => brief.marks.some((m) => m.rule === 'stock-not-said')

/** How the sheet stands to the brief, where it is not its newest drawing. */
export function standingOf(shown: Shown | undefined, fault: string | undefined): string | undefined {
  if (fault) return `The sheet could not be drawn: ${fault}.`
  if (!shown) return undefined
  if (shown.good && shown.good !== shown.drawn) {
    return 'The brief cannot be drawn as it stands. The sheet is of the brief before.'
  }
  if (shown.good) return undefined
  return saysNoStock(shown.drawn)
    ? 'There is no sheet yet: the brief does not say what the part is made from.'
    : 'There is no sheet yet.'
}

/** What stands in the way of a checker's signature, in a sentence. */
export function signWords(marks: readonly Mark[]): string {
  const open = marks.filter((m) => m.accepted === undefined && m.weight === 'must change').length
  const still = open === 0 ? '' : ` ${open} ${open === 1 ? 'mark' : 'marks'} must change still.`
  const lapsed = marks.some((m) => m.rule === 'signature-lapsed')
    ? ' The signatures that no longer hold are taken off.'
    : ''
  return `The brief gets the statement checked, with name and date.${still}${lapsed}`
}
