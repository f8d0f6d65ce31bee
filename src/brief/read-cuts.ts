import type { Depth, Feature, Lie, Name, NotchFeature, SlotFeature, StepFeature } from './brief.ts'
import { type Cursor, exampleIn, spanOf } from './cursor.ts'
import { needName, readHead, readWorkedHead } from './read-head.ts'
import { readDepth } from './read-hole.ts'
import { readName } from './read-name.ts'
import { PlacementReader } from './read-placement.ts'
import { atAngle, readAngle, readCount, readSize } from './read-size.ts'
import type { Angle, Count, Size } from './size.ts'
import { phraseWords } from './vocabulary.ts'
import { wayOpen } from './way-open.ts'

/** Runs through a statement: separators, then whatever `phrase` takes, then places; the rest is marked. */
function phrases(
  c: Cursor,
  place: PlacementReader | undefined,
  vocabulary: readonly string[],
  expected: string,
  phrase: () => boolean,
): void {
  for (const _ of c.phrases()) {
    if (c.skipSeparators()) place?.endClause()
    if (c.done) break
    if (phrase() || place?.take()) continue
    c.unexpected(vocabulary, expected)
  }
}

/** The two ways that a slot can run on its face, to be said where the callout's first line ends. */
function wayMends(face: Name | undefined, at: number) {
  const words = face?.text.split(' ') ?? []
  const onFlank = words.some((w) => w === 'left' || w === 'right')
  const onFront = words.some((w) => w === 'front' || w === 'rear')
  const ways = onFlank ? ['front-rear', 'up-down'] : onFront ? ['left-right', 'up-down'] : ['left-right', 'front-rear']
  return ways.map((way) => ({ label: `let it run ${way}`, span: { from: at, to: at }, text: `, long way ${way},` }))
}

/** Puts a size where none was; a second one is marked. */
function once(c: Cursor, old: Size | undefined, size: Size | undefined, what: string): Size | undefined {
  if (old && size) c.mark('stated-twice', size.span, `${what} is stated twice`, { expected: `${what} once` })
  return old ?? size
}

const missing = (c: Cursor, what: string, expected: string) =>
  c.mark('missing-size', c.statement.keyword.span, `${what} is missing`, { expected })

/** `slots base, from top: 2X .281 × .75 overall THRU, long way front-rear` */
export function readSlot(c: Cursor): SlotFeature | undefined {
  const head = readWorkedHead(c)
  const face = needName(
    c,
    head.names[0],
    'the face of the slot',
    'the face and a colon: slot top: 10 × 40 overall THRU',
  )
  const place = new PlacementReader(c, face?.text ?? '')
  const v: {
    count?: Count | undefined
    width?: Size | undefined
    length?: Size | undefined
    measured?: SlotFeature['measured']
    depth?: Depth
    way?: Lie | undefined
    openTo?: Name | undefined
    broken?: boolean
  } = {}
  phrases(c, place, phraseWords.slot, 'width × length overall, THRU or a depth, long way, or a place', () => {
    if (c.atCount() && !v.count) {
      v.count = readCount(c)
      if (!v.count) v.broken = true
    } else if (c.takeWord('overall')) v.measured = 'overall'
    else if (c.atWord('centre', 'center', 'centres', 'centers') && (c.isWord(1, 'to') || !c.isSizeAhead(1))) {
      c.index++
      if (c.takeWord('to')) c.takeWord('centre', 'center', 'centres', 'centers', 'end')
      v.measured = 'centres'
    } else if (v.length && c.atWord('long') && !c.isWord(1, 'way') && !c.isLie(1)) {
      c.index++
    } else if (!v.way && c.isLie(0) && !c.isSizeAhead(1)) {
      v.way = c.takeLie()
    } else if (c.takeWord('long', 'longway')) {
      c.takeWord('way')
      const at = c.peek()
      v.way = c.takeLie()
      if (!v.way)
        c.mark('missing-name', spanOf(at), 'which way does the slot run?', {
          expected: 'left-right, front-rear or up-down',
        })
    } else if (c.takeWord('open')) {
      c.takeWord('to', 'at')
      v.openTo = readName(c, 'the edge that the slot opens to')
    } else if (c.take('times')) return true
    else {
      const depth = readDepth(c)
      if (depth) {
        if (v.depth)
          c.mark('contradiction', spanOf(c.peek()), 'the depth is stated twice', { expected: 'THRU or one depth' })
        v.depth ??= depth
        return true
      }
      return takeWidthLength(c, v)
    }
    return true
  })
  const { count, placement } = place.finish(v.count, 'slots')
  const at = c.statement.keyword.span
  if (!v.width && !v.broken)
    missing(c, 'the width of the slot', exampleIn(c.setting.unit, '.281 × .75 overall', '8 × 20 overall'))
  if (v.width && !v.length && !v.broken)
    missing(c, 'the length of the slot', exampleIn(c.setting.unit, '.281 × .75 overall', '8 × 20 overall'))
  if (!v.depth && c.setting.practice === 'ISO' && v.width) v.depth = { kind: 'through', span: v.width.span }
  if (!v.depth && !v.broken) c.mark('missing-size', at, 'through, or how deep?', { expected: 'THRU, or ↧ and a depth' })
  // an open slot is measured from its edge to its round end unless said otherwise
  if (!v.measured && v.length && !v.openTo) {
    const end = v.length.tolerance?.span.to ?? v.length.span.to
    c.mark('slot-length-not-said', v.length.span, 'is the length overall, or centre to centre?', {
      expected: 'overall, or centre to centre, after the length',
      mends: ['overall', 'centre to centre'].map((t) => ({
        label: `say ${t}`,
        span: { from: end, to: end },
        text: ` ${t}`,
      })),
    })
  }
  const way = v.way ?? wayOpen(v.openTo)
  if (!way && v.width)
    c.mark('slot-way-not-said', at, 'which way does the slot run?', {
      expected: 'long way left-right, front-rear or up-down',
      ...(v.length ? { mends: wayMends(face, v.length.tolerance?.span.to ?? v.length.span.to) } : {}),
    })
  if (!face || !v.width || !v.length || !v.depth || v.broken || !way) return undefined
  return {
    kind: 'slot',
    ...(head.label ? { label: head.label } : {}),
    face,
    ...(head.from ? { from: head.from } : {}),
    count,
    placement,
    ...(place.mirror ? { mirror: place.mirror } : {}),
    width: v.width,
    length: v.length,
    measured: v.measured ?? 'overall',
    depth: v.depth,
    way,
    ...(v.openTo ? { openTo: v.openTo } : {}),
    span: c.statement.span,
  }
}

function takeWidthLength(
  c: Cursor,
  v: { width?: Size | undefined; length?: Size | undefined; broken?: boolean },
): boolean {
  if (v.length || v.broken || !(c.atSize() || c.at('minus'))) return false
  const size = c.attempt(() => {
    const read = readSize(c, { what: v.width ? 'the length of the slot' : 'the width of the slot' })
    return read && !c.atWord('apart', 'from', 'across', 'up', 'deep') && !c.isLie(0) ? read : undefined
  })
  if (!size) {
    if (c.isWord(1, 'apart', 'from', 'across', 'up') || c.isLie(1)) return false
    const bad = readSize(c, { what: v.width ? 'the length of the slot' : 'the width of the slot' })
    if (!bad) v.broken = true
    return !bad
  }
  if (c.takeWord('wide')) v.width = once(c, v.width, size, 'the width of the slot')
  else if (v.width) v.length = size
  else v.width = size
  return true
}

/** `pocket top: 60 across × 40 up ↧ 10, corners R6` */
export function readPocket(c: Cursor): Feature | undefined {
  const head = readWorkedHead(c)
  const face = needName(c, head.names[0], 'the face of the pocket', 'the face and a colon: pocket top: 60 × 40 ↧ 10')
  const place = new PlacementReader(c, face?.text ?? '')
  const v: {
    count?: Count | undefined
    across?: Size | undefined
    up?: Size | undefined
    depth?: Depth
    corner?: Size | undefined
    broken?: boolean
  } = {}
  phrases(c, place, phraseWords.pocket, 'across × up, a depth, corners, or a place', () => {
    if (c.atCount() && !v.count) {
      v.count = readCount(c)
      if (!v.count) v.broken = true
    } else if (c.atWord('corners', 'corner') || c.at('R')) {
      c.takeWord('corners', 'corner')
      c.take('R')
      v.corner = once(c, v.corner, readSize(c, { what: 'the corner radius' }), 'the corner radius')
    } else if (c.take('times')) return true
    else {
      const depth = readDepth(c)
      if (depth) {
        v.depth ??= depth
        return true
      }
      if (v.up || v.broken || !(c.atSize() || c.at('minus')) || c.isWord(1, 'apart', 'from')) return false
      // `2 across 40 apart` is a place; `60 across × 40 up` is the pocket.
      const size = readSize(c, { what: v.across ? 'how far up the pocket is' : 'how far across the pocket is' })
      c.takeWord('across', 'up', 'long', 'wide')
      if (!size) v.broken = true
      else if (v.across) v.up = size
      else v.across = size
    }
    return true
  })
  const { count, placement } = place.finish(v.count, 'pockets')
  if (!v.across && !v.broken)
    missing(c, 'how far across the pocket is', exampleIn(c.setting.unit, '2.40 × 1.60 ↧ .40', '60 × 40 ↧ 10'))
  if (v.across && !v.up && !v.broken)
    missing(c, 'how far up the pocket is', exampleIn(c.setting.unit, '2.40 × 1.60 ↧ .40', '60 × 40 ↧ 10'))
  if (!v.depth && !v.broken) missing(c, 'the depth of the pocket', 'THRU, or ↧ and a depth')
  if (!face || !v.across || !v.up || !v.depth || v.broken) return undefined
  return {
    kind: 'pocket',
    ...(head.label ? { label: head.label } : {}),
    face,
    ...(head.from ? { from: head.from } : {}),
    count,
    placement,
    ...(place.mirror ? { mirror: place.mirror } : {}),
    across: v.across,
    up: v.up,
    depth: v.depth,
    ...(v.corner ? { cornerRadius: v.corner } : {}),
    span: c.statement.span,
  }
}

/** `step top left: .230 from left, .375 from top` */
export function readStep(c: Cursor): StepFeature | undefined {
  const head = readHead(c, 'comma')
  const edge = needName(
    c,
    head.names[0],
    'the edge of the step',
    'the edge and a colon: step top left: 10 from left, 6 from top',
  )
  const cuts: { size: Size; from: Name }[] = []
  let count: Count | undefined
  let broken = false
  phrases(c, undefined, phraseWords.step, '10 from left, 6 from top', () => {
    if (c.take('times') || c.takeWord('and')) return true
    if (c.atCount() && !count) {
      count = readCount(c)
      return true
    }
    if (!c.atSize() && !c.at('minus')) return false
    const size = readSize(c, { what: 'the size of the step' })
    c.takeWord('wide', 'deep', 'high', 'down')
    const word = c.takeWord('from')
    const from = word && readName(c, 'the face that the step is measured from')
    if (!word) c.mark('missing-name', spanOf(c.peek()), 'from which face?', { expected: 'from left' })
    if (size && from) cuts.push({ size, from })
    else broken = true
    return true
  })
  if (!broken && cuts.length !== 2) {
    c.mark(
      'missing-size',
      c.statement.keyword.span,
      `a step has two sizes, and ${cuts.length === 0 ? 'none is' : `${cuts.length} ${cuts.length === 1 ? 'is' : 'are'}`} written`,
      {
        expected: '10 from left, 6 from top',
      },
    )
  }
  if (!edge || broken || cuts.length !== 2) return undefined
  return {
    kind: 'step',
    ...(head.label ? { label: head.label } : {}),
    edge,
    cuts,
    count: count ?? { value: 1, span: c.statement.keyword.span },
    span: c.statement.span,
  }
}

/** `notch front, top: vee, 36 wide, 90°; centred` */
export function readNotch(c: Cursor): NotchFeature | undefined {
  const head = readHead(c, 'comma')
  const [face, edge] = head.names
  needName(
    c,
    face,
    'the face of the notch',
    'the face, the edge and a colon: notch front, top: square, 20 wide, 10 deep',
  )
  if (face) needName(c, edge, 'the edge that the notch opens to', 'the face, the edge and a colon: notch front, top:')
  const place = new PlacementReader(c, face?.text ?? '')
  const v: {
    count?: Count | undefined
    shape?: 'square' | 'vee'
    width?: Size | undefined
    depth?: Size | undefined
    angle?: Angle | undefined
    into?: Name | undefined
    broken?: boolean
  } = {}
  phrases(c, place, phraseWords.notch, 'square or vee, wide, deep, to a bore, an angle, or a place', () => {
    if (c.atCount() && !v.count) {
      v.count = readCount(c)
      if (!v.count) v.broken = true
    } else if (c.atWord('square', 'vee', 'v')) {
      v.shape = c.peek().text.toLowerCase() === 'square' ? 'square' : 'vee'
      c.index++
    } else if (c.take('times')) return true
    // `centres 1.520 apart`: notches are placed by their middles anyway
    else if (c.atWord('centre', 'centres', 'center', 'centers') && c.isSizeAhead(1)) {
      c.index++
      return place.take()
    } else if (atAngle(c)) v.angle = readAngle(c, 'the angle of the vee')
    else if (c.takeWord('to', 'into')) {
      v.into = readName(c, 'what the notch goes to')
      if (!v.into) v.broken = true
    } else {
      const depth = readDepth(c)
      if (depth?.kind === 'blind') {
        v.depth = once(c, v.depth, depth.size, 'the depth of the notch')
        return true
      }
      if (!(c.atSize() || c.at('minus'))) return false
      const bad = (c.at('minus') || (c.at('number') && Number(c.peek().text) === 0)) && !v.width
      const width = c.attempt(() => {
        const size = readSize(c, { what: 'the width of the notch' })
        return size && (c.takeWord('wide') || c.at('times') || (!v.width && c.at('comma', 'semicolon', 'line', 'end')))
          ? size
          : undefined
      })
      if (!width && bad) {
        readSize(c, { what: 'the width of the notch' })
        v.broken = true
        return true
      }
      if (!width) return false
      v.width = once(c, v.width, width, 'the width of the notch')
    }
    return true
  })
  const { count, placement } = place.finish(v.count, 'notches')
  if (!v.shape)
    c.mark('notch-shape-not-said', c.statement.keyword.span, 'a square notch or a vee?', { expected: 'square, or vee' })
  if (!v.width && !v.broken) missing(c, 'the width of the notch', exampleIn(c.setting.unit, '.75 wide', '20 wide'))
  if (v.into && (v.depth || v.shape === 'vee')) {
    c.mark(
      'stated-twice',
      v.into.span,
      v.depth ? 'the depth of the notch is stated twice' : 'a vee ends in its own point',
      {
        expected: v.depth ? 'the depth, or what the notch goes to' : 'square, or the depth or angle of the vee',
      },
    )
    return undefined
  }
  if (!v.depth && !v.into && !(v.shape === 'vee' && v.angle) && !v.broken) {
    missing(c, 'the depth of the notch', v.shape === 'vee' ? '10 deep, or the angle of the vee' : '10 deep')
  }
  if (v.depth && v.angle) {
    c.mark('stated-twice', v.angle.span, 'width, depth and angle of the vee are one too many', {
      expected: 'the width, and the depth or the angle',
    })
  }
  if (v.angle && v.angle.value >= 180)
    c.mark('angle-out-of-range', v.angle.span, 'a vee is less than 180°', { expected: 'an angle such as 90°' })
  if (!face || !edge || !v.shape || !v.width || v.broken || (!v.depth && !v.angle && !v.into)) return undefined
  return {
    kind: 'notch',
    ...(head.label ? { label: head.label } : {}),
    face,
    edge,
    shape: v.shape,
    width: v.width,
    ...(v.depth ? { depth: v.depth } : {}),
    ...(v.angle ? { angle: v.angle } : {}),
    ...(v.into ? { into: v.into } : {}),
    count,
    placement,
    ...(place.mirror ? { mirror: place.mirror } : {}),
    span: c.statement.span,
  }
}
