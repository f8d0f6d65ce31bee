import type { PlaceRequest, SchemeRequest, ShowRequest, Side, ViewName, ViewRequest } from './brief.ts'
import { type Cursor, spanOf } from './cursor.ts'
import { readName, readSide } from './read-name.ts'
import { readNum, readSize } from './read-size.ts'
import { nearestWord } from './spelling.ts'
import { phraseWords, sides } from './vocabulary.ts'

/** `views front, top; section A-A through bore; pictorial` */
export function readViews(c: Cursor, keyword: 'views' | 'section' | 'pictorial'): ViewRequest[] {
  const out: ViewRequest[] = []
  if (keyword === 'pictorial') {
    const no = c.takeWord('no', 'none') !== undefined
    if (!c.done) c.unexpected(phraseWords.pictorial, 'nothing, or no')
    return [{ kind: no ? 'no pictorial' : 'pictorial', span: c.statement.span }]
  }
  if (keyword === 'section') {
    const request = readSection(c, c.statement.span.from)
    if (request) out.push(request)
  }
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    const from = c.peek().from
    const side = sides.find((s) => c.atWord(s))
    if (side) {
      c.index++
      c.takeWord('view')
      out.push({ kind: 'view', side, span: { from, to: c.before } })
    } else if (c.takeWord('pictorial')) out.push({ kind: 'pictorial', span: { from, to: c.before } })
    else if (c.takeWords('no', 'pictorial')) out.push({ kind: 'no pictorial', span: { from, to: c.before } })
    else if (c.atWord('section', 'half', 'full')) {
      const request = readSection(c, from)
      if (request) out.push(request)
    } else
      c.unexpected(phraseWords.views, 'front, top, right …, section A-A, half section A-A, pictorial, or no pictorial')
  }
  if (out.length === 0 && c.statement.lexemes.length === 0) {
    c.mark('empty-statement', c.statement.keyword.span, 'which views?', { expected: 'views front, top, right' })
  }
  const letters = new Set<string>()
  for (const view of out) {
    if (view.kind !== 'section') continue
    if (letters.has(view.letter))
      c.mark('stated-twice', view.span, `section ${view.letter}-${view.letter} is asked for twice`, {
        expected: 'another letter',
      })
    letters.add(view.letter)
  }
  return out
}

function readSection(c: Cursor, from: number): ViewRequest | undefined {
  let extent: 'full' | 'half' = 'full'
  if (c.takeWord('half')) extent = 'half'
  else c.takeWord('full')
  c.takeWord('section')
  const letter = readLetter(c)
  if (!letter) return undefined
  if (c.takeWord('half')) extent = 'half'
  const through = c.takeWord('through', 'thru') ? readName(c, 'what the section goes through') : undefined
  const as = c.takeWord('as') ? readSide(c, 'the view that the section stands for') : undefined
  if (as) c.takeWord('view')
  return {
    kind: 'section',
    letter,
    extent,
    ...(through ? { through } : {}),
    ...(as ? { as } : {}),
    span: { from, to: c.before },
  }
}

/** The letter of `A-A`, a capital. */
function readLetter(c: Cursor): string | undefined {
  const piece = c.peek()
  const letter = /^([A-Za-z])(?:-([A-Za-z]))?$/.exec(piece.text)
  if (!letter || (letter[2] && letter[1] !== letter[2])) {
    return c.mark('missing-name', spanOf(piece), 'the section has no letter', { expected: 'section A-A' })
  }
  c.index++
  // `A - A` typed with blanks
  if (!letter[2] && c.at('minus') && c.peek(1).text.toLowerCase() === piece.text.toLowerCase()) c.index += 2
  return letter[1]!.toUpperCase()
}

/** `show overall (120)` */
export function readShow(c: Cursor): ShowRequest | undefined {
  const what = readName(c, 'what to show')
  if (!what) {
    c.index = Number.MAX_SAFE_INTEGER
    return undefined
  }
  const size = c.atSize() ? readSize(c, { what: 'the size to show' }) : undefined
  while (!c.done) c.unexpected(phraseWords.show, 'a name, and the size in brackets: show overall (120)')
  return { what, ...(size ? { size } : {}), span: c.statement.span }
}

/** `top view`, `section A-A` or `pictorial`. */
function readViewName(c: Cursor): ViewName | undefined {
  if (c.takeWord('pictorial')) return 'pictorial'
  if (c.takeWord('section')) {
    const letter = readLetter(c)
    return letter === undefined ? undefined : `section ${letter}-${letter}`
  }
  const side = readSide(c, 'the view')
  c.takeWord('view')
  return side
}

/** `place 2.50 in top view, row 2, above`, `place top view 40 across, 20 up`, `place section A-A 0 across, -10 up` */
export function readPlace(c: Cursor): PlaceRequest | undefined {
  const span = c.statement.span
  if (c.atWord(...sides, 'section', 'pictorial')) {
    const view = readViewName(c)
    c.take('comma', 'colon')
    const across = readNum(c, true)
    c.takeWord('across')
    c.take('comma')
    const up = readNum(c, true)
    c.takeWord('up')
    while (!c.done) c.unexpected(phraseWords.place, 'place top view 40 across, 20 up')
    if (view && across && up) return { kind: 'view', view, across, up, span }
    return c.mark('missing-size', c.statement.keyword.span, 'where does the view go?', {
      expected: 'place top view 40 across, 20 up',
    })
  }
  const from = c.peek().from
  while (!c.done && !c.at('comma', 'semicolon', 'line') && !c.atWord('in', 'row', 'above', 'below', 'at')) c.index++
  const size = c.words(from, Math.max(from, c.before))
  if (size.text === '' || c.index === 0) {
    return c.mark('missing-size', c.statement.keyword.span, 'which size is to be placed?', {
      expected: 'place 2.50 in top view, row 2, above',
    })
  }
  let view: ViewName | undefined
  let row: ReturnType<typeof readNum>
  let side: Side | undefined
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    if (c.takeWord('in')) {
      view = readViewName(c) ?? view
    } else if (c.takeWord('row')) {
      row = readNum(c) ?? c.mark('missing-size', c.statement.keyword.span, 'which row?', { expected: 'row 2' })
    } else if (c.takeWord('above')) side = 'top'
    else if (c.takeWord('below')) side = 'bottom'
    else if (c.takeWord('at')) side = readSide(c, 'the side of the view') ?? side
    else c.unexpected(phraseWords.place, 'in top view, row 2, above, below, at left or at right')
  }
  return { kind: 'size', size, ...(view ? { view } : {}), ...(row ? { row } : {}), ...(side ? { side } : {}), span }
}

const schemes = ['baseline', 'chain', 'ordinate'] as const

/** `sizes baseline of holes A`, `sizes hole table` */
export function readScheme(c: Cursor): SchemeRequest | undefined {
  const word = c.peek()
  let scheme: SchemeRequest['scheme'] | undefined = schemes.find((s) => c.takeWord(s))
  if (!scheme && c.takeWords('hole', 'table')) scheme = 'hole table'
  if (!scheme) {
    const near = nearestWord(word.text, schemes)
    c.index = Number.MAX_SAFE_INTEGER
    return c.mark(
      'unknown-word',
      word.kind === 'end' ? c.statement.keyword.span : spanOf(word),
      `“${word.text}” is no way of giving sizes`,
      {
        expected: 'baseline, chain, ordinate, or hole table',
        ...(near ? { mends: [{ label: `write ${near}`, span: spanOf(word), text: near }] } : {}),
      },
    )
  }
  const of = c.takeWord('of', 'for') ? readName(c, 'the feature') : undefined
  while (!c.done) c.unexpected(phraseWords.sizes, 'sizes baseline of holes A')
  return { scheme, ...(of ? { of } : {}), span: c.statement.span }
}
