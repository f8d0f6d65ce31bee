import type { Placement } from './brief.ts'
import type { Cursor } from './cursor.ts'
import { readName } from './read-name.ts'
import { readSize } from './read-size.ts'
import type { Size } from './size.ts'
import type { Span } from './span.ts'

/** After `at`, which began at `from`: `10, 20; 40, 20 from left and bottom`. Undefined where it is not complete. */
export function readPoints(c: Cursor, from: number): Placement | undefined {
  const points: { a: Size; b: Size; span: Span }[] = []
  let broken = false
  do {
    const start = c.peek().from
    const a = readSize(c, { what: 'the first distance of the point', signed: true })
    c.take('comma')
    const b = a && readSize(c, { what: 'the second distance of the point', signed: true })
    if (!a || !b) {
      broken = true
      break
    }
    points.push({ a, b, span: { from: start, to: c.before } })
  } while (morePoints(c))
  if (points.length === 0 || broken) return undefined
  c.skipSeparators()
  if (!c.takeWord('from')) {
    const low = /\b(front|rear|back)\b/i.test(c.setting.text.slice(c.statement.span.from, from)) ? 'bottom' : 'front'
    return c.mark('missing-name', { from, to: c.before }, 'from where are the points measured?', {
      expected: `from left and ${low}`,
      mends: [
        { label: `count from left and ${low}`, span: { from: c.before, to: c.before }, text: ` from left and ${low}` },
      ],
    })
  }
  const fromA = readName(c, 'the first face of the points')
  c.take('comma')
  c.takeWord('and')
  const fromB = fromA && readName(c, 'the second face of the points')
  return fromA && fromB && { kind: 'points', points, fromA, fromB, span: { from, to: c.before } }
}

function morePoints(c: Cursor): boolean {
  const start = c.index
  c.skipSeparators()
  if (c.isSizeAhead(0)) return true
  c.index = start
  return false
}
