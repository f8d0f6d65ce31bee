import { numbersIn } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'point-lost',
  weight: 'must change',
  source: 'ASME Y14.5-2018 4.3, ISO 129-1:2018: a zero leads before the decimal sign only (from memory)',
  about:
    'A whole number does not begin with a zero. Where one does, its decimal point was lost, and the size is ten times as large or more.',
  reads: 'brief',
  check: ({ brief }) =>
    numbersIn(brief).flatMap(({ text, span }) => {
      if (!/^[+\-−]?0\d+$/.test(text)) return []
      const write = text.replace(/0(?=\d)/, brief.header.decimalSign === ',' ? '0,' : '0.')
      return [
        {
          text: `${text} begins with a zero and has no point; is ${write} meant?`,
          span,
          expected: write,
          mends: [{ label: `Write ${write}`, span, text: write }],
          numbers: [text],
        },
      ]
    }),
}
