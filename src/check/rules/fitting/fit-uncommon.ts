import { fitLimits } from '../../../tolerance/iso286/limits.ts'
import { sizesOf } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

/** Classes that the annex of the standard recommends for general use; gauges and reamers are on the shelf for them. */
const common = new Set(
  (
    'G7 H6 H7 H8 H9 H10 H11 JS7 K7 M7 N7 P7 R7 S7 U7 F8 E9 D9 D10 C11 B11 A11 F7 E8 D8 JS6 K6 M6 N6 P6 N9 P9 JS9 H12 H13 H14 JS12 JS13 JS14 ' +
    'g5 h5 js5 k5 m5 n5 p5 f6 g6 h6 js6 j6 k6 m6 n6 p6 r6 s6 t6 u6 x6 e7 f7 h7 js7 k7 m7 n7 p7 s7 u7 d8 e8 f8 h8 c9 d9 e9 h9 b9 d10 h10 a11 b11 c11 d11 h11 ' +
    'h12 h13 h14 js9 js12 js13 js14'
  ).split(' '),
)

export const rule: BriefRule = {
  name: 'fit-uncommon',
  weight: 'remark',
  source: 'ISO 286-1:2010, annex B: tolerance classes for general use; ANSI B4.2 (from memory)',
  about: 'Reamers and gauges are kept for the common classes. Another one is made to order.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size }) => {
      const own = size.tolerance
      if (own?.kind !== 'fit' || common.has(own.symbol) || !fitLimits(own.symbol, size.mm).ok) return []
      return [
        {
          text: `${own.symbol} is a class that few shops have gauges for.`,
          span: own.span,
          expected: /^[A-Z]/.test(own.symbol)
            ? 'H7, H8, H9 or another common class'
            : 'f7, g6, h6, k6, n6, p6 or another common class',
          numbers: [size.text, own.symbol],
        },
      ]
    }),
}
