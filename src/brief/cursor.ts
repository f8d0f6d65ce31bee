import type { Lie, Practice, Words } from './brief.ts'
import type { Lexeme, LexemeKind, Statement } from './lexeme.ts'
import type { Mark, Mend, Weight } from './mark.ts'
import type { Unit } from './size.ts'
import type { Span } from './span.ts'
import { nearestWord, spellingDistance } from './spelling.ts'

/** What the whole brief settles for every statement. */
export interface Setting {
  readonly text: string
  readonly unit: Unit
  readonly practice: Practice
  /** Names that this brief itself gives to turned steps, and the words they are made of. Lower case. */
  readonly ownNames: ReadonlySet<string>
  readonly mark: (mark: Mark) => void
}

const lieSpellings: Readonly<Record<string, Lie>> = {
  'left-right': 'left-right',
  'right-left': 'left-right',
  horizontal: 'left-right',
  'front-rear': 'front-rear',
  'rear-front': 'front-rear',
  'up-down': 'up-down',
  vertical: 'up-down',
}

/** Walks over the pieces of one statement. */
export class Cursor {
  index = 0
  private readonly end: Lexeme
  private readonly lexemes: Lexeme[]
  private readonly mended = new Set<number>()
  readonly setting: Setting
  readonly statement: Statement
  /** The first word that was taken for another, or for a size still to be said (`?`): the statement is read again with that. */
  misspelt: { readonly piece: Lexeme; readonly near: string } | undefined
  private muted = 0
  private failures = 0

  constructor(statement: Statement, setting: Setting, lexemes = statement.lexemes) {
    this.statement = statement
    this.setting = setting
    this.lexemes = [...lexemes]
    const to = lexemes[lexemes.length - 1]?.to ?? statement.keyword.span.to
    this.end = { kind: 'end', text: '', from: to, to, gap: true }
  }

  peek(ahead = 0): Lexeme {
    return this.lexemes[this.index + ahead] ?? this.end
  }

  get done(): boolean {
    return this.index >= this.lexemes.length
  }

  /**
   * Once for each phrase until the pieces are used up. A reader that took nothing of its phrase would read for ever:
   * the piece is marked and stepped over.
   */
  *phrases(): Generator<void> {
    let last: Lexeme | undefined
    while (!this.done) {
      const next = this.peek()
      if (next === last) this.unexpected([], 'another word here')
      else {
        last = next
        yield
      }
    }
  }

  /** End of the piece before this one. */
  get before(): number {
    return this.lexemes[this.index - 1]?.to ?? this.statement.keyword.span.to
  }

  at(...kinds: readonly LexemeKind[]): boolean {
    return kinds.includes(this.peek().kind)
  }

  take(...kinds: readonly LexemeKind[]): Lexeme | undefined {
    const piece = this.peek()
    if (!kinds.includes(piece.kind)) return undefined
    this.index++
    return piece
  }

  /** True where the next piece is one of the words (any case). */
  atWord(...words: readonly string[]): boolean {
    return this.isWord(0, ...words)
  }

  isWord(ahead: number, ...words: readonly string[]): boolean {
    const piece = this.peek(ahead)
    return piece.kind === 'word' && words.includes(piece.text.toLowerCase())
  }

  takeWord(...words: readonly string[]): Lexeme | undefined {
    return this.atWord(...words) ? this.lexemes[this.index++] : undefined
  }

  /** Takes all the words, one after another, or none. */
  takeWords(...words: readonly string[]): boolean {
    if (!words.every((word, i) => this.isWord(i, word))) return false
    this.index += words.length
    return true
  }

  /** Separators between phrases. Returns whether a clause ended: a semicolon or a new line. */
  skipSeparators(): boolean {
    let ended = false
    for (;;) {
      const piece = this.take('comma', 'colon', 'semicolon', 'line')
      if (!piece) return ended
      if (piece.kind === 'semicolon' || piece.kind === 'line') ended = true
    }
  }

  /** Where a size may begin. */
  atSize(): boolean {
    return this.at('number', 'unknown') || (this.at('open') && (this.peek(1).kind === 'number' || this.isDia(1)))
  }

  isSizeAhead(ahead: number): boolean {
    const { kind } = this.peek(ahead)
    return kind === 'number' || kind === 'unknown' || kind === 'minus' || kind === 'open' || this.isDia(ahead)
  }

  /** A direction such as `left-right`, at so many pieces ahead. */
  isLie(ahead: number): boolean {
    return this.isWord(ahead, ...Object.keys(lieSpellings))
  }

  /** Takes `left-right`, with `axis` or `runs` before it where written. */
  takeLie(): Lie | undefined {
    this.takeWord('axis', 'lies', 'lie', 'runs')
    const word = this.takeWord(...Object.keys(lieSpellings))
    return word && lieSpellings[word.text.toLowerCase()]
  }

  /** `⌀`, `dia`, and `(⌀`, where the bracket is the size's own. */
  isDia(ahead = 0): boolean {
    if (this.peek(ahead).kind === 'open') return this.isDia(ahead + 1)
    return this.peek(ahead).kind === 'diameter' || this.isWord(ahead, 'dia', 'diameter')
  }

  takeDia(): boolean {
    if (!this.isDia()) return false
    if (this.at('open')) return true
    this.index++
    // `dia.` with the full stop of an abbreviation
    if (this.peek().text === '.') this.index++
    return true
  }

  /** `4X`: a whole number with its X standing apart from what follows. */
  atCount(): boolean {
    const x = this.peek(1)
    const next = this.peek(2)
    return (
      this.at('number') &&
      /^\d+$/.test(this.peek().text) &&
      x.kind === 'times' &&
      !x.gap &&
      (next.gap || next.kind !== 'number')
    )
  }

  /** Runs `read`; where it comes to nothing, goes back and forgets its marks. */
  attempt<T>(read: () => T | undefined): T | undefined {
    const start = this.index
    this.muted++
    const trial = read()
    this.muted--
    const stop = this.index
    this.index = start
    if (trial === undefined) return undefined
    if (this.muted > 0) {
      this.index = stop
      return trial
    }
    return read()
  }

  mark(
    rule: string,
    span: Span,
    text: string,
    more: { readonly expected?: string; readonly mends?: readonly Mend[]; readonly weight?: Weight } = {},
  ): undefined {
    if (this.muted > 0) return undefined
    const { weight = 'must change', ...rest } = more
    this.setting.mark({ rule, weight, text, span, ...rest })
    return undefined
  }

  /**
   * Marks a piece that has no place here, with the nearest right word. Where there is one, reading goes on as if it
   * had been written; otherwise the piece is stepped over.
   */
  unexpected(vocabulary: readonly string[], expected: string): void {
    const at = this.index
    const piece = this.peek()
    this.index++
    // One message a clause is help, ten are noise.
    if (this.failures++ > 3) return
    const previous = this.lexemes[this.index - 2]
    const earlier = this.lexemes[this.index - 3]
    if (piece.kind === 'number' && previous?.kind === 'comma' && !piece.gap && earlier?.kind === 'number') {
      const write = `${earlier.text}.${piece.text}`
      const span = { from: earlier.from, to: piece.to }
      this.mark('decimal-comma', span, `“${earlier.text},${piece.text}” reads as two numbers here`, {
        expected: `${write}, or the statement \`decimal comma\` in the header`,
        mends: [{ label: `write ${write}`, span, text: write }],
      })
      return
    }
    const nearest = piece.kind === 'word' ? nearestWord(piece.text, vocabulary) : undefined
    const near = nearest?.toLowerCase() === piece.text.toLowerCase() ? undefined : nearest
    if (piece.kind === 'word' && isInPlaceOfSize(previous, piece, this.peek(), near)) {
      this.mark('not-a-size', piece, `“${show(piece.text)}” is no size`, { expected: sizeExample(this.setting.unit) })
      if (this.muted === 0) this.misspelt ??= { piece, near: '?' }
      return
    }
    const what = piece.kind === 'word' || piece.kind === 'other' ? 'unknown-word' : 'out-of-place'
    const text =
      what === 'unknown-word' ? `“${show(piece.text)}” is not understood here` : `“${piece.text}” has no place here`
    this.mark(what, piece, near ? `${text}; did you mean “${near}”?` : text, {
      expected,
      ...(near ? { mends: [{ label: `write ${near}`, span: spanOf(piece), text: near }] } : {}),
    })
    if (!near || this.mended.has(at)) return
    if (this.muted === 0) this.misspelt ??= { piece, near }
    this.mended.add(at)
    this.lexemes[at] = { ...piece, text: near, kind: near === 'R' ? 'R' : 'word' }
    this.index = at
  }

  words(from: number, to: number, text?: string): Words {
    return { text: text ?? this.setting.text.slice(from, to), span: { from, to } }
  }
}

/** What follows a size. */
const MEASURES = /^(?:from|apart|wide|high|long|thick|deep|overall|outside|inside|above|below)$/i

/** A word between signs and words of a size, unless it is a slip of one letter for another word. */
function isInPlaceOfSize(before: Lexeme | undefined, piece: Lexeme, after: Lexeme, near: string | undefined): boolean {
  if (near && spellingDistance(piece.text.toLowerCase(), near) < 2) return false
  return (
    before?.kind === 'times' ||
    before?.kind === 'diameter' ||
    after.kind === 'times' ||
    (after.kind === 'word' && MEASURES.test(after.text))
  )
}

export const sizeExample = (unit: Unit): string =>
  unit === 'inch' ? 'a size such as 1.250 or 3/8' : 'a size such as 25 or 12.5'

/** An example in the brief's own unit: one of the other's figures would be written down as it stands. */
export const exampleIn = (unit: Unit, inch: string, mm: string): string => (unit === 'inch' ? inch : mm)

export const spanOf = (piece: Span): Span => ({ from: piece.from, to: piece.to })

/** Text fit to be quoted in a message: no control characters, no torn surrogates, not too long. */
export function show(text: string): string {
  const clean = text.replace(/[\p{Cc}\p{Cs}]/gu, '\u00b7')
  return clean.length > 30 ? `${clean.slice(0, 29)}…` : clean
}
