import type { Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Angle, Num, Size } from '../brief/size.ts'
import { generalAngle, generalTolerance, type SizeKind } from '../tolerance/general/title-block.ts'
import type { Dimension } from './dimension.ts'

export interface Toleranced {
  readonly tolerance: NonNullable<Dimension['tolerance']>
  readonly marks: readonly Mark[]
}

const NONE = { upper: 0, lower: 0, from: 'none' } as const

/** Deviations of a length in mm, and what they come from. Fit symbols keep their numbers for the fit tables. */
export function toleranceOf(size: Size, header: Header, kind: SizeKind = 'length'): Toleranced {
  const own = size.tolerance
  const mm = (num: Num) => num.value * (size.unit === 'inch' ? 25.4 : 1)
  const marks: Mark[] = []
  switch (own?.kind) {
    case 'plus-minus': {
      const value = mm(own.value)
      if (Math.abs(value) >= size.mm) marks.push(tooLarge(size, `±${own.value.text}`, own.span))
      return { tolerance: { upper: value, lower: -value, from: 'brief' }, marks }
    }
    case 'unequal': {
      const [upper, lower] = [mm(own.upper), mm(own.lower)]
      // The reader sorts them by value; the order typed is in their places. Signs that differ leave no doubt.
      if (own.upper.span.from > own.lower.span.from && upper * lower > 0) {
        const span = { from: own.lower.span.from, to: own.upper.span.to }
        const text = `${own.upper.text}/${own.lower.text}`
        marks.push({
          rule: 'limits-reversed',
          weight: 'must change',
          text: `The deviations ${own.lower.text} and ${own.upper.text} stand with the smaller first.`,
          span,
          expected: text,
          mends: [{ label: 'Turn the deviations round', span, text }],
          source: 'ASME Y14.5-2018 5.3, ISO 129-1:2018: the upper deviation above the lower (from memory)',
        })
      }
      if (Math.max(Math.abs(upper), Math.abs(lower)) >= size.mm) marks.push(tooLarge(size, own.upper.text, own.span))
      return { tolerance: { upper, lower, from: 'brief' }, marks }
    }
    case 'limits': {
      const [a, b] = [mm(own.upper), mm(own.lower)]
      const [upper, lower] = [Math.max(a, b) - size.mm, Math.min(a, b) - size.mm]
      // The reader sorts them by value; the order typed is in their places.
      if (a < b || own.upper.span.from > own.lower.span.from) {
        const [larger, smaller] = a < b ? [own.lower, own.upper] : [own.upper, own.lower]
        const text = `${larger.text}/${smaller.text}`
        const from = Math.min(larger.span.from, smaller.span.from)
        const span = { from, to: Math.max(larger.span.to, smaller.span.to) }
        marks.push({
          rule: 'limits-reversed',
          weight: 'must change',
          text: `The limits ${smaller.text}/${larger.text} stand with the smaller first.`,
          span,
          expected: text,
          mends: [{ label: 'Turn the limits round', span, text }],
          source: 'ASME Y14.5-2018 5.3: the larger limit above the smaller (from memory)',
        })
      }
      if (Math.min(a, b) <= 0 || Math.max(a, b) >= 2 * Math.max(Math.min(a, b), 1e-9))
        marks.push(tooLarge(size, `${own.upper.text}/${own.lower.text}`, own.span))
      return { tolerance: { upper, lower, from: 'brief' }, marks }
    }
    case 'fit':
      return { tolerance: { upper: 0, lower: 0, from: 'fit' }, marks }
    case 'stock':
      return { tolerance: { upper: 0, lower: 0, from: 'stock' }, marks }
    case 'max':
    case 'min':
    case 'basic':
    case 'reference':
      return { tolerance: NONE, marks }
    case undefined:
      break
  }
  if (size.unknown) return { tolerance: NONE, marks }
  const general = generalTolerance(header, size, kind)
  if (!general.ok) {
    const { problem } = general
    if (isClassMarked(header, problem.span)) return { tolerance: NONE, marks }
    marks.push({
      rule: 'no-tolerance-class',
      weight: 'look again',
      text: problem.text,
      span: size.span,
      ...(problem.expected ? { expected: problem.expected } : {}),
      source: 'ASME Y14.5-2018 4.1(a): every size has a tolerance (from memory)',
    })
    return { tolerance: NONE, marks }
  }
  const { plusMinus, by } = general.value
  if (plusMinus >= size.mm) marks.push(tooLarge(size, by, size.span))
  return { tolerance: { upper: plusMinus, lower: -plusMinus, from: 'general' }, marks }
}

/** The class that the title block calls up cannot be read: that is marked once, where it stands. */
const isClassMarked = (header: Header, span: Mark['span']): boolean =>
  header.general.some((g) => g.kind === 'standard' && g.span === span && /2768|22081/.test(g.text))

function tooLarge(size: Num, tolerance: string, span: Mark['span'] & {}): Mark {
  return {
    rule: 'tolerance-larger-than-size',
    weight: 'must change',
    text: `The tolerance ${tolerance} is as large as the size ${size.text} itself.`,
    span,
    expected: 'a tolerance well under the size',
    source: 'common practice, no source',
  }
}

/** Deviations of an angle in degrees; `legMm` is the shorter leg. */
export function angleTolerance(angle: Angle, header: Header, legMm: number): Toleranced {
  const own = angle.tolerance
  if (own?.kind === 'plus-minus') {
    const { value, text } = own.value
    const marks = Math.abs(value) >= angle.value ? [tooLarge(angle, `±${text}`, own.span)] : []
    return { tolerance: { upper: value, lower: -value, from: 'brief' }, marks }
  }
  if (own?.kind === 'unequal')
    return { tolerance: { upper: own.upper.value, lower: own.lower.value, from: 'brief' }, marks: [] }
  if (own?.kind === 'limits') {
    const [upper, lower] = [own.upper.value - angle.value, own.lower.value - angle.value]
    return { tolerance: { upper, lower, from: 'brief' }, marks: [] }
  }
  if (own) return { tolerance: NONE, marks: [] }
  const general = generalAngle(header, angle, legMm)
  if (general.ok) {
    const { plusMinus } = general.value
    return { tolerance: { upper: plusMinus, lower: -plusMinus, from: 'general' }, marks: [] }
  }
  const { problem } = general
  if (isClassMarked(header, problem.span)) return { tolerance: NONE, marks: [] }
  return {
    tolerance: NONE,
    marks: [
      {
        rule: 'no-tolerance-class',
        weight: 'look again',
        text: problem.text,
        span: angle.span,
        ...(problem.expected ? { expected: problem.expected } : {}),
        source: 'ASME Y14.5-2018 4.1(a): every size has a tolerance (from memory)',
      },
    ],
  }
}
