import type { Mark } from '../../../brief/mark.ts'
import type { Drawn } from '../engine/messages.ts'
import { openWords, whatIsOpen } from './what-is-open.ts'

/** The notice of a written file: with what must change and what is open, so that no draft goes out as finished. */
export function writtenWords(name: string, marks: readonly Mark[], drawn: Drawn | undefined): string {
  const must = marks.filter((m) => m.weight === 'must change' && m.accepted === undefined).length
  const said = [
    ...(must === 0 ? [] : [`${must} ${must === 1 ? 'mark' : 'marks'} must change`]),
    ...(drawn ? [openWords(whatIsOpen(drawn))].filter((w) => w !== '') : []),
  ]
  if (said.length === 0) return `${name} written.`
  return `${name} written${must > 0 ? ', preliminary' : ', still open'}: ${said.join('; ')}.`
}
