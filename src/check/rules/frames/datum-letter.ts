import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

const UNUSED = ['I', 'O', 'Q']

export const rule: DrawingRule = {
  name: 'datum-letter',
  weight: 'must change',
  source: 'ASME Y14.5-2018 6.3.1: I, O and Q are not used; ISO 5459 advises against them (from memory)',
  about: 'I, O and Q read as figures or as one another, and are not used as datum letters.',
  reads: 'drawing',
  check: (subject) => [
    ...(subject.brief.datums ?? []).flatMap(({ letter }) =>
      UNUSED.includes(letter.text[0]!)
        ? [
            {
              text: `${letter.text} is not used as a datum letter.`,
              span: letter.span,
              expected: 'a letter other than I, O, Q',
            },
          ]
        : [],
    ),
    ...frameFindings(subject, 'datum-letter'),
  ],
}
