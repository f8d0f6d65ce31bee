import type { Name, Side } from './brief.ts'
import { type Cursor, spanOf } from './cursor.ts'
import type { Lexeme } from './lexeme.ts'
import { labelPattern, nameOf, readSide } from './read-name.ts'
import { sides } from './vocabulary.ts'

/** What stands before the callout: `holes A  upright, from front:`. */
export interface Head {
  readonly label?: Name
  readonly names: readonly Name[]
  readonly from?: Side
}

/** Words that begin a callout or a placement where the colon was left out. */
const begins = new Set([
  'thru',
  'through',
  'tapped',
  'square',
  'vee',
  'centred',
  'centered',
  'dia',
  'diameter',
  'deep',
  'drill',
  'on',
  'at',
  'mirrored',
  'flat-bottomed',
])

/**
 * Reads up to the colon, or to the first number or symbol. With `join: 'and'` names are parted by “and” and keep their
 * commas (`upright, top corners`); otherwise commas part them, with `comma or and` both.
 */
export function readHead(c: Cursor, join: 'comma' | 'and' | 'comma or and'): Head {
  const stop = headEnd(c)
  let label: Name | undefined
  const first = c.peek()
  if (
    c.index < stop &&
    labelPattern.test(first.text) &&
    (first.kind === 'word' || first.kind === 'R' || first.kind === 'times')
  ) {
    label = c.words(first.from, first.to)
    c.index++
  }
  const names: Name[] = []
  let pieces: Lexeme[] = []
  let from: Side | undefined
  const flush = () => {
    while (pieces.length > 0 && pieces[pieces.length - 1]!.kind === 'comma') pieces.pop()
    if (pieces.length > 0) names.push(nameOf(c, pieces))
    pieces = []
  }
  while (c.index < stop) {
    if (c.at('comma')) {
      if (join !== 'and') flush()
      else if (pieces.length > 0) pieces.push(c.peek())
      c.index++
    } else if (join !== 'comma' && c.atWord('and')) {
      flush()
      c.index++
    } else if (c.atWord('from')) {
      flush()
      c.index++
      from = readSide(c, 'the side worked from') ?? from
    } else {
      if (c.at('word', 'R') || (c.at('number') && pieces.length > 0)) pieces.push(c.peek())
      else
        c.mark('out-of-place', spanOf(c.peek()), `“${c.peek().text}” has no place in a name`, {
          expected: 'the face, then a colon',
        })
      c.index++
    }
  }
  flush()
  c.take('colon')
  return { ...(label ? { label } : {}), names, ...(from ? { from } : {}) }
}

/** `hole head, top:` says the side worked from as `hole head, from top:` does. */
export function readWorkedHead(c: Cursor): Head {
  const head = readHead(c, 'comma')
  const side = head.from ? undefined : sides.find((s) => s === head.names[1]?.text)
  return side ? { ...head, from: side } : head
}

function headEnd(c: Cursor): number {
  let k = c.index
  for (let ahead = 0; ; ahead++) {
    const piece = c.peek(ahead)
    if (piece.kind === 'colon') return c.index + ahead
    if (piece.kind === 'semicolon' || piece.kind === 'line' || piece.kind === 'end') break
  }
  for (;;) {
    const piece = c.peek(k - c.index)
    if (piece.kind !== 'word' && piece.kind !== 'comma') return k
    if (begins.has(piece.text.toLowerCase())) return k
    k++
  }
}

/** The one name of a head, or a mark that asks for it. */
export function needName(c: Cursor, name: Name | undefined, what: string, expected: string): Name | undefined {
  if (name) return name
  return c.mark('missing-name', c.statement.keyword.span, `${what} is not said`, { expected })
}
