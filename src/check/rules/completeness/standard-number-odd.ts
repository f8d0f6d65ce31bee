import { citationsOf, meant } from '../../measure/citations.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'standard-number-odd',
  weight: 'look again',
  source: 'ISO, EN and ASTM catalogues, the numbers that drawings call up often (from memory)',
  about:
    'A standard’s number with a digit too many calls up another standard, or none. Asked only where taking one digit away leaves a number that is called up often.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    citationsOf(header).flatMap((citation) => {
      const instead = meant(citation)
      if (!instead) return []
      const { text, number, span } = citation
      const write = text.replace(number, instead)
      return [
        {
          text: `${text} is not a number that drawings call up; is ${write} meant?`,
          span,
          expected: write,
          mends: [{ label: `Write ${write}`, span, text: write }],
          numbers: [number],
        },
      ]
    }),
}
