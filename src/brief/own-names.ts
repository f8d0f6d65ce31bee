import type { Statement } from './lexeme.ts'
import { threadAt } from './thread.ts'
import type { Keyword } from './vocabulary.ts'

/** A word that begins the size of a step: `dia`, or a thread's designation. */
const endsName = (word: string) => /^(dia|diameter)$|^#\d/i.test(word) || threadAt(word) !== ''

/** Names of turned steps, gathered before anything refers to them. */
export function ownNames(
  known: readonly { readonly statement: Statement; readonly keyword: Keyword }[],
): ReadonlySet<string> {
  const names = new Set<string>()
  for (const { statement, keyword } of known) {
    if (keyword !== 'turned') continue
    let words: string[] = []
    let steps = 0
    let fresh = true
    for (const piece of statement.lexemes) {
      if (piece.kind === 'line' || piece.kind === 'semicolon') {
        words = []
        fresh = true
      } else if (fresh && piece.kind === 'word' && !endsName(piece.text)) words.push(piece.text.toLowerCase())
      else if (fresh && piece.kind !== 'colon') {
        const isStep = piece.kind === 'diameter' || piece.kind === 'number' || endsName(piece.text)
        if (isStep && words[0] !== 'axis' && words[0] !== 'lengths') {
          steps++
          names.add(words.length > 0 ? words.join(' ') : `step ${steps}`)
          names.add(`step ${steps}`)
          for (const word of words) names.add(word)
        }
        fresh = false
      }
    }
  }
  return names
}
