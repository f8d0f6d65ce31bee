import { Cursor, type Setting } from './cursor.ts'
import type { Lexeme, Statement } from './lexeme.ts'
import type { Mark } from './mark.ts'

/** What is said again of a slip once it is read as what it was taken for. */
const ECHOES = ['unknown-word', 'still-to-be-measured']

/** Misspelt words of one statement beyond these are marked by the last reading alone. */
const mostReadings = 12

/**
 * Reads a statement, and where a word was taken for another, again with that one: what was marked only because of the
 * slip is not marked, and the slip itself once. Undefined where a word stands for a size.
 */
export function readMended<T>(
  statement: Statement,
  setting: Setting,
  lexemes: readonly Lexeme[],
  read: (c: Cursor) => T,
): T | undefined {
  const slips: Mark[] = []
  let pieces = [...lexemes]
  for (let readings = 1; ; readings++) {
    const marks: Mark[] = []
    const c = new Cursor(statement, { ...setting, mark: (m) => marks.push(m) }, pieces)
    const result = read(c)
    const slip = readings < mostReadings ? c.misspelt : undefined
    const at = slip && pieces.findIndex((p) => p.from === slip.piece.from && p.to === slip.piece.to)
    const told = slip && marks.find((m) => (m.mends || slip.near === '?') && isAt(m, slip.piece))
    if (!slip || !told || at === undefined || at < 0) {
      const isSlip = (m: Mark) => ECHOES.includes(m.rule) && slips.some((s) => s.span && isAt(m, s.span))
      for (const mark of [...slips, ...marks.filter((m) => !isSlip(m))]) setting.mark(mark)
      // What has a word for a size is read on to its end, but no size is made up for it.
      return slips.some((s) => s.rule === 'not-a-size') ? undefined : result
    }
    slips.push(told)
    const kind = slip.near === '?' ? 'unknown' : slip.near === 'R' ? 'R' : 'word'
    pieces = pieces.map((p, i) => (i === at ? { ...p, text: slip.near, kind } : p))
  }
}

const isAt = ({ span }: Mark, place: { readonly from: number; readonly to: number }): boolean =>
  span?.from === place.from && span.to === place.to
