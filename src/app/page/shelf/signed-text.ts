import type { Span } from '../../../brief/span.ts'

interface Statement {
  readonly keyword: string
  readonly words: string
  readonly span: Span
}

/** Statements of a brief as a signature covers them: without comments, empty lines and how they are spaced. */
function statementsOf(text: string): Statement[] {
  return [...text.matchAll(/^[^\s#].*\n?(?:[^\S\n]+\S.*\n?)*/gm)].map(({ 0: whole, index }) => ({
    keyword: /^[A-Za-z]*/.exec(whole)![0].toLowerCase(),
    words: whole
      .replace(/(^|\s)#.*/g, '$1')
      .replace(/\s+/g, ' ')
      .trim(),
    span: { from: index, to: index + whole.length },
  }))
}

const SIGNING = ['checked', 'approved']
/** Statements that change nothing on a sheet that was checked. */
const BESIDE = ['drawn', 'accept', ...SIGNING]

/** Who signed, when, and for which number: of another number it is another drawing's signature. */
const signatureOf = (statements: readonly Statement[]): string =>
  statements
    .filter(({ keyword, words }) => SIGNING.includes(keyword) && words.length > keyword.length)
    .concat(statements.filter(({ keyword }) => keyword === 'number'))
    .map(({ keyword, words }) => (keyword === 'number' ? words.split(' ').slice(0, 2).join(' ') : words))
    .join('\n')

const covered = (statements: readonly Statement[]): string =>
  statements
    .filter(({ keyword }) => !BESIDE.includes(keyword))
    .map(({ words }) => words)
    .join('\n')

/** The text that the signatures in `newer` stand for: the one signed before, or `newer` where the signatures changed. */
export function signedText(signed: string, newer: string): string {
  return signatureOf(statementsOf(signed)) === signatureOf(statementsOf(newer)) ? signed : newer
}

/** Texts round each change of the signatures, with the text that the signatures in them stand for. */
export type SigningMemory = Map<string, string>

/** Beyond so many the oldest is forgotten. */
const REMEMBERED = 400

/** As `signedText`, and remembers: a text that undo or redo brings back stands again as it stood then. */
export function signedAfter(
  memory: SigningMemory,
  signed: string,
  older: string,
  newer: string,
  undone: boolean,
): string {
  const before = undone ? memory.get(newer) : undefined
  if (before !== undefined) return before
  const next = signedText(signed, newer)
  if (next !== signed) {
    memory.set(older, signed).set(newer, next)
    for (const text of memory.keys()) {
      if (memory.size <= REMEMBERED) break
      memory.delete(text)
    }
  }
  return next
}

/** The signatures in `text`, where what they stand for was changed since; empty where they hold or there are none. */
export function lapsedSignatures(text: string, signed: string | undefined): Span[] {
  if (signed === undefined || signed === text) return []
  const now = statementsOf(text)
  if (covered(now) === covered(statementsOf(signed))) return []
  return now.filter(({ keyword }) => SIGNING.includes(keyword)).map(({ span }) => span)
}
