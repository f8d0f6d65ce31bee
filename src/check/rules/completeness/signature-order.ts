import type { Signature } from '../../../brief/brief.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'signature-order',
  weight: 'must change',
  source: 'common practice, no source',
  about:
    'A drawing is drawn, then checked, then approved; dates that run the other way were not written when they say.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const order = (['drawn', 'checked', 'approved'] as const).flatMap((word) => {
      const day = dayOf(header[word])
      return day === undefined ? [] : [{ word, day, date: header[word]!.date! }]
    })
    return order.flatMap((later, i) => {
      const earlier = order[i - 1]
      if (!earlier || later.day >= earlier.day) return []
      return [
        {
          text: `It was ${later.word} on ${later.date.text}, before it was ${earlier.word} on ${earlier.date.text}.`,
          span: later.date.span,
          expected: `a date not before ${earlier.date.text}`,
        },
      ]
    })
  },
}

/** Days that can be compared: dates by ISO 8601. */
function dayOf(signature: Signature | undefined): string | undefined {
  return /^\d{4}-\d{2}-\d{2}$/.exec(signature?.date?.text ?? '')?.[0]
}
