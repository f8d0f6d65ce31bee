import type { Depth, HoleFeature, Name, OneWall, Words } from './brief.ts'
import { type Cursor, spanOf } from './cursor.ts'
import { drillText, pipeDrill } from './pipe-drill.ts'
import { type Head, needName, readWorkedHead } from './read-head.ts'
import { readName } from './read-name.ts'
import { PlacementReader } from './read-placement.ts'
import { atAngle, readAngle, readCount, readSize, sensibleCount } from './read-size.ts'
import type { Angle, Count, Size } from './size.ts'
import { nominalSize, threadAt } from './thread.ts'
import { phraseWords } from './vocabulary.ts'

interface Callout {
  count?: Count | undefined
  diameter?: Size | undefined
  thread?: Words
  depth?: Depth
  drill?: Size | undefined
  drillDepth?: Depth
  point?: Angle | undefined
  counterbore?: HoleFeature['counterbore']
  countersink?: HoleFeature['countersink']
  spotface?: HoleFeature['spotface']
  broken?: boolean
}

/** `holes upright, from front: 4X ⌀.281 THRU, ⌴ ⌀.50 ↧ .25`, then the places. `bore` is one hole on the axis. */
export function readHole(c: Cursor, keyword: 'hole' | 'bore', boreFace: Name): HoleFeature | undefined {
  const head = readWorkedHead(c)
  const face =
    head.names[0] ??
    (keyword === 'bore'
      ? boreFace
      : needName(c, undefined, 'the face of the hole', 'the face and a colon: hole top: ⌀9 THRU'))
  const place = new PlacementReader(c, face?.text ?? '')
  const callout = readCallout(c, keyword, place)
  const { count, placement } =
    keyword === 'bore' && place.empty
      ? {
          count: callout.count ?? { value: 1, span: c.statement.keyword.span },
          placement: { kind: 'axis' as const, span: c.statement.keyword.span },
        }
      : place.finish(callout.count, 'holes')
  return holeOf(c, head, face, callout, { count, placement, ...(place.mirror ? { mirror: place.mirror } : {}) })
}

type Where = Pick<HoleFeature, 'count' | 'placement' | 'mirror'>

function holeOf(
  c: Cursor,
  head: Head,
  face: Name | undefined,
  callout: Callout,
  where: Where,
): HoleFeature | undefined {
  const at = c.statement.keyword.span
  const { thread, drillDepth } = callout
  const nominal = thread && nominalSize(thread, c.setting.unit)
  const diameter = callout.drill ?? callout.diameter ?? nominal
  if (!diameter && !callout.broken) {
    if (thread) drillMissing(c, thread, callout.depth)
    else c.mark('missing-size', at, 'the diameter of the hole is missing', { expected: '⌀ and a size' })
  }
  let depth = drillDepth ?? callout.depth
  if (!depth && diameter && !callout.broken) {
    // ISO 129-1: a hole is through unless a depth is given.
    if (c.setting.practice === 'ISO') depth = { kind: 'through', span: diameter.span }
    else {
      const end = diameter.tolerance ? diameter.tolerance.span.to : (thread?.span.to ?? diameter.span.to)
      c.mark('missing-size', thread?.span ?? diameter.span, 'through, or how deep?', {
        expected: 'THRU, or ↧ and a depth',
        mends: [{ label: 'write THRU', span: { from: end, to: end }, text: ' THRU' }],
      })
    }
  }
  if (!face || !diameter || !depth || callout.broken) return undefined
  const threadDepth = drillDepth && callout.depth?.kind === 'blind' ? callout.depth.size : undefined
  const { point, counterbore, countersink, spotface } = callout
  return {
    kind: 'hole',
    ...(head.label ? { label: head.label } : {}),
    face,
    ...(head.from ? { from: head.from } : {}),
    ...where,
    diameter,
    ...(thread ? { thread } : {}),
    depth,
    ...(threadDepth ? { threadDepth } : {}),
    ...(point ? { point } : {}),
    ...(counterbore ? { counterbore } : {}),
    ...(countersink ? { countersink } : {}),
    ...(spotface ? { spotface } : {}),
    span: c.statement.span,
  }
}

/** A pipe thread has no size in its name: its drill is asked for, with the figure where the tables have it. */
function drillMissing(c: Cursor, thread: Words, depth: Depth | undefined): void {
  const drill = pipeDrill(thread.text)
  const write = drill ? `drill ${drillText(drill, c.setting.unit)}` : 'drill ⌀…'
  const end = Math.max(thread.span.to, depth?.kind === 'blind' ? depth.size.span.to : (depth?.span.to ?? 0))
  c.mark('missing-size', thread.span, 'this thread needs its drill', {
    expected: drill ? `${write} (${drill.source})` : write,
    ...(drill ? { mends: [{ label: `say ${write}`, span: { from: end, to: end }, text: `, ${write}` }] } : {}),
  })
}

function readCallout(c: Cursor, keyword: 'hole' | 'bore', place: PlacementReader): Callout {
  const out: Callout = {}
  for (const _ of c.phrases()) {
    if (c.skipSeparators()) place.endClause()
    if (c.done) break
    if (!takeCallout(c, out) && !place.take()) {
      c.unexpected(
        phraseWords[keyword],
        'a callout such as 4X ⌀.281 THRU, or a place such as 2 across 1.250 apart, centred',
      )
    }
  }
  return out
}

/** Takes one phrase of the callout; false where what follows is none. */
function takeCallout(c: Cursor, out: Callout): boolean {
  if (c.atCount() && !out.count) {
    out.count = readCount(c)
    if (!out.count) out.broken = true
    return true
  }
  if (takeHyphenCount(c, out) || takeRadius(c, out)) return true
  const tap = c.takeWord('tapped', 'tap')
  // `1/4-20 TAP`: the thread is said already
  if (tap && out.thread) return true
  const thread = threadAt(c.setting.text.slice(c.peek().from, c.peek().from + 40))
  if (thread && !out.thread && !c.done) {
    const { from } = c.peek()
    const to = from + thread.length
    while (!c.done && c.peek().from < to) c.index++
    out.thread = c.words(from, to)
    return true
  }
  // `⌀.25 DRILL THRU`: how a hole is made is the shop's, and its size is said
  if (out.diameter && c.atWord('drill') && !c.isSizeAhead(1)) return c.takeWord('drill') !== undefined
  if (c.takeWord('drill')) {
    c.takeDia()
    out.drill = readSize(c, { what: 'the drill' })
    if (!out.drill) out.broken = true
    const depth = readHoleDepth(c)
    if (depth) out.drillDepth = depth
    return true
  }
  if (c.atWord('flat') && c.isWord(1, 'bottom', 'bottomed')) {
    const { from } = c.peek()
    c.index += 2
    out.point = { text: '180', value: 180, form: 'whole', decimals: 0, span: { from, to: c.before } }
    return true
  }
  if (c.takeWord('point')) {
    out.point = readAngle(c, 'the drill point')
    return true
  }
  // `bore dia 6`: what it is called says nothing more
  if (c.atWord('bore', 'hole') && (c.isDia(1) || c.peek(1).kind === 'number')) {
    c.index++
    return true
  }
  // `⌀6 × 5 deep`
  const crossed =
    out.diameter && c.at('times') ? c.attempt(() => (c.take('times') ? readDepth(c) : undefined)) : undefined
  if (crossed && !out.depth) {
    out.depth = crossed
    return true
  }
  if (takeWidened(c, out)) return true
  const depth = readHoleDepth(c)
  if (depth) {
    if (!out.depth) out.depth = depth
    else
      c.mark('contradiction', depth.kind === 'blind' ? depth.size.span : depth.span, 'the depth is stated twice', {
        expected: 'THRU or one depth',
      })
    return true
  }
  if (c.atWord(...deepWords) && !out.depth) {
    c.mark('missing-size', spanOf(c.peek()), 'how deep?', { expected: 'the depth before it, as in ⌀12 ↧ 20, or THRU' })
    c.index++
    out.broken = true
    return true
  }
  return takeDiameter(c, out)
}

/** `4-⌀.25`, as counts were written before the X: read as 4X, and the X asked for. */
function takeHyphenCount(c: Cursor, out: Callout): boolean {
  const hyphen = c.peek(1).kind === 'minus'
  // `4 ⌀6`, with the X left out, but not `6 dia`
  const bare = c.peek(1).kind === 'diameter' && c.peek(1).gap && c.peek(2).kind === 'number'
  if (out.count || !c.at('number') || !(hyphen ? c.isDia(2) : bare)) return false
  const number = c.take('number')!
  const { to } = c.take('minus') ?? number
  const span = { from: number.from, to }
  const count = /^\d+$/.test(number.text) ? sensibleCount(c, Number(number.text), span) : undefined
  if (!count) out.broken = true
  else {
    out.count = count
    const text = `${number.text}X${hyphen ? ' ' : ''}`
    c.mark('out-of-place', span, `“${number.text}${hyphen ? '-' : ''}” is no count`, {
      expected: `${number.text}X`,
      mends: [{ label: `write ${number.text}X`, span, text }],
    })
  }
  return true
}

/** `R.50 THRU`: a hole is given by its diameter (ASME Y14.5-2018, ISO 129-1; from memory). */
function takeRadius(c: Cursor, out: Callout): boolean {
  if (out.diameter || out.thread || !c.at('R') || !c.isSizeAhead(1)) return false
  const { from } = c.take('R')!
  const radius = readSize(c, { what: 'the radius of the hole' })
  out.broken = true
  if (!radius) return true
  const digits = (2 * radius.value).toFixed(radius.decimals)
  const diameter = `⌀${radius.text.startsWith('.') ? digits.replace(/^0/, '') : digits}`
  const span = { from, to: radius.span.to }
  const isPlain = radius.form !== 'fraction' && !radius.tolerance && !radius.unknown
  c.mark('out-of-place', span, 'a hole is given by its diameter, not by a radius', {
    expected: isPlain ? diameter : '⌀ and twice the radius',
    ...(isPlain ? { mends: [{ label: `write ${diameter}`, span, text: diameter }] } : {}),
  })
  return true
}

function takeDiameter(c: Cursor, out: Callout): boolean {
  if (!c.isDia() && (out.diameter || out.thread || out.broken || !(c.atSize() || c.at('minus')))) return false
  if (out.diameter || out.thread) {
    if (!c.isDia()) return false
    c.takeDia()
    const again = readSize(c, { what: 'the diameter' })
    if (again)
      c.mark('stated-twice', again.span, 'the diameter is stated twice', {
        expected: 'one diameter, or ⌴ or ⌵ before the second',
      })
    return true
  }
  // A bare number that turns out to locate something is no diameter.
  if (!c.isDia() && (c.isWord(1, 'across', 'up', 'apart', 'from') || c.isLie(1))) return false
  c.takeDia()
  out.diameter = readSize(c, { what: 'the diameter of the hole' })
  if (!out.diameter) out.broken = true
  c.takeDia()
  return true
}

function takeWidened(c: Cursor, out: Callout): boolean {
  if (c.take('counterbore') || c.takeWord('cbore', "c'bore", 'c’bore', 'counterbore', 'counterbored')) {
    c.takeDia()
    const diameter = readSize(c, { what: 'the diameter of the counterbore' })
    if (c.atWord('dia', 'diameter')) c.takeDia()
    c.take('comma')
    c.take('times')
    const depth = readBlindDepth(c, 'the depth of the counterbore')
    if (diameter && depth) out.counterbore = { diameter, depth }
    else out.broken = true
    return true
  }
  if (c.take('countersink') || c.takeWord('csk', "c'sink", 'c’sink', 'countersink', 'countersunk')) {
    // `csk 90° × ⌀12` says it the other way round
    const early = atAngle(c) ? readAngle(c, 'the angle of the countersink') : undefined
    if (early && !c.take('times') && !c.takeWord('by')) c.take('comma')
    if (lacksDiameter(c, early)) {
      out.broken = true
      return true
    }
    c.takeDia()
    const diameter = readSize(c, { what: 'the diameter of the countersink' })
    if (c.atWord('dia', 'diameter')) c.takeDia()
    if (!early) {
      c.take('comma')
      if (!c.take('times')) c.takeWord('by')
    }
    const angle = early ?? readAngle(c, 'the angle of the countersink')
    if (diameter && angle) out.countersink = { diameter, angle }
    else out.broken = true
    return true
  }
  if (c.takeWord('spotface', 'spotfaced', 'sface', 'sf')) {
    c.takeDia()
    const diameter = readSize(c, { what: 'the diameter of the spotface' })
    const depth = readDepth(c)
    if (!diameter) out.broken = true
    else out.spotface = { diameter, ...(depth?.kind === 'blind' ? { depth: depth.size } : {}) }
    return true
  }
  return false
}

/** `csk 90`: the angle alone. */
function lacksDiameter(c: Cursor, early: Angle | undefined): boolean {
  const usual = !early && c.at('number') && /^(60|82|90|100|110|120)$/.test(c.peek().text)
  const goesOn = ['times', 'number', 'degree'].includes(c.peek(1).kind) || c.isDia(1) || c.isWord(1, 'by', 'deg', 'mm')
  const comma = c.peek(1).kind === 'comma' && c.peek(2).kind === 'number'
  if (early ? c.isDia() || c.atSize() : !usual || goesOn || comma) return false
  const angle = early?.text ?? c.peek().text
  const span = early?.span ?? spanOf(c.peek())
  if (!early) c.index++
  c.mark('missing-size', span, `${angle}° is the angle of the countersink: its diameter is missing`, {
    expected: `⌵ ⌀ and a size × ${angle}°`,
    mends: [
      { label: 'leave its diameter to be measured', span: { from: span.from, to: c.before }, text: `⌀? × ${angle}°` },
    ],
  })
  return true
}

/** A depth, or `THRU to bore`, `to bore`, `THRU one wall`: through the first wall only. */
function readHoleDepth(c: Cursor): Depth | undefined {
  const bare = c.atWord('to') && c.peek(1).kind === 'word'
  const depth = bare ? undefined : readDepth(c)
  if (!bare && depth?.kind !== 'through') return depth
  const from = depth?.kind === 'through' ? depth.span.from : c.peek().from
  const oneWall = readOneWall(c)
  return oneWall ? { kind: 'through', oneWall, span: { from, to: c.before } } : depth
}

function readOneWall(c: Cursor): OneWall | undefined {
  const { from } = c.peek()
  if (c.takeWord('to', 'into')) {
    c.takeWord('the')
    const into = readName(c, 'what the hole goes through to')
    return into && { into, span: { from, to: c.before } }
  }
  if (!(c.isWord(0, 'one', 'first', 'near') && c.isWord(1, 'wall', 'side'))) return undefined
  c.index += 2
  c.takeWord('only')
  return { span: { from, to: c.before } }
}

/** Words for ↧, before the size or after it. */
const deepWords = ['deep', 'depth', 'dp'] as const

/** `THRU`, `↧ .50`, `deep 9`, `9 deep`, `.50 DP`. */
export function readDepth(c: Cursor): Depth | undefined {
  const thru = c.takeWord('thru', 'through')
  if (thru) {
    c.takeWord('all')
    return { kind: 'through', span: { from: thru.from, to: thru.to } }
  }
  if (c.at('depth') || (c.atWord(...deepWords) && c.isSizeAhead(1))) {
    c.index++
    const size = readSize(c, { what: 'the depth' })
    return size && { kind: 'blind', size }
  }
  return c.attempt((): Depth | undefined => {
    if (!c.atSize()) return undefined
    const size = readSize(c, { what: 'the depth' })
    return size && c.takeWord(...deepWords) ? { kind: 'blind', size } : undefined
  })
}

function readBlindDepth(c: Cursor, what: string): Size | undefined {
  const depth = readDepth(c)
  if (depth?.kind === 'blind') return depth.size
  if (depth) return c.mark('contradiction', depth.span, `${what} cannot be THRU`, { expected: '↧ and a depth' })
  return c.mark('missing-size', { from: c.peek().from, to: c.peek().to }, `${what} is missing`, {
    expected: '↧ and a depth',
  })
}
