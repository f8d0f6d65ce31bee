import type { Mend } from '../../../brief/mark.ts'
import type { Span } from '../../../brief/span.ts'
import type { PageMark } from '../engine/messages.ts'

/**
 * Marks about an older text, as they stand in a newer one: places before and behind the change go along, marks at words
 * that were changed are left out. They cannot be accepted before the checker has been round again.
 */
export function carriedMarks(marks: readonly PageMark[], older: string, newer: string): PageMark[] {
  const moved = mover(older, newer)
  return marks.flatMap(({ span, mends, accept: _, ...mark }): PageMark[] => {
    const there = span && moved(span)
    if (span && !there) return []
    const offered = mends?.flatMap((m) => {
      const at = moved(m.span)
      // A mend that has been made is not offered again while the checker has yet to come round.
      return at && !isMade(m, at, newer) ? [{ ...m, span: at }] : []
    })
    return [{ ...mark, ...(there ? { span: there } : {}), ...(offered ? { mends: offered } : {}) }]
  })
}

/** What the mend puts in, nothing giving way to it, stands there already. */
const isMade = ({ span, text }: Mend, at: Span, newer: string): boolean =>
  span.from === span.to && text.trim() !== '' && newer.startsWith(text, at.from)

/** A mend for an older text, as it is made in a newer one; undefined where the words that it is about were changed. */
export function carriedMend(mend: Mend, older: string, newer: string): Mend | undefined {
  const span = mover(older, newer)(mend.span)
  return span && !isMade(mend, span, newer) ? { ...mend, span } : undefined
}

/** Where a place of the older text is in the newer one: before and behind the change it goes along. */
function mover(older: string, newer: string): (span: Span) => Span | undefined {
  const most = Math.min(older.length, newer.length)
  let head = 0
  while (head < most && older[head] === newer[head]) head++
  let tail = 0
  while (tail < most - head && older[older.length - 1 - tail] === newer[newer.length - 1 - tail]) tail++
  const shift = newer.length - older.length
  return ({ from, to }) =>
    to <= head ? { from, to } : from >= older.length - tail ? { from: from + shift, to: to + shift } : undefined
}
