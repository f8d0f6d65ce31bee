import type { Cursor } from './cursor.ts'
import { show, sizeExample, spanOf } from './cursor.ts'
import { parseNumber } from './number.ts'
import type { Angle, Count, FormRequirement, Num, Size, Tolerance, Unit } from './size.ts'
import { isOfTheLanguage } from './vocabulary.ts'

/** Largest length a workshop's sheet can mean, in mm: 100 m. */
const longest = 100_000
/** Most repeats of one feature that the program works out. */
export const mostRepeats = 2000

const unitWords: Readonly<Record<string, Unit>> = {
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  in: 'inch',
  inch: 'inch',
  inches: 'inch',
}

/** Fundamental deviations of ISO 286-1, without x, which is a multiplication sign on a bench; grades 01, 0 and 1 to 18. */
const fit = /^(a|b|c|cd|d|e|ef|f|fg|g|h|js|j|k|m|n|p|r|s|t|u|v|y|z|za|zb|zc)(01|0|[1-9]|1[0-8])$/i

export interface SizeWish {
  /** What the size is, for messages: `the diameter`. */
  readonly what: string
  /** A sign may stand in front, and zero is a size: coordinates. */
  readonly signed?: boolean
  /** Zero is a size: a distance from an edge. */
  readonly zero?: boolean
}

/** One number, `1 3/8` and a leading sign included. */
export function readNum(c: Cursor, signed = false): Num | undefined {
  const sign = signed ? c.take('minus', 'plus') : undefined
  const first = c.take('number')
  if (!first) return undefined
  let to = first.to
  const next = c.peek()
  const between = c.setting.text.slice(first.to, next.from)
  if (
    next.kind === 'number' &&
    /^\d+$/.test(first.text) &&
    /^\d+\/\d+$|^[¼½¾⅛⅜⅝⅞]$/.test(next.text) &&
    /^[ \t]{1,2}$/.test(between)
  ) {
    c.index++
    to = next.to
  }
  const from = sign?.from ?? first.from
  const text = c.setting.text.slice(from, to)
  const num = parseNumber(text, from)
  if (num) return num
  return c.mark('not-a-number', { from, to }, `“${show(text)}” is no number`, {
    expected: 'a number such as 2.50 or 1-3/8',
  })
}

/** A length with its unit and tolerance. Marks what is wrong and gives undefined where no size can be had. */
export function readSize(c: Cursor, wish: SizeWish): Size | undefined {
  const open = c.take('open')
  if (open) c.takeDia()
  const sign = !wish.signed && c.at('minus') && c.peek(1).kind === 'number' ? c.take('minus') : undefined
  const question = c.take('unknown')
  const written = c.at('number')
  let num = readNum(c, wish.signed)
  const unknown = question !== undefined || (num !== undefined && c.take('unknown') !== undefined)
  if (!num && question) {
    // A guess for layout only: half an inch or 10 mm.
    const value = c.setting.unit === 'inch' ? 0.5 : 10
    num = { text: '?', value, form: 'whole', decimals: 0, span: spanOf(question) }
  }
  // A number that is none is marked already.
  if (!num && written) return undefined
  if (!num) {
    const piece = c.peek()
    const isNone = piece.kind === 'word' && !isOfTheLanguage(piece.text)
    return c.mark(
      isNone ? 'not-a-size' : 'missing-size',
      spanOf(piece),
      isNone ? `“${show(piece.text)}” is no size` : `${wish.what} is missing`,
      { expected: sizeExample(c.setting.unit) },
    )
  }
  let unit = readUnit(c)
  let tolerance = readTolerance(c, num)
  unit ??= readUnit(c)
  let formRule = readForm(c)
  const bareUnknown = num.text === '?'
  if (open) {
    const shut = c.take('shut')
    const span = { from: open.from, to: shut?.to ?? c.before }
    if (!shut) c.mark('open-bracket', span, 'the bracket is not closed', { expected: ')' })
    tolerance = { kind: 'reference', span }
    formRule ??= readForm(c)
  }
  const size: Size = {
    ...num,
    unit: unit ?? c.setting.unit,
    unitTyped: unit !== undefined,
    mm: num.value * ((unit ?? c.setting.unit) === 'inch' ? 25.4 : 1),
    ...(tolerance ? { tolerance } : {}),
    ...(formRule ? { formRule } : {}),
    ...(unknown || bareUnknown ? { unknown: true } : {}),
  }
  return checked(c, size, wish, sign !== undefined)
}

/** A tolerance that stands after the size's word: `1/4 thick STK`. */
export function withLateTolerance(c: Cursor, size: Size | undefined): Size | undefined {
  if (!size || size.tolerance) return size
  const tolerance = readTolerance(c, size)
  return tolerance ? { ...size, tolerance } : size
}

function checked(c: Cursor, size: Size, wish: SizeWish, negative: boolean): Size | undefined {
  const span = negative ? { from: size.span.from - 1, to: size.span.to } : size.span
  if (negative) {
    return c.mark('negative-size', span, `${wish.what} is negative`, { expected: 'a size above zero' })
  }
  if (!wish.signed && !wish.zero && size.value <= 0) {
    return c.mark('zero-size', span, `${wish.what} is zero`, { expected: 'a size above zero' })
  }
  if (Math.abs(size.mm) > longest) {
    return c.mark('enormous-size', span, `${wish.what} is more than 100 metres`, {
      expected: size.unit === 'inch' ? 'a size below 3937 inches' : 'a size below 100000 mm',
    })
  }
  if (size.unknown) {
    c.mark('still-to-be-measured', size.span, `${wish.what} is still to be measured`, {
      weight: 'look again',
      expected: 'the measured size in place of the question mark',
    })
  }
  return size
}

function readUnit(c: Cursor): Unit | undefined {
  if (c.take('inch')) return 'inch'
  const piece = c.peek()
  const unit = piece.kind === 'word' ? unitWords[piece.text.toLowerCase()] : undefined
  if (!unit) return undefined
  c.index++
  // `in.` with the full stop of an abbreviation
  if (unit === 'inch' && c.peek().text === '.' && !c.peek().gap) c.index++
  return unit
}

const wordTolerances: Readonly<Record<string, 'stock' | 'max' | 'min' | 'basic' | 'reference'>> = {
  stk: 'stock',
  stock: 'stock',
  max: 'max',
  maximum: 'max',
  min: 'min',
  minimum: 'min',
  basic: 'basic',
  bsc: 'basic',
  ref: 'reference',
  reference: 'reference',
}

/** The tolerance that follows a size, if any. */
function readTolerance(c: Cursor, num: Num): Tolerance | undefined {
  const first = c.peek()
  if (first.kind === 'plus-minus') {
    c.index++
    const value = readNum(c)
    if (!value) return toleranceMissing(c, first.from, '± and the tolerance, such as ±.005')
    return { kind: 'plus-minus', value, span: { from: first.from, to: value.span.to } }
  }
  const deviations = (first.kind === 'plus' || first.kind === 'minus') && c.peek(1).kind === 'number'
  if (deviations || atZeroAndMinus(c)) return readUnequal(c)
  if (first.kind === 'slash') {
    c.index++
    const other = readNum(c)
    if (!other) return toleranceMissing(c, first.from, 'the second limit, such as .500/.498')
    const [upper, lower] = other.value > num.value ? [other, num] : [num, other]
    if (upper.value === lower.value) {
      c.mark('equal-limits', { from: num.span.from, to: other.span.to }, 'both limits are the same', {
        expected: 'the largest and the smallest size allowed',
      })
    }
    return { kind: 'limits', upper, lower, span: { from: first.from, to: other.span.to } }
  }
  if (first.kind === 'R' && afterDiameterSign(c, num)) return readRadiusLikeFit(c)
  if (first.kind !== 'word') return undefined
  const kind = wordTolerances[first.text.toLowerCase()]
  if (kind) {
    c.index++
    return { kind, span: spanOf(first) }
  }
  if (fit.test(first.text)) {
    c.index++
    return { kind: 'fit', symbol: first.text, span: spanOf(first) }
  }
  return undefined
}

const formSigns: Readonly<Record<string, FormRequirement['kind']>> = {
  'Ⓔ': 'envelope',
  envelope: 'envelope',
  'Ⓘ': 'independent',
  independent: 'independent',
  independency: 'independent',
}

/** `Ⓔ`, `(E)` or `envelope` after a size; `Ⓘ`, `(I)` or `independent`. */
function readForm(c: Cursor): FormRequirement | undefined {
  const [first, letter, shut] = [c.peek(), c.peek(1), c.peek(2)]
  const bracketed = first.kind === 'open' && shut.kind === 'shut' && /^[EI]$/.test(letter.text)
  const kind = bracketed
    ? formSigns[letter.text === 'E' ? 'Ⓔ' : 'Ⓘ']
    : (formSigns[first.text] ?? formSigns[first.text.toLowerCase()])
  if (!kind) return undefined
  c.index += bracketed ? 3 : 1
  return { kind, span: { from: first.from, to: c.before } }
}

function afterDiameterSign(c: Cursor, num: Num): boolean {
  return /(⌀|[øØ∅Φφ]|\bdia\.?|\bdiameter)\s*$/i.test(
    c.setting.text.slice(Math.max(0, num.span.from - 12), num.span.from),
  )
}

/** `r6` and `R7` after a diameter, which elsewhere would be a radius. */
function readRadiusLikeFit(c: Cursor): Tolerance | undefined {
  const [letter, grade] = [c.peek(), c.peek(1)]
  const symbol = letter.text + grade.text
  if (grade.kind !== 'number' || grade.gap || !fit.test(symbol)) return undefined
  c.index += 2
  return { kind: 'fit', symbol, span: { from: letter.from, to: grade.to } }
}

const isZero = (text: string) => /^(0|0?[.,]0+)$/.test(text)

/** `0 -0.02`, `0/-0.02`: a zero deviation needs no sign (ISO 129-1:2018, from memory). */
function atZeroAndMinus(c: Cursor): boolean {
  if (!c.at('number') || !isZero(c.peek().text)) return false
  const sign = c.peek(1).kind === 'slash' ? 2 : 1
  return c.peek(sign).kind === 'minus' && c.peek(sign + 1).kind === 'number'
}

/** `+.002 -.000`, `+0.1/-0.2`, `-0.02 -0.04`, `+0.14/0`, `0/-0.02`: the signs stay in the digits. */
function readUnequal(c: Cursor): Tolerance | undefined {
  const from = c.peek().from
  const one = readNum(c, true)
  const slash = c.take('slash')
  // without a slash a zero may begin the next phrase: `+0.1 0 from left` is no pair
  const zero = c.at('number') && isZero(c.peek().text) && (slash || !c.isWord(1, 'from', 'apart', 'across', 'up'))
  const other = c.at('plus', 'minus') || zero ? readNum(c, true) : undefined
  if (!one || !other) return toleranceMissing(c, from, 'both deviations, such as +.002 -.000')
  const [upper, lower] = one.value >= other.value && !one.text.startsWith('-') ? [one, other] : order(one, other)
  return { kind: 'unequal', upper, lower, span: { from, to: other.span.to } }
}

const order = (a: Num, b: Num): [Num, Num] => (a.value >= b.value ? [a, b] : [b, a])

function toleranceMissing(c: Cursor, from: number, expected: string): undefined {
  return c.mark('tolerance-incomplete', { from, to: Math.max(c.before, from) }, 'the tolerance is not complete', {
    expected,
  })
}

/** `45°`, `45 deg`; the degree sign may be left out where only an angle can stand. */
export function readAngle(c: Cursor, what: string, bare = false): Angle | undefined {
  const num = readNum(c)
  if (!num) return c.mark('missing-size', spanOf(c.peek()), `${what} is missing`, { expected: 'an angle such as 45°' })
  const signed = takeDegree(c)
  const first = c.peek()
  let tolerance: Tolerance | undefined
  if (first.kind === 'plus-minus') {
    c.index++
    const value = readNum(c)
    if (value) {
      takeDegree(c)
      tolerance = { kind: 'plus-minus', value, span: { from: first.from, to: c.before } }
    } else toleranceMissing(c, first.from, '± and the tolerance, such as ±1/2°')
  }
  if (!signed && !bare) {
    const { to } = num.span
    c.mark('no-degree-sign', num.span, `${what} has no degree sign`, {
      expected: `${num.text}°`,
      mends: [{ label: `write ${num.text}°`, span: { from: to, to }, text: '°' }],
    })
  }
  if (num.value <= 0 || num.value > 360) {
    return c.mark('angle-out-of-range', num.span, `${what} of ${show(num.text)}° cannot be`, {
      expected: 'an angle above 0° and not above 360°',
    })
  }
  return { ...num, ...(tolerance ? { tolerance } : {}) }
}

function takeDegree(c: Cursor): boolean {
  return c.take('degree') !== undefined || c.takeWord('deg', 'degree', 'degrees') !== undefined
}

/** True where an angle with its sign follows. */
export function atAngle(c: Cursor): boolean {
  return c.at('number') && (c.peek(1).kind === 'degree' || c.isWord(1, 'deg', 'degree', 'degrees'))
}

/** `4X`. A count nobody can mean is marked, and undefined. */
export function readCount(c: Cursor): Count | undefined {
  const number = c.take('number')!
  const x = c.take('times')
  const value = Number(number.text)
  const span = { from: number.from, to: x?.to ?? number.to }
  return sensibleCount(c, value, span)
}

export function sensibleCount(c: Cursor, value: number, span: Count['span']): Count | undefined {
  if (Number.isInteger(value) && value >= 1 && value <= mostRepeats) return { value, span }
  return c.mark(
    'count-out-of-range',
    span,
    `${show(c.setting.text.slice(span.from, span.to))} is no count of features`,
    {
      expected: `a whole number from 1 to ${mostRepeats}`,
    },
  )
}
