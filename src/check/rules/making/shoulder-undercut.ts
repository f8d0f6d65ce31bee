import type { Feature, TurnedStep } from '../../../brief/brief.ts'
import { standardTolerance } from '../../../tolerance/iso286/grades.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { groovesAt } from '../../measure/relief.ts'
import { quoted } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'shoulder-undercut',
  weight: 'look again',
  source: 'DIN 509, undercuts; bearing makers’ fillet sizes at shoulders (from memory)',
  about:
    'A seat ground up to a shoulder needs an undercut for the wheel, or a fillet smaller than the mating part’s corner.',
  reads: 'brief',
  check: ({ brief }) => {
    const { stock } = brief
    if (stock?.kind !== 'turned') return []
    if (brief.header.notes.some((n) => /\b(undercut|relief|fillet|DIN 509)\b/i.test(n.text))) return []
    return stock.steps.flatMap((step, i) => {
      const own = ownDeviations(step.diameter)
      const it6 = standardTolerance('6', step.diameter.mm)
      if (!own || it6 === undefined || width(own) > it6 / 1000 + 1e-9) return []
      const shoulders = [stock.steps[i - 1], stock.steps[i + 1]].filter(
        (n): n is TurnedStep => !!n && n.diameter.mm > step.diameter.mm + 1e-6,
      )
      if (shoulders.length === 0 || isRelieved(brief.features, step, shoulders)) return []
      return [
        {
          text: `${step.name.text}, ⌀${quoted(step.diameter)}, runs up to the shoulder of ${shoulders[0]!.name.text} without undercut or fillet.`,
          span: step.span,
          expected: `groove    ${step.name.text}: an undercut at the shoulder, a fillet smaller than the mating corner, or a note: ${
            brief.header.practice === 'ASME'
              ? 'Undercut .03 MAX permitted at seats.'
              : 'Undercuts DIN 509-F 0.6 × 0.3 at the seats.'
          }`,
          numbers: [quoted(step.diameter)],
        },
      ]
    })
  },
}

/** A groove in the step, or a fillet at one of the shoulders. */
function isRelieved(features: readonly Feature[], step: TurnedStep, shoulders: readonly TurnedStep[]): boolean {
  if (groovesAt(features, step, shoulders).length > 0) return true
  return features.some(
    (f) =>
      f.kind === 'fillet' &&
      f.edges.some((e) => [step, ...shoulders].some((s) => e.text.toLowerCase().includes(s.name.text.toLowerCase()))),
  )
}
