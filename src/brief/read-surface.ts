import type { BossFeature, EdgeFeature, Name } from './brief.ts'
import type { Cursor } from './cursor.ts'
import { needName, readHead, readWorkedHead } from './read-head.ts'
import { PlacementReader } from './read-placement.ts'
import { atAngle, readAngle, readCount, readSize } from './read-size.ts'
import type { Angle, Count, Size } from './size.ts'
import { phraseWords } from './vocabulary.ts'

const one = (c: Cursor): Count => ({ value: 1, span: c.statement.keyword.span })

/** `chamfer ends: 2X .03 × 45°`, `round upright, top corners: 2X R.38` */
export function readEdge(c: Cursor, kind: EdgeFeature['kind']): EdgeFeature | undefined {
  const head = readHead(c, 'and')
  const edges = head.names
  if (edges.length === 0)
    needName(
      c,
      undefined,
      `the edge of the ${kind}`,
      `the edges and a colon: ${kind} top edges: 4X ${kind === 'chamfer' ? '1 × 45°' : 'R3'}`,
    )
  let count: Count | undefined
  let size: Size | undefined
  let second: { angle?: Angle; leg?: Size } | undefined
  let broken = false
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    if (c.atCount() && !count) {
      count = readCount(c)
      if (!count) broken = true
    } else if (kind === 'chamfer' && !size && !second && atAngle(c)) {
      // `45° × 2` says it the other way round
      const angle = readAngle(c, 'the angle of the chamfer')
      if (angle) second = { angle }
      else broken = true
      c.take('times')
    } else if (!second && c.take('times')) {
      const angle = atAngle(c) || lacksDegree(c, size) ? readAngle(c, 'the angle of the chamfer') : undefined
      const leg = angle ? undefined : readSize(c, { what: 'the second leg of the chamfer' })
      if (angle) second = { angle }
      else if (leg) second = { leg }
      else broken = true
    } else if (kind === 'chamfer' && !size && !broken && takeRoundOrC(c)) broken = true
    else if (!size && !broken && (c.at('R', 'minus') || c.atSize())) {
      c.take('R')
      size = readSize(c, { what: kind === 'chamfer' ? 'the leg of the chamfer' : 'the radius' })
      if (!size) broken = true
    } else c.unexpected(phraseWords[kind], kind === 'chamfer' ? 'a leg and an angle: 1 × 45°' : 'a radius: R3')
  }
  const at = c.statement.keyword.span
  if (!size && !broken)
    c.mark('missing-size', at, `the size of the ${kind} is missing`, {
      expected: kind === 'chamfer' ? '1 × 45°' : 'R3',
    })
  if (kind === 'chamfer' && size && !second && !broken) {
    const end = size.tolerance?.span.to ?? size.span.to
    c.mark('missing-size', size.span, 'at what angle is the chamfer?', {
      expected: `${size.text} × 45°, or both legs`,
      mends: [{ label: 'write × 45°', span: { from: end, to: end }, text: ' × 45°' }],
    })
    broken = true
  }
  if (kind !== 'chamfer' && second) {
    const extra = second.angle?.span ?? second.leg?.span ?? at
    c.mark('contradiction', extra, `a ${kind} has a radius only`, { expected: 'R and one size' })
    broken = true
  }
  if (edges.length === 0 || !size || broken) return undefined
  return { kind, ...label(head.label), edges, size, ...second, count: count ?? one(c), span: c.statement.span }
}

/** `R.5` of a chamfer is a round's size, and `C1` a chamfer's by another custom: marked, with what to write. */
function takeRoundOrC(c: Cursor): boolean {
  const { from } = c.peek()
  const byC = /^c(\d+(?:[.,]\d+)?|[.,]\d+)/i.exec(c.setting.text.slice(from, from + 12))
  if (byC) {
    const span = { from, to: from + byC[0].length }
    while (!c.done && c.peek().from < span.to) c.index++
    const write = `${byC[1]} × 45°`
    c.mark('out-of-place', span, 'the angle of a chamfer is written out', {
      expected: write,
      mends: [{ label: `write ${write}`, span, text: write }],
    })
    return true
  }
  if (!(c.at('R') && c.isSizeAhead(1))) return false
  c.index++
  const size = readSize(c, { what: 'the radius' })
  if (!size) return true
  const span = { from, to: size.span.to }
  const write = `${size.text} × 45°`
  c.mark('contradiction', span, 'an R is the size of a round, not of a chamfer', {
    expected: `round in place of chamfer, or ${write}`,
    mends: [
      { label: 'make it a round', span: c.statement.keyword.span, text: 'round' },
      { label: `write ${write}`, span, text: write },
    ],
  })
  return true
}

/** `1/8 × 45`: a usual angle, and far too long for the second leg of a chamfer with such a first one. */
function lacksDegree(c: Cursor, first: Size | undefined): boolean {
  const { text } = c.peek()
  return first !== undefined && /^(30|45|60)$/.test(text) && !c.isWord(1, 'mm', 'in') && Number(text) > 5 * first.value
}

const label = (name: Name | undefined) => (name ? { label: name } : {})

/** `boss top: ⌀40 × 12 high; centred both ways`. A spigot is a boss on the axis. */
export function readBoss(c: Cursor, keyword: 'boss' | 'spigot'): BossFeature | undefined {
  const head = readWorkedHead(c)
  const face = needName(
    c,
    head.names[0],
    `the face of the ${keyword}`,
    `the face and a colon: ${keyword} rear: ⌀80 × 5`,
  )
  const place = new PlacementReader(c, face?.text ?? '')
  const v: { count?: Count | undefined; diameter?: Size | undefined; height?: Size | undefined; broken?: boolean } = {}
  for (const _ of c.phrases()) {
    if (c.skipSeparators()) place.endClause()
    if (c.done) break
    if (c.atCount() && !v.count) {
      v.count = readCount(c)
      if (!v.count) v.broken = true
    } else if (!v.diameter && !v.broken && (c.isDia() || c.atSize() || c.at('minus'))) {
      c.takeDia()
      v.diameter = readSize(c, { what: `the diameter of the ${keyword}` })
      c.takeDia()
      if (!v.diameter) v.broken = true
    } else if (c.take('times') || (!v.height && v.diameter && c.atSize() && c.isWord(1, 'high'))) {
      const height = readSize(c, { what: `the height of the ${keyword}` })
      c.takeWord('high', 'long')
      if (height) v.height = height
      else v.broken = true
    } else if (!place.take()) c.unexpected(phraseWords[keyword], '⌀40 × 12 high, or a place')
  }
  const at = c.statement.keyword.span
  const { count, placement } =
    keyword === 'spigot' && place.empty
      ? { count: v.count ?? one(c), placement: { kind: 'axis' as const, span: at } }
      : place.finish(v.count, 'bosses')
  if (!v.broken && !v.diameter)
    c.mark('missing-size', at, `the diameter of the ${keyword} is missing`, { expected: '⌀40 × 12 high' })
  if (!v.broken && v.diameter && !v.height)
    c.mark('missing-size', v.diameter.span, `how high is the ${keyword}?`, { expected: '× and the height' })
  if (!face || !v.diameter || !v.height || v.broken) return undefined
  return {
    kind: 'boss',
    ...label(head.label),
    face,
    ...(head.from ? { from: head.from } : {}),
    count,
    placement,
    ...(place.mirror ? { mirror: place.mirror } : {}),
    diameter: v.diameter,
    height: v.height,
    span: c.statement.span,
  }
}
