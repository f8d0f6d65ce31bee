import { sizesOf } from '../../measure/all-sizes.ts'
import { typed } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'fraction-on-metric',
  weight: 'must change',
  source: 'ISO 129-1:2018; ASME Y14.5-2018, 4.3.1: millimetres are decimal (from memory)',
  about: 'Millimetres are written as decimals; a fraction of a millimetre is taken for inches.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size, in: of }) => {
      if (size.unit !== 'mm' || size.form !== 'fraction') return []
      // The digits of a thread such as 1/4-20 are inches by their own right.
      if (of.kind === 'hole' && of.thread && of.diameter === size) return []
      const write = typed(size.mm, 'mm')
      return [
        {
          text: `${size.text} is a fraction of a millimetre.`,
          span: size.span,
          expected: `${write}, or ${size.text} in for inches`,
          mends: [
            { label: `Write ${write}`, span: size.span, text: write },
            { label: 'It is in inches', span: size.span, text: `${size.text} in` },
          ],
        },
      ]
    }),
}
