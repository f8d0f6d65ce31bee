import type { Num, Size } from '../../../brief/size.ts'
import { sizesOf } from '../../measure/all-sizes.ts'
import type { BriefRule, Finding } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'decimals-differ',
  weight: 'look again',
  source:
    'ASME Y14.5-2018 4.3.1, 4.3.2, 5.3.1, 5.3.2: in inches a size and its tolerance have as many decimals, in millimetres the two deviations or limits have; ISO 129-1:2018, deviations (from memory)',
  about:
    'In inches a size and its tolerance are written to the same number of decimals. In millimetres they need not be, but zeros beyond those of the tolerance say nothing; two deviations or two limits agree in both.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size }) => {
      const { tolerance: t } = size
      if (size.form === 'fraction' || !t || size.unknown) return []
      const sign = brief.header.decimalSign === ',' ? ',' : '.'
      if (t.kind === 'limits') return agree([t.upper, t.lower], sign, 'The limits', size)
      const others = t.kind === 'plus-minus' ? [t.value] : t.kind === 'unequal' ? [t.upper, t.lower] : []
      if (others.length === 0 || others.some((n) => n.form === 'fraction')) return []
      if (size.unit === 'inch') return agree([size, ...others], sign, 'The size and its tolerance', size)
      const own = agree(
        others.filter((n) => n.value !== 0),
        sign,
        'The deviations',
        size,
      )
      return own.length > 0 ? own : idleZeros(size, Math.max(...others.map((n) => n.decimals)))
    }),
}

/** Asks for zeros where one of the numbers has fewer decimals than another. */
function agree(numbers: readonly Num[], sign: string, what: string, size: Size): Finding[] {
  const most = Math.max(...numbers.map((n) => n.decimals))
  const short = numbers.filter((n) => n.decimals < most && n.form !== 'fraction')
  if (short.length === 0) return []
  return [
    {
      text: `${what} are not written to the same number of decimals: ${numbers.map((n) => n.text).join(', ')}.`,
      span: short[0]!.span,
      expected: short.map((n) => padded(n.text, most, sign)).join(', '),
      mends: short.map((n) => {
        const text = padded(n.text, most, sign)
        return { label: `Write ${text}`, span: n.span, text }
      }),
      numbers: [size.text, ...numbers.map((n) => n.text)],
    },
  ]
}

/** In millimetres: zeros at the end of the size that go further than its tolerance. */
function idleZeros(size: Size, decimals: number): Finding[] {
  const { text, span } = size
  if (size.decimals <= decimals || !/[.,]\d*0$/.test(text)) return []
  const write = text.replace(/0+$/, '').replace(/[.,]$/, '')
  return [
    {
      text: `The zeros of ${text} go further than its tolerance.`,
      span,
      expected: write,
      mends: [{ label: `Write ${write}`, span, text: write }],
      numbers: [text],
    },
  ]
}

const padded = (text: string, decimals: number, sign: string): string => {
  const [whole, digits = ''] = text.split(/[.,]/)
  return `${whole}${sign}${digits.padEnd(decimals, '0')}`
}
