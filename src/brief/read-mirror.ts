import type { Mirror } from './brief.ts'
import { type Cursor, spanOf } from './cursor.ts'

/** `mirrored left-right` */
export function readMirror(c: Cursor): Mirror | undefined {
  const { from } = c.peek()
  c.index++
  c.takeWord('about', 'across')
  const across = c.takeLie()
  if (across) return { across, span: { from, to: c.before } }
  return c.mark('missing-name', spanOf(c.peek()), 'mirrored which way?', {
    expected: 'left-right, front-rear or up-down',
  })
}
