import type { Name, Placement } from './brief.ts'
import { type Cursor, show, spanOf } from './cursor.ts'
import { atAngle, readAngle, readSize } from './read-size.ts'
import type { Count, Size } from './size.ts'
import type { Span } from './span.ts'

/** A bolt circle as far as it is read. */
export interface DraftCircle {
  readonly diameter: Size
  readonly from: number
  readonly to: number
}

/** Where on the circle the first member sits, as written. */
export interface First {
  readonly degrees: number | 'astride'
  readonly text: string
  readonly span: Span
}

/** After `on`, which began at `from`: `⌀4.00 bolt circle`. */
export function readCircle(c: Cursor, from: number): DraftCircle | undefined {
  c.takeDia()
  const diameter = readSize(c, { what: 'the diameter of the bolt circle' })
  c.takeDia()
  if (!c.takeWords('bolt', 'circle') && !c.takeWords('pitch', 'circle') && !c.takeWord('circle', 'bc', 'pcd', 'bcd')) {
    const end = c.before
    const ends = c.done || c.at('comma', 'semicolon', 'line')
    c.mark('missing-name', ends ? { from, to: end } : spanOf(c.peek()), 'on a circle of what kind?', {
      expected: 'bolt circle',
      mends: [{ label: 'say bolt circle', span: { from: end, to: end }, text: ' bolt circle' }],
    })
  }
  return diameter && { diameter, from, to: c.before }
}

/** `one at 12 o'clock`, `first at 45°`. */
export function readFirst(c: Cursor, from: number): First | undefined {
  c.index += 2
  if (c.at('number') && c.isWord(1, "o'clock", 'o’clock', 'oclock')) {
    const hour = Number(c.peek().text)
    const span = { from, to: c.peek(1).to }
    c.index += 2
    if (Number.isInteger(hour) && hour >= 1 && hour <= 12) {
      return { degrees: (((90 - 30 * hour) % 360) + 360) % 360, text: `one at ${hour} o'clock`, span }
    }
    return c.mark('clock-out-of-range', span, `there is no ${show(String(hour))} o'clock`, {
      expected: 'a whole hour from 1 to 12, or first at 45°',
    })
  }
  if (c.at('number') && /^0+(\.0+)?$/.test(c.peek().text)) {
    const zero = c.take('number')!
    if (!c.take('degree')) c.takeWord('deg', 'degrees')
    return { degrees: 0, text: `first at ${zero.text}°`, span: { from, to: c.before } }
  }
  if (!atAngle(c))
    return c.mark('missing-size', spanOf(c.peek()), 'where does the first hole sit?', {
      expected: "one at 12 o'clock, or first at 45°",
    })
  const angle = readAngle(c, 'the place of the first hole')
  return angle && { degrees: angle.value % 360, text: `first at ${angle.text}°`, span: { from, to: c.before } }
}

/** After `astride`, which began at `from`: the vertical centre line lies midway between two members. */
export function readAstride(c: Cursor, from: number): First {
  c.takeWord('the')
  c.takeWord('vertical')
  c.takeWord('centre', 'center')
  c.takeWord('line', 'centreline', 'centerline')
  return { degrees: 'astride', text: 'astride', span: { from, to: c.before } }
}

/** The placement on the circle; marks a number or a first place that is not said. */
export function boltCircle(
  c: Cursor,
  circle: DraftCircle,
  said: { readonly first: First | undefined; readonly about: Name | undefined },
  given: Count | undefined,
  plural: string,
): Placement {
  const span = { from: circle.from, to: said.first ? Math.max(circle.to, said.first.span.to) : circle.to }
  // `hole … on ⌀100 bolt circle` is one; `holes` needs its number.
  if (!given && /[^s]s$|es$/i.test(c.statement.keyword.text))
    c.mark('missing-count', span, `how many ${plural} are on the circle?`, { expected: '6X, before the callout' })
  if (!said.first) {
    const at = { from: circle.to, to: circle.to }
    c.mark('first-hole-not-said', span, 'where on the circle does the first one sit?', {
      expected: "one at 12 o'clock, first at 30°, or astride the vertical centre line",
      mends: [{ label: "say one at 12 o'clock", span: at, text: ", one at 12 o'clock" }],
    })
  }
  const first = said.first && {
    ...said.first,
    degrees: said.first.degrees === 'astride' ? (90 + 180 / (given?.value ?? 1)) % 360 : said.first.degrees,
  }
  return { kind: 'bolt circle', diameter: circle.diameter, first, ...(said.about ? { about: said.about } : {}), span }
}
