import { readIso2768 } from '../../../tolerance/general/iso2768.ts'
import { callsIso22081, readIso22081 } from '../../../tolerance/general/iso22081.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'general-class-unknown',
  weight: 'must change',
  source: 'ISO 2768-1:1989, table 1; ISO 22081:2021',
  about: 'The title block calls up a class of general tolerances that there is.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.header.general.flatMap((g) => {
      if (g.kind !== 'standard' || !/2768|22081/.test(g.text)) return []
      const read = callsIso22081(g.text) ? readIso22081(g.text) : readIso2768(g.text)
      if (read.ok) return []
      const { text, expected, instead } = read.problem
      return [
        {
          text,
          span: g.span,
          ...(expected ? { expected } : {}),
          ...(instead ? { mends: [{ label: `Write ${instead}`, span: g.span, text: instead }] } : {}),
        },
      ]
    }),
}
