import type { SyntaxNode, Tree } from '@lezer/common'
import type { Words } from './brief.ts'
import { parser } from './grammar.js'
import { splitNumbers } from './number.ts'
import type { Span } from './span.ts'

export type LexemeKind =
  | 'number'
  | 'word'
  | 'R'
  | 'times'
  | 'diameter'
  | 'plus-minus'
  | 'plus'
  | 'minus'
  | 'slash'
  | 'degree'
  | 'inch'
  | 'depth'
  | 'counterbore'
  | 'countersink'
  | 'open'
  | 'shut'
  | 'comma'
  | 'colon'
  | 'semicolon'
  | 'line'
  | 'unknown'
  | 'other'
  /** After the last one. */
  | 'end'

/** One word, number or symbol of a statement. */
export interface Lexeme extends Span {
  readonly kind: LexemeKind
  readonly text: string
  /** A blank stands before it. */
  readonly gap: boolean
}

/** A statement cut into its pieces, not yet understood. */
export interface Statement {
  readonly keyword: Words
  /** Free text, one piece a line. */
  readonly lines: readonly Words[]
  readonly lexemes: readonly Lexeme[]
  /** An indented line with no statement above it. */
  readonly stray: boolean
  /** From the keyword to the last piece. */
  readonly span: Span
}

export interface Cut {
  readonly statements: readonly Statement[]
  readonly comments: readonly Words[]
}

const kinds: Readonly<Record<string, LexemeKind>> = {
  Word: 'word',
  Times: 'times',
  Diameter: 'diameter',
  PlusMinus: 'plus-minus',
  Plus: 'plus',
  Minus: 'minus',
  Slash: 'slash',
  Degree: 'degree',
  Inch: 'inch',
  Depth: 'depth',
  Counterbore: 'counterbore',
  Countersink: 'countersink',
  Open: 'open',
  Shut: 'shut',
  Comma: 'comma',
  Colon: 'colon',
  Semicolon: 'semicolon',
  Continue: 'line',
  Unknown: 'unknown',
}
const signs: Readonly<Record<string, LexemeKind>> = { ',': 'comma', '/': 'slash', '-': 'minus', '.': 'other' }

/** The brief's statements and comments, by the grammar. */
export function cut(text: string, decimalComma: boolean): Cut {
  return cutTree(text, parser.parse(text), decimalComma)
}

function cutTree(text: string, tree: Tree, decimalComma: boolean): Cut {
  const statements: Statement[] = []
  const comments: Words[] = []
  const words = (node: { from: number; to: number }): Words => ({
    text: text.slice(node.from, node.to),
    span: { from: node.from, to: node.to },
  })
  for (let node = tree.topNode.firstChild; node; node = node.nextSibling) {
    if (node.name === 'Comment') comments.push(words(node))
    else if (node.name === 'Statement' || node.name === 'TextStatement' || node.name === 'Stray') {
      statements.push(cutStatement(text, node, decimalComma, comments))
    }
  }
  return { statements, comments }
}

function cutStatement(text: string, node: SyntaxNode, decimalComma: boolean, comments: Words[]): Statement {
  const lines: Words[] = []
  const lexemes: Lexeme[] = []
  let keyword: Words | undefined
  let last = node.from
  const cursor = node.cursor()
  // Every leaf below the statement, in order.
  cursor.iterate((leaf) => {
    const { name, from, to } = leaf
    if (name === 'Comment') {
      comments.push({ text: text.slice(from, to), span: { from, to } })
      return
    }
    if (name === 'Statement' || name === 'TextStatement' || name === 'Stray' || name === 'Clause' || from === to) return
    if (name !== 'Continue') last = to
    if (name === 'Keyword' || name === 'TextKeyword') keyword = { text: text.slice(from, to), span: { from, to } }
    else if (name === 'Text') lines.push({ text: text.slice(from, to), span: { from, to } })
    else pushLexemes(lexemes, text, name, from, to, decimalComma)
  })
  const at = { from: node.from, to: node.from }
  return {
    keyword: keyword ?? { text: '', span: at },
    lines,
    lexemes,
    stray: node.name === 'Stray',
    span: { from: keyword?.span.from ?? lexemes[0]?.from ?? node.from, to: Math.max(last, node.from) },
  }
}

function pushLexemes(out: Lexeme[], text: string, name: string, from: number, to: number, comma: boolean): void {
  const put = (kind: LexemeKind, a: number, b: number) =>
    out.push({ kind, text: text.slice(a, b), from: a, to: b, gap: (out[out.length - 1]?.to ?? -1) !== a })
  const numbers = (a: number, b: number) => {
    for (const piece of splitNumbers(text.slice(a, b), a, comma)) {
      const kind = piece.number ? 'number' : (signs[piece.text] ?? 'other')
      put(kind, piece.from, piece.from + piece.text.length)
    }
  }
  if (name === 'Number') numbers(from, to)
  else if (name === 'Count') {
    numbers(from, to - 1)
    put('times', to - 1, to)
  } else if (name === 'Radius') {
    const digits = from + text.slice(from, to).search(/[.\d¼½¾⅛⅜⅝⅞]/)
    put('R', from, text[from]?.toUpperCase() === 'S' ? from + 2 : from + 1)
    numbers(digits, to)
  } else if (name === 'Other' && text[from] === '"') put('inch', from, to)
  else if (name === 'Word' && /^s?r$/i.test(text.slice(from, to))) put('R', from, to)
  else put(kinds[name] ?? 'other', from, to)
}
