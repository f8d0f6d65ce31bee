import type { Lie, Name, Side, TurnedStep, TurnedStock, Words } from './brief.ts'
import type { Cursor } from './cursor.ts'
import type { Lexeme } from './lexeme.ts'
import { nameOf, readName, readSide } from './read-name.ts'
import { atRate, readRate, takeRateSign } from './read-rate.ts'
import { readSize } from './read-size.ts'
import type { Angle, Size } from './size.ts'
import { nominalSize, threadAt } from './thread.ts'
import { phraseWords } from './vocabulary.ts'

/** `turned axis left-right; lengths from collar left face`, then one step a clause, from left to right. */
export function readTurned(c: Cursor): TurnedStock | undefined {
  const steps: TurnedStep[] = []
  let lie: Lie | undefined
  let datum: Name | undefined
  let broken = false
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    if (c.isLie(0) || (c.atWord('axis') && c.isLie(1))) lie = c.takeLie()
    else if (c.atWord('lengths', 'length') && c.isWord(1, 'from')) {
      c.index += 2
      datum = readName(c, 'the face that lengths count from')
    } else if (atStep(c)) {
      const step = readStep(c, steps.length + 1)
      if (step) steps.push(step)
      else broken = true
    } else c.unexpected(phraseWords.turned, 'axis, lengths from, or a step such as: collar ⌀28, 6 long')
  }
  const at = c.statement.keyword.span
  if (steps.length === 0 && !broken) {
    c.mark('missing-size', at, 'the turned part has no steps', {
      expected: 'a line for each step, such as: collar ⌀28, 6 long',
    })
  }
  const seen = new Set<string>()
  for (const { name } of steps) {
    if (seen.has(name.text))
      c.mark('stated-twice', name.span, `two steps are called “${name.text}”`, { expected: 'a name of its own' })
    seen.add(name.text)
  }
  if (broken || steps.length === 0) return undefined
  return { kind: 'turned', lie: lie ?? 'left-right', ...(datum ? { datum } : {}), steps, span: c.statement.span }
}

/** The thread's designation that stands so many pieces ahead, as typed; empty where there is none. */
function threadAhead(c: Cursor, ahead: number): string {
  const { from, kind } = c.peek(ahead)
  return kind === 'end' ? '' : threadAt(c.setting.text.slice(from, from + 40))
}

/** Words, then a diameter or a thread. */
function atStep(c: Cursor): boolean {
  for (let i = 0; i < 6; i++) {
    if (c.isDia(i) || threadAhead(c, i)) return true
    const { kind } = c.peek(i)
    if (kind === 'number') return i > 0
    if (kind !== 'word' && kind !== 'colon') return false
  }
  return false
}

function readStep(c: Cursor, position: number): TurnedStep | undefined {
  const from = c.peek().from
  const pieces: Lexeme[] = []
  while (c.at('word', 'colon') && !c.isDia() && !threadAhead(c, 0)) {
    if (c.at('word')) pieces.push(c.peek())
    c.index++
  }
  // `step 4`, as the printer names a step without a name
  if (c.at('number') && c.isDia(1) && /^\d{1,2}$/.test(c.peek().text)) {
    pieces.push(c.peek())
    c.index++
  }
  const name = pieces.length > 0 ? nameOf(c, pieces) : c.words(from, from, `step ${position}`)
  const thread = takeThread(c)
  c.takeDia()
  const diameter = thread ? nominal(c, thread) : readSize(c, { what: `the diameter of ${name.text}` })
  const tapered = thread ? {} : readTaper(c, name.text)
  c.takeDia()
  c.take('comma')
  c.take('times')
  const to = c.takeWord('to') !== undefined
  const size = readSize(c, { what: `the length of ${name.text}` })
  if (!to) c.takeWord('long')
  if (size && !to) passSecondLength(c, name.text)
  if (!diameter || !size || !tapered) return undefined
  const length = { kind: to ? 'to' : 'long', size } as const
  return {
    name,
    diameter,
    ...(thread ? { thread } : {}),
    ...tapered,
    length,
    span: { from, to: c.before },
  }
}

/** `.50 long, to .50`: one of the two says all. */
function passSecondLength(c: Cursor, step: string): void {
  const word = c.at('comma') ? 1 : 0
  if (!c.isWord(word, 'to') || !c.isSizeAhead(word + 1)) return
  const { from } = c.peek(word)
  c.index += word + 1
  if (!readSize(c, { what: `the length of ${step}`, signed: true })) return
  c.mark('stated-twice', { from, to: c.before }, `the length of ${step} is stated twice`, {
    expected: 'its own length, or to and the distance of its far end',
  })
}

/** `tapered to ⌀12`, `tapered 1:10`, `small end, tapered 1:10 toward left`; nothing where the step is plain. */
function readTaper(c: Cursor, step: string): Pick<TurnedStep, 'endDiameter' | 'taper'> | undefined {
  const from = c.peek().from
  const end = c.isWord(1, 'end') ? c.takeWord('large', 'small') : undefined
  if (end) {
    c.index++
    c.take('comma')
  }
  const said = c.takeWord('tapered', 'tapering', 'taper') || takeRateSign(c, 'taper')
  if (!said) {
    if (!end) return {}
    return c.mark('missing-size', { from, to: c.before }, `${step} has a ${end.text} end, but no taper`, {
      expected: `⌀12 ${end.text} end, tapered 1:10`,
    })
  }
  let endDiameter: TurnedStep['endDiameter']
  let rate: Angle | undefined
  let toward: Side | undefined
  for (;;) {
    const at = c.peek().from
    c.takeWord('at', 'by')
    if (!rate && atRate(c)) {
      rate = readRate(c, 'taper')
      if (!rate) return undefined
    } else if (!toward && c.atWord('toward', 'towards')) {
      c.index++
      toward = readSide(c, 'the end that the taper narrows toward')
    } else if (!endDiameter && ((c.atWord('to') && c.isDia(1)) || (!rate && (c.atWord('to') || c.isDia())))) {
      c.takeWord('to')
      c.takeDia()
      endDiameter = readSize(c, { what: `the far diameter of ${step}` })
      if (!endDiameter) return undefined
    } else {
      if (at !== c.peek().from) c.index--
      break
    }
  }
  if (rate)
    return {
      ...(endDiameter ? { endDiameter } : {}),
      taper: {
        rate,
        given: end?.text.toLowerCase() === 'small' ? 'small' : 'large',
        ...(toward ? { toward } : {}),
      },
    }
  if (endDiameter && !end && !toward) return { endDiameter }
  return c.mark('missing-size', { from, to: c.before }, `how ${step} tapers is not said`, {
    expected: 'tapered 1:10, or tapered to ⌀12',
  })
}

function takeThread(c: Cursor): Words | undefined {
  const text = threadAhead(c, 0)
  if (!text) return undefined
  const { from } = c.peek()
  while (!c.done && c.peek().from < from + text.length) c.index++
  return c.words(from, from + text.length)
}

function nominal(c: Cursor, thread: Words): Size | undefined {
  const size = nominalSize(thread, c.setting.unit)
  if (!size)
    c.mark('missing-size', thread.span, `${thread.text} does not say how large the step is`, {
      expected: 'a thread with its diameter, such as M20 × 1.5 or 3/4-16 UNF',
    })
  return size
}
