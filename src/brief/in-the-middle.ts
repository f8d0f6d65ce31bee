import type { Statement } from './lexeme.ts'
import type { Mend } from './mark.ts'

/** A mend for what has no place yet: the middle of its face; of several, in a row whose distance is still to be measured. */
export function inTheMiddle({ keyword, lexemes }: Statement, count: number): Mend {
  const at = lexemes[lexemes.length - 1]?.to ?? keyword.span.to
  const [label, text] =
    count === 1
      ? ['centre it both ways', 'centred both ways']
      : [
          `place the ${count} in a row, centred, their distance still “?”`,
          `${count} across ? apart, centred; centred up`,
        ]
  return { label, span: { from: at, to: at }, text: `\n          ${text}` }
}
