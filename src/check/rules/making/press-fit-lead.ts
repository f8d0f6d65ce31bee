import { fitLimits } from '../../../tolerance/iso286/limits.ts'
import { quoted } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'press-fit-lead',
  weight: 'look again',
  source: 'DIN 7190-1, press fits: lead of a few degrees at the pressed end (from memory)',
  about: 'A shaft larger than its hole needs a lead to find its way in; a broken edge scrapes instead.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const { stock } = brief
    if (stock?.kind !== 'turned') return []
    const ends = [
      { step: stock.steps[0], at: part.body.box.min },
      { step: stock.steps[stock.steps.length - 1], at: part.body.box.max },
    ]
    const k = part.axis?.direction.findIndex((c) => Math.abs(c) > 0.5) ?? 0
    const axis = k as 0 | 1 | 2
    return ends.flatMap(({ step, at }, i) => {
      const own = step?.diameter.tolerance
      if (!step || own?.kind !== 'fit' || (i === 1 && stock.steps.length === 1)) return []
      const limits = fitLimits(own.symbol, step.diameter.mm)
      if (!limits.ok || limits.value.of !== 'shaft' || limits.value.lowerMicrons <= 5) return []
      const chamfered = part.features.some(
        (f) =>
          f.feature?.kind === 'chamfer' &&
          f.members.some(
            (m) => Math.abs(m.point[axis] - at[axis]) < 1e-6 && radius(m.point, axis) > 0.4 * step.diameter.mm,
          ),
      )
      if (chamfered) return []
      return [
        {
          text: `${step.name.text}, ⌀${quoted(step.diameter)}, is pressed in over an end without a lead.`,
          span: step.span,
          expected: `chamfer   ${i === 0 ? 'left' : 'right'} face outer edge: 2 × 15°`,
          numbers: [quoted(step.diameter)],
        },
      ]
    })
  },
}

const radius = (p: readonly [number, number, number], k: 0 | 1 | 2): number =>
  Math.hypot(...[0, 1, 2].filter((i) => i !== k).map((i) => p[i as 0 | 1 | 2]))
