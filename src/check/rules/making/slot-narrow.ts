import { slotEndsOf } from '../../measure/cuts.ts'
import type { DrawingRule } from '../../rule.ts'

const REACH = 5

export const rule: DrawingRule = {
  name: 'slot-narrow',
  weight: 'look again',
  source: 'Machinery’s Handbook, end mills: reach of about 4 to 5 diameters (from memory)',
  about: 'A slot is milled with a cutter of its width, which must reach through it.',
  reads: 'drawing',
  check: ({ part }) => {
    const seen = new Set<string>()
    return slotEndsOf(part).flatMap(({ of, callout, deep, r }) => {
      if (callout.kind !== 'slot' || deep <= 2 * REACH * r + 1e-6 || seen.has(of.id)) return []
      seen.add(of.id)
      return [
        {
          text: `A slot ${callout.width.text} wide is cut ${(deep / (2 * r)).toFixed(0)} widths deep.`,
          span: callout.width.span,
          expected: `at most ${REACH} widths`,
          feature: of.id,
          numbers: [callout.width.text, (deep / (2 * r)).toFixed(1)],
        },
      ]
    })
  },
}
