import type { AngleStock, Lie, Side, Stock } from './brief.ts'
import type { Cursor } from './cursor.ts'
import { readSide } from './read-name.ts'
import { readOutline } from './read-outline.ts'
import { readSize, withLateTolerance } from './read-size.ts'
import { readTurned } from './read-turned.ts'
import type { Size } from './size.ts'
import { phraseWords, type StockKeyword } from './vocabulary.ts'

/** One size that a stock needs: its name in messages and the words that may stand beside it. */
interface Need {
  readonly key: string
  readonly what: string
  readonly words: readonly string[]
  readonly optional?: boolean
}

const length: Need = { key: 'length', what: 'the length', words: ['long', 'length'] }
const thickness: Need = { key: 'thickness', what: 'the thickness', words: ['thick', 'thickness'] }
const width: Need = { key: 'width', what: 'the width', words: ['wide', 'width'] }
const height: Need = { key: 'height', what: 'the height', words: ['high', 'height'] }
const diameter: Need = { key: 'diameter', what: 'the diameter', words: ['dia', 'diameter'] }

interface Phrases {
  readonly sizes: Readonly<Record<string, Size>>
  readonly face?: Side
  readonly lie?: Lie
}

export function readStock(c: Cursor, keyword: StockKeyword): Stock | undefined {
  const span = c.statement.span
  switch (keyword) {
    case 'plate': {
      if (c.isDia()) {
        const { span } = c.statement.keyword
        c.mark('out-of-place', span, 'a plate has no diameter; did you mean “disc”?', {
          expected: 'disc, for a round plate',
          mends: [{ label: 'write disc', span, text: 'disc' }],
        })
        // Read on as the mend would have it.
        return readStock(c, 'disc')
      }
      const read = readPhrases(c, keyword, [length, width, thickness])
      const sizes = all(read.sizes, 'length', 'width', 'thickness')
      return sizes && { kind: 'plate', ...sizes, face: read.face ?? 'top', span }
    }
    case 'block': {
      const read = readPhrases(c, keyword, [length, width, height])
      const sizes = all(read.sizes, 'length', 'width', 'height')
      return sizes && { kind: 'block', ...sizes, span }
    }
    case 'channel':
    case 'tee': {
      const read = readPhrases(c, keyword, [height, width, thickness, length])
      const sizes = all(read.sizes, 'height', 'width', 'thickness', 'length')
      return sizes && { kind: keyword, ...sizes, lie: read.lie ?? 'left-right', span }
    }
    case 'flat bar': {
      const read = readPhrases(c, keyword, [width, thickness, length])
      const sizes = all(read.sizes, 'width', 'thickness', 'length')
      return sizes && { kind: 'flat', ...sizes, face: read.face ?? 'top', span }
    }
    case 'round bar': {
      const read = readPhrases(c, keyword, [diameter, length])
      const sizes = all(read.sizes, 'diameter', 'length')
      return sizes && { kind: 'bar', ...sizes, lie: read.lie ?? 'left-right', span }
    }
    case 'disc': {
      const read = readPhrases(c, keyword, [diameter, thickness])
      const sizes = all(read.sizes, 'diameter', 'thickness')
      return sizes && { kind: 'disc', ...sizes, face: read.face ?? 'front', span }
    }
    case 'tube':
      return readTube(c)
    case 'angle':
      return readAngleStock(c)
    case 'turned':
      return readTurned(c)
    case 'outline':
      return readOutline(c)
  }
}

function readTube(c: Cursor): Stock | undefined {
  const outside: Need = { key: 'outside', what: 'the outside diameter', words: ['outside', 'od'] }
  const inside: Need = { key: 'inside', what: 'the inside diameter', words: ['inside', 'id'], optional: true }
  const wall: Need = { key: 'wall', what: 'the wall', words: ['wall'], optional: true }
  const read = readPhrases(c, 'tube', [outside, inside, length, wall])
  const sizes = all(read.sizes, 'outside', 'length')
  if (!sizes) return undefined
  const { inside: bore, wall: shell } = read.sizes
  if (!bore && !shell) {
    return c.mark('missing-size', c.statement.keyword.span, 'the tube has neither an inside diameter nor a wall', {
      expected: '⌀ … inside, or wall …',
    })
  }
  if (bore && shell) {
    c.mark('stated-twice', shell.span, 'inside diameter and wall say the same thing twice', {
      expected: 'the inside diameter or the wall; the other follows',
    })
  }
  const lie = read.lie ?? 'left-right'
  const span = c.statement.span
  return { kind: 'tube', ...sizes, ...(bore ? { inside: bore } : shell ? { wall: shell } : {}), lie, span }
}

/** All the named sizes, or undefined where one is not there (its absence is already marked). */
function all<K extends string>(
  sizes: Readonly<Record<string, Size>>,
  ...keys: readonly K[]
): Record<K, Size> | undefined {
  const out: Partial<Record<K, Size>> = {}
  for (const key of keys) {
    const size = sizes[key]
    if (!size) return undefined
    out[key] = size
  }
  return out as Record<K, Size>
}

/** Sizes in their order or with their words, a face, a direction. */
function readPhrases(c: Cursor, keyword: StockKeyword, needs: readonly Need[]): Phrases {
  const sizes: Record<string, Size> = {}
  const failed = new Set<string>()
  let face: Side | undefined
  let lie: Lie | undefined
  const needOf = (word: string) => needs.find((n) => n.words.includes(word))
  const put = (need: Need, size: Size) => {
    if (!sizes[need.key]) sizes[need.key] = size
    else c.mark('stated-twice', size.span, `${need.what} is stated twice`, { expected: `${need.what} once` })
  }
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    if (c.take('times')) continue
    const dia = c.takeDia()
    const named = c.at('word') ? needOf(c.peek().text.toLowerCase()) : undefined
    if (c.atSize() || dia || c.at('minus') || (named && c.isSizeAhead(1))) {
      if (named && !c.atSize()) c.index++
      const next = named ?? needs.find((n) => !sizes[n.key] && !failed.has(n.key) && !n.optional) ?? needs[0]!
      const first = readSize(c, { what: dia && next.key !== 'diameter' ? 'the diameter' : next.what })
      const after = c.at('word') && !named ? needOf(c.peek().text.toLowerCase()) : undefined
      if (after) c.index++
      const need = after ?? next
      const size = after ? withLateTolerance(c, first) : first
      if (size) put(need, size)
      else failed.add(need.key)
    } else if (c.atWord('outer', 'face', 'lies', 'lie') && !c.isLie(1)) {
      c.takeWord('outer', 'lies', 'lie')
      c.takeWord('face')
      face = readSide(c, 'the face seen true') ?? face
    } else if (c.isLie(0) || (c.atWord('axis', 'lies', 'lie', 'runs') && c.isLie(1))) lie = c.takeLie()
    else if (c.takeWord('x')) continue
    else c.unexpected(phraseWords[keyword], `the sizes of the ${keyword}`)
  }
  for (const need of needs) {
    if (sizes[need.key] || need.optional || failed.has(need.key)) continue
    c.mark('missing-size', c.statement.keyword.span, `${need.what} of the ${keyword} is missing`, {
      expected: `a size with “${need.words[0]}” beside it`,
    })
  }
  return { sizes, ...(face ? { face } : {}), ...(lie ? { lie } : {}) }
}

const opposite = { rear: 'front', front: 'rear', left: 'right', right: 'left' } as const
type Standing = keyof typeof opposite
const isStanding = (side: Side): side is Standing => side in opposite

function readAngleStock(c: Cursor): Stock | undefined {
  let make: AngleStock['make']
  let at: Standing | undefined
  let toward: Standing | undefined
  const sizes: Record<string, Size> = {}
  const put = (key: string, what: string) => {
    const size = readSize(c, { what })
    if (!size) failed.add(key)
    else if (sizes[key]) c.mark('stated-twice', size.span, `${what} is stated twice`, { expected: `${what} once` })
    else sizes[key] = size
  }
  const failed = new Set<string>()
  const standing = (what: string): Standing | undefined => {
    const from = c.peek()
    const side = readSide(c, what)
    if (!side || isStanding(side)) return side
    return c.mark('unknown-side', from, `${what} cannot be ${side}`, { expected: 'rear, front, left or right' })
  }
  for (const _ of c.phrases()) {
    c.skipSeparators()
    if (c.done) break
    const made = c.takeWord('formed', 'rolled', 'machined')
    if (made) {
      const word = made.text.toLowerCase() as 'formed' | 'rolled' | 'machined'
      if (make && make !== word) {
        c.mark('contradiction', made, `the angle cannot be ${make} and ${word}`, {
          expected: 'formed, rolled or machined',
        })
      }
      make ??= word
    } else if (c.takeWord('inside')) {
      c.takeWord('radius')
      c.take('R')
      put('insideRadius', 'the inside radius')
    } else if (c.takeWord('toe')) {
      c.takeWord('radius')
      c.take('R')
      put('toeRadius', 'the toe radius')
    } else if (c.takeWord('upright')) {
      if (c.atSize() || c.at('minus')) put('uprightHeight', 'the height of the upright')
      c.takeWord('high', 'tall')
    } else if (c.takeWord('base')) {
      if (c.atSize() || c.at('minus')) put('baseDepth', 'the base')
      c.takeWord('wide')
    } else if (c.takeWord('at')) at = standing('the place of the upright') ?? at
    else if (c.takeWord('toward', 'towards')) toward = standing('the direction of the base') ?? toward
    else if (c.takeWord('length')) put('length', 'the length')
    else if (c.takeWord('thickness')) put('thickness', 'the thickness')
    else if (c.atSize() || c.at('minus')) {
      const first = readSize(c, { what: 'the thickness' })
      const key = c.takeWord('long') ? 'length' : c.takeWord('high') ? 'uprightHeight' : 'thickness'
      if (key === 'thickness') c.takeWord('thick')
      const size = withLateTolerance(c, first)
      if (!size) failed.add(key)
      else if (sizes[key]) c.mark('stated-twice', size.span, `the ${key} is stated twice`)
      else sizes[key] = size
    } else c.unexpected(phraseWords.angle, 'formed, rolled or machined, the thickness, upright, base or length')
  }
  return angleOf(c, { make, at, toward, sizes, failed })
}

interface AngleParts {
  readonly make: AngleStock['make']
  readonly at: Standing | undefined
  readonly toward: Standing | undefined
  readonly sizes: Readonly<Record<string, Size>>
  readonly failed: ReadonlySet<string>
}

function angleOf(c: Cursor, { make, at, toward, sizes, failed }: AngleParts): Stock | undefined {
  const where = c.statement.keyword.span
  const missing = (key: string, what: string, expected: string) => {
    if (!sizes[key] && !failed.has(key)) c.mark('missing-size', where, `${what} of the angle is missing`, { expected })
  }
  missing('thickness', 'the thickness', 'a size such as .188 STK or 6 thick')
  missing('uprightHeight', 'the upright', 'upright 3.00 high')
  missing('baseDepth', 'the base', 'base 2.00 toward front')
  missing('length', 'the length', 'length 2.50')
  if (!make) {
    const insert = { from: where.to, to: where.to }
    c.mark('angle-make-not-said', where, 'rolled, formed or machined?', {
      expected: 'formed (heel = inside radius + thickness), rolled (sharp heel) or machined',
      mends: ['formed', 'rolled', 'machined'].map((m) => ({ label: `say ${m}`, span: insert, text: ` ${m},` })),
    })
  }
  if (!at && !toward) {
    c.mark('upright-place-not-said', where, 'where does the upright stand?', {
      expected: 'at rear, at front, at left or at right',
    })
  } else if (at && toward && toward !== opposite[at]) {
    c.mark('contradiction', where, `with the upright at ${at} the base runs toward ${opposite[at]}`, {
      expected: `toward ${opposite[at]}`,
    })
  }
  const needed = all(sizes, 'thickness', 'uprightHeight', 'baseDepth', 'length')
  if (!needed) return undefined
  const { insideRadius, toeRadius } = sizes
  return {
    kind: 'angle',
    ...(make ? { make } : {}),
    ...needed,
    ...(insideRadius ? { insideRadius } : {}),
    ...(toeRadius ? { toeRadius } : {}),
    uprightAt: at ?? (toward ? opposite[toward] : 'rear'),
    span: c.statement.span,
  }
}
