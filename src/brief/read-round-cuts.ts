import type { Anchor, FlatFeature, GrooveFeature, KeyseatFeature, Lie, Mirror, Name, Side } from './brief.ts'
import { type Cursor, exampleIn, spanOf } from './cursor.ts'
import { oppositeOf } from './opposite-side.ts'
import { readAnchor } from './read-anchor.ts'
import { needName, readHead } from './read-head.ts'
import { readDepth } from './read-hole.ts'
import { readMirror } from './read-mirror.ts'
import { readCount, readSize } from './read-size.ts'
import type { Count, Size } from './size.ts'
import type { Span } from './span.ts'
import { nearestWord } from './spelling.ts'
import { phraseWords, sides } from './vocabulary.ts'

const one = (c: Cursor): Count => ({ value: 1, span: c.statement.keyword.span })
const label = (name: Name | undefined) => (name ? { label: name } : {})

interface Cut {
  readonly sizes: Readonly<Record<string, Size>>
  readonly anchor?: Anchor & { readonly span: Span }
  /** As written. */
  readonly count?: Count
  /** As written, of flats. */
  readonly mirror?: Mirror
  readonly broken: boolean
}

/** Sizes told apart by the word after them or by their order, and where the cut sits along the surface. */
function readCut(
  c: Cursor,
  word: 'groove' | 'keyseat' | 'flat',
  order: readonly string[],
  named: Readonly<Record<string, string>>,
): Cut {
  const sizes: Record<string, Size> = {}
  let anchor: Cut['anchor']
  let count: Count | undefined
  let mirror: Mirror | undefined
  let broken = false
  const put = (key: string, size: Size | undefined) => {
    if (!size) broken = true
    else if (sizes[key])
      c.mark('stated-twice', size.span, `the ${key} of the ${word} is stated twice`, { expected: `the ${key} once` })
    else sizes[key] = size
  }
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    if (c.atCount() && !count) {
      count = readCount(c)
      if (!count) broken = true
      continue
    }
    if (c.take('times')) continue
    // `□24`: the sign says that there are four
    if (word === 'flat' && c.peek().text === '□') {
      const { from, to } = c.peek()
      c.index++
      if (count && count.value !== 4)
        c.mark('contradiction', { from, to }, 'a square has four flats', { expected: '4X □24, or □24' })
      count ??= { value: 4, span: { from, to } }
      continue
    }
    if (word === 'flat' && c.atWord('mirrored', 'mirror')) {
      mirror = readMirror(c)
      continue
    }
    const read = c.at('diameter') ? undefined : readAnchor(c)
    if (read) {
      if (anchor)
        c.mark('stated-twice', read.span, `the place of the ${word} is stated twice`, { expected: 'one distance' })
      anchor ??= read
      continue
    }
    const depth = 'deep' in named ? readDepth(c) : undefined
    if (depth?.kind === 'blind') {
      put(named.deep!, depth.size)
      continue
    }
    if ('bottom' in named && (c.atWord('bottom') || c.isDia())) {
      c.takeWord('bottom')
      c.takeDia()
      put('bottom', readSize(c, { what: `the bottom diameter of the ${word}` }))
      continue
    }
    if (c.atSize() || c.at('minus')) {
      const next = order.find((k) => !sizes[k]) ?? order[0]!
      const size = readSize(c, { what: `the ${next} of the ${word}` })
      const after = wordAfter(c, named)
      c.takeWord('flats')
      if (after === 'over') c.takeWord('bore', 'all')
      put(after ?? next, size)
      continue
    }
    c.unexpected(phraseWords[word], `the sizes of the ${word}, and where it sits`)
  }
  return { sizes, ...(anchor ? { anchor } : {}), ...(count ? { count } : {}), ...(mirror ? { mirror } : {}), broken }
}

/** The word that tells which size it was; `A/F` is `across flats`. */
function wordAfter(c: Cursor, named: Readonly<Record<string, string>>): string | undefined {
  if (named.af && c.isWord(0, 'a') && c.peek(1).kind === 'slash' && c.isWord(2, 'f')) {
    c.index += 3
    return named.af
  }
  const after = c.at('word') ? named[c.peek().text.toLowerCase()] : undefined
  if (after) c.index++
  return after
}

function missing(c: Cursor, what: string, expected: string): undefined {
  return c.mark('missing-size', c.statement.keyword.span, `${what} is missing`, { expected })
}

/** `groove right: .046 wide, bottom ⌀.704; left end .94 from body right face` */
export function readGroove(c: Cursor): GrooveFeature | undefined {
  const head = readHead(c, 'comma')
  const face = needName(
    c,
    head.names[0],
    'the surface of the groove',
    'the surface and a colon: groove right: 2.2 wide, bottom ⌀18',
  )
  const { sizes, anchor, count, broken } = readCut(c, 'groove', ['width', 'depth'], {
    wide: 'width',
    deep: 'depth',
    bottom: 'bottom',
  })
  const { width, bottom, depth } = sizes
  if (!broken && !width) missing(c, 'the width of the groove', exampleIn(c.setting.unit, '.090 wide', '2.2 wide'))
  if (!broken && !bottom && !depth)
    missing(
      c,
      'the depth of the groove',
      exampleIn(c.setting.unit, 'bottom ⌀.704, or .04 deep', 'bottom ⌀18, or 1 deep'),
    )
  if (bottom && depth)
    c.mark('stated-twice', depth.span, 'bottom diameter and depth say the same thing twice', {
      expected: 'one of the two',
    })
  if (!anchor)
    c.mark('missing-place', c.statement.keyword.span, 'where is the groove?', {
      expected: 'left end 10 from left face',
    })
  if (!face || !width || !(bottom || depth) || !anchor || broken) return undefined
  return {
    kind: 'groove',
    ...label(head.label),
    face,
    width,
    ...(bottom ? { bottom } : depth ? { depth } : {}),
    anchor: bare(anchor),
    count: count ?? one(c),
    span: c.statement.span,
  }
}

/** `keyseat body, front: .250 wide × .125 deep × 1.25 long; left end .50 from …`, `keyseat bore, top: 8 wide × 33.3 over bore` */
export function readKeyseat(c: Cursor): KeyseatFeature | undefined {
  const { face, side, label: name } = readSurface(c, 'keyseat')
  const { sizes, anchor, count, broken } = readCut(c, 'keyseat', ['width', 'depth', 'length'], {
    wide: 'width',
    deep: 'depth',
    long: 'length',
    over: 'over',
  })
  const { width, depth, over, length } = sizes
  // through the bore, unless a length is given
  const inBore = face !== undefined && /\b(bore|inside|hole)\b/.test(face.text)
  const through = inBore && !length && !anchor
  if (!broken && !width) missing(c, 'the width of the keyseat', exampleIn(c.setting.unit, '.250 wide', '6 wide'))
  if (!broken && !depth && !over)
    missing(c, 'the depth of the keyseat', inBore ? '3.3 deep, or 33.3 over bore' : '3.5 deep')
  if (depth && over)
    c.mark('stated-twice', over.span, 'a depth and a size over the bore say the same thing twice', {
      expected: 'one of the two',
    })
  if (over && !inBore)
    c.mark('contradiction', over.span, 'a keyseat in a shaft has no size over a bore', {
      expected: 'a depth: 3.5 deep',
    })
  if (!broken && !length && !through)
    missing(c, 'the length of the keyseat', exampleIn(c.setting.unit, '1.00 long', '25 long'))
  if (!anchor && !through)
    c.mark('missing-place', c.statement.keyword.span, 'where is the keyseat?', {
      expected: 'left end 4 from left face',
    })
  const placed = through || (length && anchor)
  if (!face || !side || !width || !(depth || (over && inBore)) || !placed || broken) return undefined
  return {
    kind: 'keyseat',
    ...label(name),
    face,
    side,
    width,
    ...(depth ? { depth } : over ? { over } : {}),
    ...(length ? { length } : {}),
    ...(anchor ? { anchor: bare(anchor) } : {}),
    count: count ?? one(c),
    span: c.statement.span,
  }
}

/** `flat journal, top: 18 across, 20 long; left end 5 from left face`, `flats journal, top and bottom: 18 across` */
export function readFlat(c: Cursor): FlatFeature | undefined {
  const head = readSurface(c, 'flat')
  const { sizes, anchor, count, mirror, broken } = readCut(c, 'flat', ['across', 'length'], {
    across: 'across',
    af: 'across',
    long: 'length',
  })
  const { across, length } = sizes
  if (!broken && !across) missing(c, 'the size across the flat', exampleIn(c.setting.unit, '.70 across', '18 across'))
  const pair = head.pair === true || isPair(c, mirror, head.side)
  const plural = /s$/i.test(c.statement.keyword.text)
  const made = count ?? { value: pair || plural ? 2 : 1, span: c.statement.keyword.span }
  const fits = [1, 2, 4, 6].includes(made.value) && !(pair && made.value === 1)
  if (!fits)
    c.mark(
      'count-out-of-range',
      made.span,
      `${made.value} flats cannot stand evenly about an axis and be given across`,
      {
        expected: pair ? '2X for a pair of flats' : '1X, or 2X, 4X or 6X for a pair of flats, a square or a hexagon',
      },
    )
  if (made.value === 1 && head.face && !head.side && !head.told)
    needName(c, undefined, 'the side that the flat is cut in', exampleOf('flat'))
  if (!head.face || head.told || (!head.side && made.value === 1) || !across || broken || !fits) return undefined
  return {
    kind: 'flat-cut',
    ...label(head.label),
    face: head.face,
    ...(head.side ? { side: head.side } : {}),
    across,
    ...(length ? { length } : {}),
    ...(anchor ? { anchor: bare(anchor) } : {}),
    count: made,
    span: c.statement.span,
  }
}

/** `mirrored up-down` of a flat on top makes the pair; another direction turns the flat along the axis, and makes none. */
function isPair(c: Cursor, mirror: Mirror | undefined, side: Side | undefined): boolean {
  if (!mirror || !side) return false
  const lie: Lie = lieOf[side]
  if (mirror.across !== lie)
    c.mark('wrong-direction', mirror.span, `a flat on the ${side} is mirrored ${lie}`, { expected: `mirrored ${lie}` })
  return true
}

const lieOf: Readonly<Record<Side, Lie>> = {
  left: 'left-right',
  right: 'left-right',
  front: 'front-rear',
  rear: 'front-rear',
  top: 'up-down',
  bottom: 'up-down',
}

const bare = ({ which, distance, from }: Anchor): Anchor => ({ which, distance, from })

const exampleOf = (word: 'keyseat' | 'flat') => `the surface, the side and a colon: ${word} body, top:`

interface SurfaceHead {
  readonly face?: Name
  readonly side?: Side
  /** `top and bottom`: both sides of the surface. */
  readonly pair?: boolean
  readonly label?: Name
  /** What is missing is marked already. */
  readonly told?: boolean
}

/** `body, front:` or `body, from front:` – the surface, and the side of it that is cut; of flats `top and bottom`. */
function readSurface(c: Cursor, word: 'keyseat' | 'flat'): SurfaceHead {
  const head = readHead(c, word === 'flat' ? 'comma or and' : 'comma')
  const [face, at, other] = head.names
  const own = label(head.label)
  if (!face) {
    needName(c, undefined, `the surface of the ${word}`, exampleOf(word))
    return { told: true }
  }
  if (!at) {
    if (head.from) return { face, side: head.from, ...own }
    if (word === 'flat') return { face, ...own }
    needName(c, undefined, `the side that the ${word} is cut in`, exampleOf(word))
    return { face, ...own }
  }
  const side = sideNamed(c, at)
  const second = other && sideNamed(c, other)
  if (!side || (other && !second)) return { face, ...own, told: true }
  if (second && second !== oppositeOf[side]) {
    const span = { from: at.span.from, to: other.span.to }
    c.mark('unknown-side', span, `${side} and ${second} do not stand opposite each other`, {
      expected: `${side} and ${oppositeOf[side]}`,
    })
    return { face, ...own, told: true }
  }
  return { face, side, ...(second ? { pair: true } : {}), ...own }
}

function sideNamed(c: Cursor, at: Name): Side | undefined {
  const side = sides.find((s) => s === at.text)
  if (side) return side
  const near = nearestWord(at.text, sides)
  return c.mark('unknown-side', spanOf(at.span), `“${at.text}” is no side of the part`, {
    expected: sides.join(', '),
    ...(near ? { mends: [{ label: `write ${near}`, span: at.span, text: near }] } : {}),
  })
}
