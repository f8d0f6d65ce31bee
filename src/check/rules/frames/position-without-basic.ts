import { framedSizes } from '../../../sizes/geometric/basic-sizes.ts'
import { quoted } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'position-without-basic',
  weight: 'must change',
  source: 'ASME Y14.5-2018 10.2, ISO 1101:2017 clause 11, ISO 5458: located by theoretically exact sizes (from memory)',
  about:
    'What a frame of position, profile or angularity holds is located by basic sizes. A tolerance at such a size would hold the place twice, and the two would disagree.',
  reads: 'drawing',
  check: ({ part }) =>
    framedSizes(part).flatMap(({ size, by, chosen }) => {
      const { tolerance } = size
      const located = chosen.kind !== 'diameter' && chosen.kind !== 'radius' && chosen.kind !== 'width'
      if (!located || !tolerance || tolerance.kind === 'basic' || tolerance.kind === 'reference') return []
      return [
        {
          text: `${'mm' in size ? quoted(size) : size.text} ${by.allAround ? `shapes the border of ${by.of.text}` : `locates ${by.of.text}`}, which a frame of ${by.frame.characteristic} holds; the size must be basic.`,
          span: 'span' in tolerance ? tolerance.span : size.span,
          expected: `${size.text} without a tolerance`,
        },
      ]
    }),
}
