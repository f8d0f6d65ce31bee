import type { Feature } from '../../../brief/brief.ts'
import { locate } from '../../../brief/locate.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'feature-repeated',
  weight: 'must change',
  source: 'ISO 129-1:2018, 4.1: every feature is dimensioned once (from memory)',
  about: 'The same work stated twice is a slip, or one of the two was meant to stand somewhere else.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((feature, i) => {
      const first = brief.features.findIndex((f) => said(f) === said(feature))
      if (first === i) return []
      const { line } = locate(brief.text, brief.features[first]!.span.from)
      const { from, to } = feature.span
      const end = brief.text[to] === '\n' ? to + 1 : to
      return [
        {
          text: `The ${feature.kind === 'flat-cut' ? 'flat' : feature.kind} is stated here and in line ${line}.`,
          span: feature.span,
          expected: 'one statement, or another place',
          mends: [{ label: 'Drop this statement', span: { from, to: end }, text: '' }],
        },
      ]
    }),
}

/** What a statement says, wherever it stands. */
const said = (feature: Feature): string =>
  JSON.stringify(feature, (key, value: unknown) => (key === 'span' || key === 'label' ? undefined : value))
