import { Cursor, type Setting } from './cursor.ts'
import { cut } from './lexeme.ts'
import type { Mark } from './mark.ts'
import { readSize } from './read-size.ts'
import type { Size, Unit } from './size.ts'
import type { Span } from './span.ts'

/** The text with one stretch replaced; everything else byte for byte. A span beyond the text is cut to it. */
export function replaceSpan(text: string, span: Span, replacement: string): string {
  const from = Math.max(0, Math.min(span.from, text.length))
  const to = Math.max(from, Math.min(span.to, text.length))
  return text.slice(0, from) + replacement + text.slice(to)
}

export interface Change {
  /** The brief after the change; unchanged where the new size was refused. */
  readonly text: string
  /** Why the new size was refused; empty where it was taken. Spans are in the new size's own text. */
  readonly marks: readonly Mark[]
}

/**
 * Changes one size of the brief. `typed` is read as a size: digits alone keep the old unit and tolerance, digits with
 * a unit or a tolerance take the place of both. What is no size is refused with a mark, and the text stays as it was.
 */
export function changeSize(text: string, size: Size, typed: string): Change {
  const marks: Mark[] = []
  const fresh = typed.trim()
  const comma = size.text.includes(',') || /^\s{0,20}decimal\s+comma\b/im.test(text)
  const whole = sizeExtent(text, size)
  const read = readAlone(fresh, size, comma, (m) => marks.push(m))
  const refusals = refusing(marks)
  if (!read) return { text, marks: refusals.length > 0 ? refusals : [noSize(fresh)] }
  if (refusals.length > 0) return { text, marks: refusals }
  const isBare = !read.tolerance && !read.unitTyped && !read.unknown
  const keeps = isBare && size.tolerance?.kind !== 'limits'
  const changed = replaceSpan(text, keeps ? size.span : whole, fresh)
  return { text: size.unknown && keeps ? dropQuestion(changed, size.span.from + fresh.length) : changed, marks: [] }
}

/** The same for several sizes that are one on the sheet: all of them change, or none. */
export function changeSizes(text: string, sizes: readonly Size[], typed: string): Change {
  let changed = text
  // From the end, so that the places before stay where they are.
  for (const size of [...sizes].sort((a, b) => b.span.from - a.span.from)) {
    const change = changeSize(changed, size, typed)
    if (change.marks.length > 0) return { text, marks: change.marks }
    changed = change.text
  }
  return { text: changed, marks: [] }
}

/** What was typed, read as a size above zero and nothing else; digits without a unit are of `unit`. Or why it is none. */
export function readTyped(typed: string, unit: Unit): { readonly size: Size } | { readonly refusal: Mark } {
  const marks: Mark[] = []
  const fresh = typed.trim()
  const size = readAlone(fresh, { unit, value: 1, text: '1' }, false, (m) => marks.push(m))
  const refusal = refusing(marks)[0]
  if (size && !refusal) return { size }
  return { refusal: refusal ?? noSize(fresh) }
}

/** `45?` made `46`: the question is answered. */
function dropQuestion(text: string, at: number): string {
  return text[at] === '?' ? text.slice(0, at) + text.slice(at + 1) : text
}

/** What must change. That no size begins there is said of the whole of what was typed, by `noSize`. */
const refusing = (marks: readonly Mark[]): Mark[] =>
  marks.filter((m) => m.weight === 'must change' && m.rule !== 'missing-size')

const noSize = (typed: string): Mark => ({
  rule: 'not-a-size',
  weight: 'must change',
  text: typed === '' ? 'nothing was written' : `“${typed.slice(0, 30)}” is no size`,
  span: { from: 0, to: typed.length },
  expected: 'a size such as 1.250, 1-3/8, 25 mm, .500 +.002 -.000 or 20 H7',
})

/** The size in `typed`, if it is one and nothing else. */
function readAlone(
  typed: string,
  old: Pick<Size, 'unit' | 'value' | 'text'>,
  comma: boolean,
  mark: (m: Mark) => void,
): Size | undefined {
  if (/[\r\n#]/.test(typed) || typed.length > 60) return undefined
  const prefix = 'show x '
  const source = prefix + typed
  const statement = cut(source, comma).statements[0]
  if (!statement) return undefined
  const setting: Setting = {
    text: source,
    unit: old.unit,
    practice: 'ISO',
    ownNames: new Set(),
    mark: (m) =>
      mark(m.span ? { ...m, span: { from: m.span.from - prefix.length, to: m.span.to - prefix.length } } : m),
  }
  const c = new Cursor(statement, setting)
  c.index = 1
  const size = readSize(c, { what: 'the size', zero: old.value === 0, signed: /^[-−–]/.test(old.text) })
  return size && c.done ? size : undefined
}

/** The stretch of the brief that a size takes up: brackets, digits, unit and tolerance, without ⌀ or R in front. */
export function sizeExtent(text: string, size: Size): Span {
  let { from, to } = size.span
  const t = size.tolerance
  if (t) {
    from = Math.min(from, t.span.from)
    to = Math.max(to, t.span.to)
  }
  if (size.unknown) {
    if (text[from - 1] === '?') from--
    if (text[to] === '?') to++
  }
  if (size.unitTyped) {
    const unit = /^\s*(?:"|”|″|(?:mm|millimet(?:re|er)s?|inch(?:es)?|in)\b\.?)/i.exec(text.slice(to, to + 20))
    if (unit) to += unit[0].length
  }
  // A bracketed diameter holds its sign inside; it stays.
  if (t?.kind === 'reference' && text[from] === '(') {
    const sign = /^\(\s*(?:⌀|Ø|ø|dia\b\.?)\s*/i.exec(text.slice(from, from + 12))
    if (sign) return { from: from + sign[0].length, to: text[to - 1] === ')' ? to - 1 : to }
  }
  return { from, to }
}
