import { isFeatureOfSize } from '../../measure/form-rule.ts'
import { quoted } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'envelope-of-no-size',
  weight: 'must change',
  source: 'ISO 14405-1:2016, ISO 14405-2; ASME Y14.5-2018 5.8: envelopes are of features of size (from memory)',
  about:
    'An envelope is a perfect cylinder or two parallel planes. A step, a depth, a radius or a place has none; its form is held by a geometric tolerance.',
  reads: 'drawing',
  check: ({ part }) =>
    part.chosen.flatMap((c) => {
      if (!('size' in c) || !c.size.formRule) return []
      const exact = c.size.tolerance?.kind === 'basic' || c.size.tolerance?.kind === 'reference'
      if (isFeatureOfSize(part, c) && !exact) return []
      const { kind, span } = c.size.formRule
      return [
        {
          text: exact
            ? `${quoted(c.size)} has no limits that could hold a form.`
            : `${quoted(c.size)} is no size of a feature: ${kind === 'envelope' ? 'it has no envelope' : 'nothing would hold its form'}.`,
          span,
          expected: 'the sign at a diameter, a width or a thickness',
          mends: [{ label: 'Take it away', span, text: '' }],
          numbers: [quoted(c.size)],
        },
      ]
    }),
}
