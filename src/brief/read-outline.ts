import type { OutlineMove, OutlineStock, Side } from './brief.ts'
import type { Cursor } from './cursor.ts'
import { readSide } from './read-name.ts'
import { atRate, readRate } from './read-rate.ts'
import { atAngle, readAngle, readSize } from './read-size.ts'
import type { Angle, Size } from './size.ts'
import { phraseWords } from './vocabulary.ts'

const ways = ['right', 'left', 'up', 'down'] as const
type Way = (typeof ways)[number]
const isLevel = (way: Way): way is 'right' | 'left' => way === 'right' || way === 'left'

/** `outline 8 thick, face front`, then the moves round it. */
export function readOutline(c: Cursor): OutlineStock | undefined {
  const moves: OutlineMove[] = []
  let thickness: Size | undefined
  let face: Side = 'front'
  let broken = false
  const start = c.statement.keyword.span
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    if (c.takeWord('face')) face = readSide(c, 'the face seen true') ?? face
    else if (c.takeWord('thickness') || c.atSize() || c.at('minus')) {
      const size = readSize(c, { what: 'the thickness' })
      c.takeWord('thick')
      if (thickness && size)
        c.mark('stated-twice', size.span, 'the thickness is stated twice', {
          expected: 'right, left, up or down before a move',
        })
      thickness ??= size
      if (!size) broken = true
    } else if (c.atWord(...ways, 'slope', 'to', 'arc', 'close')) {
      const move = readMove(c)
      if (move) moves.push(move)
      else broken = true
    } else
      c.unexpected(
        phraseWords.outline,
        'a move such as: right 120; up 20; slope left 100 up 100; arc R20 to 40 across, 60 up; close',
      )
  }
  if (!thickness && !broken)
    c.mark('missing-size', start, 'the thickness of the outline is missing', { expected: '8 thick' })
  const ends = moves.findIndex((m) => m.kind === 'close')
  if (!broken && ends < 0) {
    const at = c.before
    c.mark('outline-open', { from: start.from, to: start.to }, 'the outline is not closed', {
      expected: 'close, as the last move',
      mends: [{ label: 'close the outline', span: { from: at, to: at }, text: '; close' }],
    })
    return undefined
  }
  if (ends >= 0 && ends < moves.length - 1) {
    c.mark('contradiction', moves[ends + 1]!.span, 'the outline goes on after it was closed', {
      expected: 'close, as the last move',
    })
    return undefined
  }
  if (!thickness || broken) return undefined
  return { kind: 'outline', thickness, face, moves, span: c.statement.span }
}

function readMove(c: Cursor): OutlineMove | undefined {
  const from = c.peek().from
  const span = () => ({ from, to: c.before })
  if (c.takeWord('close')) return { kind: 'close', span: span() }
  if (c.takeWord('to')) {
    const point = readPoint(c)
    return point && { kind: 'to', ...point, span: span() }
  }
  if (c.takeWord('arc')) return readArc(c, from)
  const slope = c.takeWord('slope') !== undefined
  if (slope && atAngle(c)) {
    readAngle(c, 'the angle of the slope')
    return c.mark('missing-size', span(), 'an angle alone does not say how far the slope goes', {
      expected: 'slope left 100 up at 45°, or slope left 100 up 100',
    })
  }
  const first = readWay(c)
  if (!first) return undefined
  const bare =
    slope &&
    c.attempt(() => {
      c.takeWord('at', 'by')
      return atAngle(c) || atRate(c) || undefined
    })
  if (bare) {
    if (atRate(c)) readRate(c, 'slope')
    else readAngle(c, 'the angle of the slope')
    const toward = isLevel(first.way) ? ['up', 'down'] : ['left', 'right']
    const said = c.setting.text.slice(from, first.size.span.to)
    return c.mark('missing-name', span(), 'which way does the slope lean?', {
      expected: toward
        .map((way) => `${said} ${way} ${c.setting.text.slice(first.size.span.to, c.before).trim()}`)
        .join(', or '),
    })
  }
  if (slope && c.at('comma')) c.index++
  c.takeWord('and')
  const lean = slope ? readLean(c) : undefined
  if (lean) {
    if (isLevel(first.way) !== isLevel(lean.toward) && lean.angle.value < 90)
      return { kind: 'lean', ...first, ...lean, span: span() }
    return c.mark('contradiction', span(), 'a slope leans from one way toward one across it, by less than 90°', {
      expected: 'slope left 100 up at 45°',
    })
  }
  if (!slope && !c.atWord(...ways)) return { kind: 'by', way: first.way, size: first.size, span: span() }
  const second = readWay(c)
  if (!second) return undefined
  const [level, plumb] = isLevel(first.way) ? [first, second] : [second, first]
  if (!isLevel(level.way) || isLevel(plumb.way)) {
    return c.mark('contradiction', span(), 'a slope goes so far right or left, and so far up or down', {
      expected: 'slope left 100 up 100',
    })
  }
  return { kind: 'slope', across: level.size, acrossWay: level.way, up: plumb.size, upWay: plumb.way, span: span() }
}

/** `up at 45°`: the way that a slope leans to, and the angle from the way that it goes. */
function readLean(c: Cursor): { toward: Way; angle: Angle } | undefined {
  return c.attempt(() => {
    const word = c.takeWord(...ways)
    c.takeWord('at', 'by')
    if (!word || !(atAngle(c) || atRate(c))) return undefined
    const angle = atRate(c) ? readRate(c, 'slope') : readAngle(c, 'the angle of the slope')
    return angle && { toward: word.text.toLowerCase() as Way, angle }
  })
}

function readWay(c: Cursor): { way: Way; size: Size } | undefined {
  const word = c.takeWord(...ways)
  if (!word) return c.mark('missing-name', c.peek(), 'which way?', { expected: ways.join(', ') })
  const way = word.text.toLowerCase() as Way
  const size = readSize(c, { what: `the move ${way}` })
  return size && { way, size }
}

/** `60 across, 40 up`, counted from the outline's first point. */
function readPoint(c: Cursor): { across: Size; up: Size } | undefined {
  const across = readSize(c, { what: 'how far across', signed: true })
  c.takeWord('across')
  c.take('comma')
  const up = readSize(c, { what: 'how far up', signed: true })
  c.takeWord('up')
  return across && up && { across, up }
}

function readArc(c: Cursor, from: number): OutlineMove | undefined {
  c.take('R')
  const radius = readSize(c, { what: 'the radius of the arc' })
  c.take('comma')
  const end = readArcEnd(c)
  if (!end) return undefined
  c.take('comma')
  let turn: 'left' | 'right' | undefined
  if (c.takeWord('turning')) {
    const word = c.takeWord('left', 'right')
    turn = word ? (word.text.toLowerCase() as 'left' | 'right') : undefined
  }
  const span = { from, to: c.before }
  if (!turn)
    return c.mark('missing-name', span, 'which way does the arc turn?', { expected: 'turning left, or turning right' })
  if (!radius) return undefined
  return 'length' in end
    ? { kind: 'arc by length', radius, ...end, turn, span }
    : { kind: 'arc', radius, ...end, turn, span }
}

/** `to 60 across, 40 up`, or the length along the arc: `31.4 long`, `⌒ 31.4`. */
function readArcEnd(c: Cursor): { across: Size; up: Size } | { length: Size } | undefined {
  if (c.takeWord('to')) return readPoint(c)
  const sign = c.peek().text === '⌒'
  if (sign) c.index++
  if (sign || c.atSize()) {
    const length = readSize(c, { what: 'the length of the arc' })
    c.takeWord('long')
    return length && { length }
  }
  return c.mark('missing-size', c.peek(), 'where does the arc end?', {
    expected: 'to 60 across, 40 up, or its own length: 31.4 long',
  })
}
