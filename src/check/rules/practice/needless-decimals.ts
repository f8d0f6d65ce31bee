import { sizesOf } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'needless-decimals',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.3: digits agree with the tolerance; ISO 80000-1, rounding (from memory)',
  about:
    'Microns or tenths of a thousandth without a tolerance of their own come from a calculator, not from a drafter.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size, in: of }) => {
      if (size.tolerance || size.unknown || size.form !== 'decimal') return []
      if (of.kind === 'hole' && of.thread && of.diameter === size) return []
      if (size.decimals < (size.unit === 'inch' ? 4 : 3)) return []
      if (brief.header.general.some((g) => g.kind === 'decimals' && g.decimals === size.decimals)) return []
      return [
        {
          text: `${size.text} has more digits than anything here holds it to.`,
          span: size.span,
          expected: 'fewer decimals, or a tolerance beside it',
          numbers: [size.text],
        },
      ]
    }),
}
