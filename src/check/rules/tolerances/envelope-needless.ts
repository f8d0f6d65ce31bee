import { sizesOf } from '../../measure/all-sizes.ts'
import { quoted } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'envelope-needless',
  weight: 'look again',
  source: 'ASME Y14.5-2018 5.8, Rule #1; ISO 8015:2011 5.5, independency; ISO 14405-1:2016 (from memory)',
  about:
    'ASME holds every feature of size within its envelope, ISO none: Ⓔ on an ASME sheet and Ⓘ on an ISO sheet say what holds anyway, and make the reader doubt the sizes without it.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size }) => {
      const { formRule } = size
      const { practice } = brief.header
      if (!formRule || (formRule.kind === 'envelope') !== (practice === 'ASME')) return []
      return [
        {
          text:
            practice === 'ASME'
              ? `${quoted(size)}: Rule #1 holds the envelope without Ⓔ.`
              : `${quoted(size)}: on an ISO sheet size and form are independent without Ⓘ.`,
          span: formRule.span,
          expected: `the size without ${practice === 'ASME' ? 'Ⓔ' : 'Ⓘ'}`,
          mends: [{ label: 'Take it away', span: formRule.span, text: '' }],
          numbers: [quoted(size)],
        },
      ]
    }),
}
