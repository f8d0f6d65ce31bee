import { fitLimits } from '../../../tolerance/iso286/limits.ts'
import { sizesOf } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'fit-unknown',
  weight: 'must change',
  source: 'ISO 286-1:2010 and -2:2010, tables of limit deviations',
  about: 'A fit symbol is one that the standard gives at this size; gauges exist for no other.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size }) => {
      const own = size.tolerance
      if (own?.kind !== 'fit') return []
      const read = fitLimits(own.symbol, size.mm)
      if (read.ok) return []
      const { text, expected, instead } = read.problem
      return [
        {
          text,
          span: own.span,
          ...(expected ? { expected } : {}),
          ...(instead ? { mends: [{ label: `Write ${instead}`, span: own.span, text: instead }] } : {}),
        },
      ]
    }),
}
