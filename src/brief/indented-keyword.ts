import { cut, type Lexeme, type Statement } from './lexeme.ts'
import type { Mark } from './mark.ts'
import {
  choiceKeywords,
  featureKeywords,
  geometricKeywords,
  keywordSpellings,
  keywords,
  stockKeywords,
  textKeywords,
} from './vocabulary.ts'

const featureLike: readonly string[] = [...featureKeywords, ...geometricKeywords]
const textLike: readonly string[] = [...textKeywords, ...choiceKeywords]

/** Statements whose lines hold free names or words: there a keyword at the head of a line may be one of those. */
const FREE = ['turned', 'views', 'view', 'section', 'sections', 'pictorial', 'note', 'notes', 'general', 'accept']

/**
 * The statements, and after each those of its lines that begin a statement of their own and are indented by mistake: read
 * as such, and marked at the keyword, with the indentation to take away.
 */
export function withoutIndented(
  text: string,
  statements: readonly Statement[],
  comma: boolean,
  mark: (m: Mark) => void,
): Statement[] {
  return statements.flatMap((s) => apart(text, s, comma, mark))
}

function apart(text: string, statement: Statement, comma: boolean, mark: (m: Mark) => void): Statement[] {
  const at = headOf(text, statement)
  if (at === undefined) return [statement]
  const lineStart = Math.max(text.lastIndexOf('\n', at - 1), text.lastIndexOf('\r', at - 1)) + 1
  const word = /^[\p{L}]+/u.exec(text.slice(at))![0]
  mark({
    rule: 'indented-statement',
    weight: 'must change',
    text: `“${word}” begins a statement, but its line is indented and goes on with “${statement.keyword.text}”`,
    span: { from: at, to: at + word.length },
    expected: `${word} at the left margin`,
    mends: [{ label: 'take the indentation away', span: { from: lineStart, to: at }, text: '' }],
  })
  const rest = cut(text.slice(at, statement.span.to), comma).statements.map((s) => moved(s, at))
  return [before(statement, at), ...withoutIndented(text, rest, comma, mark)]
}

/** Where the first indented line that begins a statement has its keyword. */
function headOf(text: string, { keyword, lexemes, lines }: Statement): number | undefined {
  const host = keyword.text.toLowerCase()
  if (FREE.includes(host)) return undefined
  // free text is one line but for notes
  const textLine = lines.slice(1).find(({ span }) => beginsBelowText(text.slice(span.from, span.to)))
  if (textLine) return textLine.span.from
  const i = lexemes.findIndex((l, k) => l.kind === 'line' && beginsStatement(lexemes.slice(k + 1)))
  return i < 0 ? undefined : lexemes[i + 1]!.from
}

const known = (word: string): string | undefined =>
  (keywords as readonly string[]).includes(word)
    ? word
    : Object.hasOwn(keywordSpellings, word)
      ? keywordSpellings[word]
      : undefined

function beginsBelowText(line: string): boolean {
  const [, first = '', next = ''] = /^(\p{L}+)\s+(\S+)/u.exec(line) ?? []
  const word = known(first.toLowerCase())
  if (!word) return false
  if (featureLike.includes(word)) return /^[^:;]*:/.test(line)
  if ((stockKeywords as readonly string[]).includes(word)) return /^[\d.⌀]/u.test(next)
  return (keywords as readonly string[]).includes(first)
}

function beginsStatement(rest: readonly Lexeme[]): boolean {
  const [first, next] = rest
  if (first?.kind !== 'word' || !next || next.kind === 'line') return false
  const word = known(first.text.toLowerCase())
  if (!word || word === 'angle') return false
  const end = rest.findIndex((l) => l.kind === 'line' || l.kind === 'semicolon')
  const line = end < 0 ? rest : rest.slice(0, end)
  if (featureLike.includes(word)) return line.some((l, k) => l.kind === 'colon' && k > 0)
  if ((stockKeywords as readonly string[]).includes(word)) return next.kind === 'number' || next.kind === 'diameter'
  return textLike.includes(word) && next.kind === 'word' && !['edges', 'edge', 'sheet', 'number'].includes(word)
}

/** The statement up to the place. */
function before(statement: Statement, at: number): Statement {
  const lexemes = statement.lexemes.filter((l) => l.to <= at)
  while (lexemes[lexemes.length - 1]?.kind === 'line') lexemes.pop()
  const lines = statement.lines.filter((l) => l.span.to <= at)
  const to = Math.max(
    statement.keyword.span.to,
    lexemes[lexemes.length - 1]?.to ?? 0,
    lines[lines.length - 1]?.span.to ?? 0,
  )
  return { ...statement, lexemes, lines, span: { from: statement.span.from, to } }
}

/** A statement read from a piece of the text, at its place in the whole. */
function moved(statement: Statement, by: number): Statement {
  const span = (s: { readonly from: number; readonly to: number }) => ({ from: s.from + by, to: s.to + by })
  const words = (w: Statement['keyword']) => ({ ...w, span: span(w.span) })
  return {
    ...statement,
    keyword: words(statement.keyword),
    lines: statement.lines.map(words),
    lexemes: statement.lexemes.map((l) => ({ ...l, ...span(l) })),
    span: span(statement.span),
  }
}
