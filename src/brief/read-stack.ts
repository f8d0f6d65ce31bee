import { type Cursor, spanOf } from './cursor.ts'
import { readName } from './read-name.ts'
import { readNum } from './read-size.ts'
import type { Num } from './size.ts'
import type { StackStatement } from './stack.ts'
import { phraseWords } from './vocabulary.ts'

const EXAMPLE = 'stack     web: hole A edge to left, min 4'

/** `stack web: hole A edge to left, min 4, max 6`, `stack pins: hole B to hole C, left-right, root-sum-square, min 39.9` */
export function readStack(c: Cursor): StackStatement | undefined {
  const start = c.peek()
  while (!c.done && !c.at('colon', 'line', 'semicolon')) c.index++
  if (!c.at('colon')) {
    c.index = Number.MAX_SAFE_INTEGER
    return c.mark('stack-incomplete', c.statement.keyword.span, 'the stack does not say from what to what', {
      expected: EXAMPLE,
    })
  }
  if (start === c.peek())
    c.mark('missing-name', spanOf(start), 'what lies between the two has no name', { expected: EXAMPLE })
  const name = c.words(start.from, Math.max(start.from, start === c.peek() ? start.from : c.before))
  c.take('colon')
  const from = readName(c, 'the first face or axis', 'to')
  if (from && !c.takeWord('to'))
    c.mark('stack-incomplete', spanOf(c.peek()), 'where the stack ends is missing', { expected: EXAMPLE })
  const to =
    from && readName(c, 'the other face or axis', 'min', 'max', 'worst', 'left-right', 'front-rear', 'up-down', 'with')
  let along: StackStatement['along']
  let method: StackStatement['method'] = 'worst case'
  let bonus = false
  const limits: { min?: Num; max?: Num } = {}
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    const bound = c.takeWord('min', 'max')
    if (bound) {
      const which = bound.text.toLowerCase() === 'min' ? 'min' : 'max'
      const value = readNum(c, true)
      if (value) limits[which] = value
      else c.mark('missing-size', spanOf(bound), `${which} what?`, { expected: `${which} 0.1` })
    } else if (c.isLie(0)) along = c.takeLie()
    else if (c.takeWords('worst', 'case') || c.takeWord('worst')) method = 'worst case'
    else if (c.takeWord('root-sum-square', 'rss')) method = 'root-sum-square'
    else if (c.takeWords('with', 'bonus')) bonus = true
    else c.unexpected(phraseWords.stack, 'min 0.1, max 0.5, left-right, worst case, root-sum-square or with bonus')
  }
  const { min, max } = limits
  if (min && max && min.value > max.value)
    c.mark('limits-reversed', max.span, `max ${max.text} is less than min ${min.text}`, {
      expected: `min ${max.text}, max ${min.text}`,
    })
  const more = { ...(along ? { along } : {}), ...limits, method, ...(bonus ? { bonus: true as const } : {}) }
  return from && to && { name, from, to, ...more, span: c.statement.span }
}

/** The text of the statement, after its keyword. */
export function printStack(s: Omit<StackStatement, 'span'>): string {
  return [
    `${s.name.text}: ${s.from.text} to ${s.to.text}`,
    ...(s.along ? [s.along] : []),
    ...(s.min ? [`min ${s.min.text}`] : []),
    ...(s.max ? [`max ${s.max.text}`] : []),
    ...(s.method === 'worst case' ? [] : [s.method]),
    ...(s.bonus ? ['with bonus'] : []),
  ].join(', ')
}
