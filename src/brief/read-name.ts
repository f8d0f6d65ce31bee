import type { Name, Side } from './brief.ts'
import type { Cursor } from './cursor.ts'
import { spanOf } from './cursor.ts'
import type { Lexeme } from './lexeme.ts'
import { nearestWord } from './spelling.ts'
import { isOfTheLanguage, nameWords, sides } from './vocabulary.ts'

/** Words that begin another phrase and so end a name. */
const stops = new Set([
  'and',
  'centred',
  'centered',
  'lowest',
  'highest',
  'leftmost',
  'rightmost',
  'frontmost',
  'rearmost',
  'mirrored',
  'across',
  'apart',
  'from',
  'on',
  'at',
  'as',
  'in',
  'long',
  'thru',
  'through',
  'equal',
  'equally',
  'astride',
  'first',
  'one',
  'about',
])

const known = new Set(nameWords)
/** A label: one capital, a digit if need be. */
export const labelPattern = /^[A-Z]\d?$/

/** A name of a face, an edge, an axis or a feature, up to the next phrase (or a word of `until`). Every word of it is checked. */
export function readName(c: Cursor, what: string, ...until: readonly string[]): Name | undefined {
  const pieces: Lexeme[] = []
  while (
    c.at('word') ||
    (c.at('times', 'R') && labelPattern.test(c.peek().text)) ||
    atStepNumber(c, pieces[pieces.length - 1]) ||
    atNumbered(c, pieces) ||
    (until.length > 0 && atFeatureNumber(c, pieces[pieces.length - 1]))
  ) {
    if (stops.has(c.peek().text.toLowerCase()) && !(c.atWord('first') && pieces.length > 0)) break
    if (c.atWord(...until)) break
    pieces.push(c.peek())
    c.index++
  }
  if (pieces.length === 0) {
    return c.mark('missing-name', spanOf(c.peek()), `${what} is missing`, {
      expected: 'a name such as left, top or heel',
    })
  }
  return nameOf(c, pieces)
}

/** The 4 of `step 4`, a step without a name of its own. */
const atStepNumber = (c: Cursor, last: Lexeme | undefined) =>
  last?.text.toLowerCase() === 'step' && c.at('number') && c.setting.ownNames.has(`step ${c.peek().text}`)

/** The 1 of `pocket 1 floor`, as messages number a feature without a label. */
const atFeatureNumber = (c: Cursor, last: Lexeme | undefined) =>
  last !== undefined &&
  /^(hole|slot|pocket|step|notch|groove|keyseat|boss|flat)s?$/i.test(last.text) &&
  c.at('number') &&
  /^\d+$/.test(c.peek().text)

/** The 2 of `side 2` or `corner 2` of an outline, or of `slot 2`, and not a count: `from slot, 2 up`. */
const atNumbered = (c: Cursor, pieces: readonly Lexeme[]) =>
  pieces.length === 1 &&
  /^(side|corner|hole|slot|pocket|step|notch|groove|keyseat|boss|flat)$/i.test(pieces[0]!.text) &&
  c.at('number') &&
  /^\d+$/.test(c.peek().text) &&
  !c.isWord(1, 'across', 'up', 'apart', 'from', 'deep') &&
  !c.isLie(1)

/** Makes one name of the pieces, words in lower case but for labels, and checks the spelling. */
export function nameOf(c: Cursor, pieces: readonly Lexeme[]): Name {
  let text = ''
  for (const piece of pieces) {
    const isLabel = labelPattern.test(piece.text)
    const word = isLabel || piece.kind !== 'word' ? piece.text : spelt(c, piece)
    if (piece.kind === 'comma') text += ','
    else text += text === '' ? word : ` ${word}`
  }
  return c.words(pieces[0]!.from, pieces[pieces.length - 1]!.to, text)
}

/** The word in lower case; a misspelt one is marked and taken for the nearest that is known. */
function spelt(c: Cursor, piece: Lexeme): string {
  const word = piece.text.toLowerCase()
  const own = c.setting.ownNames
  if (known.has(word) || own.has(word)) return word
  if (word === 'back') return 'rear'
  // A word that means something else is no slip of the pen.
  const near = isOfTheLanguage(word) ? undefined : nearestWord(word, [...nameWords, ...own])
  c.mark(
    'unknown-name',
    spanOf(piece),
    `no face, edge or feature is called “${piece.text}”${near ? `; did you mean “${near}”?` : ''}`,
    {
      expected: 'a name such as left, right, front, rear, top, bottom, or one this brief gives',
      ...(near ? { mends: [{ label: `write ${near}`, span: spanOf(piece), text: near }] } : {}),
    },
  )
  return near ?? word
}

/** One of the part's six sides. */
export function readSide(c: Cursor, what: string): Side | undefined {
  const piece = c.peek()
  const side = sides.find((s) => s === piece.text.toLowerCase()) ?? (c.atWord('back') ? 'rear' : undefined)
  if (side) {
    c.index++
    return side
  }
  const near = piece.kind === 'word' ? nearestWord(piece.text, sides) : undefined
  if (piece.kind === 'word') c.index++
  c.mark('unknown-side', spanOf(piece), `${what}: “${piece.text}” is no side of the part`, {
    expected: sides.join(', '),
    ...(near ? { mends: [{ label: `write ${near}`, span: spanOf(piece), text: near }] } : {}),
  })
  return sides.find((s) => s === near)
}
