import { type Cursor, spanOf } from './cursor.ts'
import { readFrame } from './frame/read-frame.ts'
import type { DatumFeature, FrameStatement } from './geometric.ts'
import type { Lexeme } from './lexeme.ts'
import { needName, readHead } from './read-head.ts'
import { readName } from './read-name.ts'
import type { Span } from './span.ts'

const LETTERS = /^([A-Z])\1?$/

/** `datum A  rear face`, `datum A: bore` */
export function readDatumFeature(c: Cursor): DatumFeature | undefined {
  const piece = c.peek()
  const text = piece.text.toUpperCase()
  if (piece.kind === 'end' || !LETTERS.test(text) || c.peek(1).kind === 'end') {
    c.index = Number.MAX_SAFE_INTEGER
    const what =
      piece.kind === 'end' || LETTERS.test(text) ? 'the datum’s letter and its feature are not both said' : ''
    return c.mark(
      'datum-without-letter',
      piece.kind === 'end' ? c.statement.keyword.span : spanOf(piece),
      what || `“${piece.text}” is no datum letter`,
      {
        expected: 'a capital letter, then the feature: datum A  bottom',
      },
    )
  }
  c.index++
  c.take('colon', 'comma')
  const letter = c.words(piece.from, piece.to, text)
  // The word to stop at lets a number be part of the name: `datum B  hole 2`.
  const of = readName(c, 'the feature that the datum is taken from', 'and')
  while (!c.done) c.unexpected([], 'nothing after the feature: datum A  bottom')
  return of && { letter, of, span: c.statement.span }
}

/** `frame holes A: ⌖ ⌀0.2 Ⓜ A B C`, `frame top: profile .03 A B, all around` */
export function readFrameStatement(c: Cursor): FrameStatement | undefined {
  const example = 'the feature, a colon, and the frame: frame top: flatness 0.05'
  if (!hasColon(c)) {
    c.index = Number.MAX_SAFE_INTEGER
    return c.mark('frame-without-feature', c.statement.keyword.span, 'the frame does not say what it holds', {
      expected: example,
    })
  }
  const head = readHead(c, 'and')
  const label = head.label && { ...head.label }
  const of = needName(c, head.names[0] ?? label, 'the feature that the frame holds', example)
  const [, more] = head.names
  if (more) c.mark('out-of-place', more.span, 'one frame holds one feature', { expected: 'a frame statement for each' })
  const pieces: Lexeme[] = []
  for (; !c.done; c.index++) pieces.push(c.peek())
  const { rest, allAround } = withoutAllAround(pieces)
  const from = rest[0]?.from ?? c.before
  const read = readFrame(asTyped(c, rest), from)
  if (!read.ok) {
    const { text, expected, instead, span } = read.problem
    return c.mark('frame-not-understood', inside(span ?? c.statement.span, c.statement.span), lower(text), {
      ...(expected ? { expected } : {}),
      ...(instead && span ? { mends: [{ label: `write ${instead}`, span, text: instead }] } : {}),
    })
  }
  return of && { of, frame: read.value, ...(allAround ? { allAround } : {}), span: c.statement.span }
}

function hasColon(c: Cursor): boolean {
  for (let ahead = 0; ; ahead++) {
    const { kind } = c.peek(ahead)
    if (kind === 'colon') return true
    if (kind === 'end' || kind === 'line' || kind === 'semicolon') return false
  }
}

/** The pieces without `all around` at their end, and whether it was there. */
function withoutAllAround(pieces: readonly Lexeme[]): { rest: readonly Lexeme[]; allAround?: true } {
  const [last, before] = [pieces.at(-1), pieces.at(-2)]
  const word = (p: Lexeme | undefined, text: string) => p?.kind === 'word' && p.text.toLowerCase() === text
  const count = word(last, 'all-around') ? 1 : word(before, 'all') && word(last, 'around') ? 2 : 0
  if (count === 0) return { rest: pieces }
  const rest = pieces.slice(0, -count)
  return { rest: rest.at(-1)?.kind === 'comma' ? rest.slice(0, -1) : rest, allAround: true }
}

/** The pieces at their places in the text, comments between them blanked, each new line as a line end. */
function asTyped(c: Cursor, pieces: readonly Lexeme[]): string {
  let text = ''
  const from = pieces[0]?.from ?? 0
  for (const [i, piece] of pieces.entries()) {
    text = text.padEnd(piece.from - from)
    // `A, B, C`: commas between compartments mean what blanks mean; a decimal comma has a digit straight after it.
    if (piece.kind === 'comma' && pieces[i + 1]?.gap !== false) continue
    text += piece.kind === 'line' ? '\n'.padEnd(piece.to - piece.from) : c.setting.text.slice(piece.from, piece.to)
  }
  return text
}

/** A place of at least one character within the statement. */
function inside({ from, to }: Span, whole: Span): Span {
  return to > from
    ? { from, to }
    : { from: Math.max(whole.from, Math.min(from, whole.to) - 1), to: Math.min(Math.max(from, to), whole.to) }
}

const lower = (text: string) => text.replace(/\.$/, '').replace(/^[A-Z](?=[a-z ])/, (l) => l.toLowerCase())
