import { generalTolerance } from '../../../tolerance/general/title-block.ts'
import { sizesOf } from '../../measure/all-sizes.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { quoted } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'wider-than-general',
  weight: 'remark',
  source: 'ISO 2768-1:1989, annex A.3: a larger tolerance is written only where it pays (from memory)',
  about:
    'A tolerance written at a size is usually there because it is finer than the title block’s. One that is wider deserves a look.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size }) => {
      const kind = size.tolerance?.kind
      if (kind !== 'plus-minus' && kind !== 'unequal' && kind !== 'fit') return []
      const own = ownDeviations(size)
      const general = generalTolerance(brief.header, size)
      if (!own || !general.ok || width(own) <= 2 * general.value.plusMinus + 1e-6) return []
      return [
        {
          text: `${quoted(size)} is wider than the title block’s own ${general.value.by}.`,
          span: size.tolerance!.span,
          expected: `${size.text} alone, or a finer tolerance`,
          numbers: [quoted(size), general.value.by],
        },
      ]
    }),
}
