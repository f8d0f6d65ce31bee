import { datumsOf } from '../../measure/framed.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-feature-twice',
  weight: 'must change',
  source: 'ASME Y14.5-2018 6.3.1, ISO 5459: one letter for a datum feature (from memory)',
  about: 'One feature with two letters is one datum under two names; frames that seem to differ mean the same.',
  reads: 'drawing',
  check: (subject) => {
    const all = datumsOf(subject)
    return all.flatMap(({ letter, feature }, i): Finding[] => {
      const first = feature && all.slice(0, i).find((d) => d.feature?.id === feature.id && d.letter !== letter)
      if (!feature || !first) return []
      return [
        {
          text: `${feature.id} is datum ${first.letter} already; here it is datum ${letter} too.`,
          span: subject.brief.datums![i]!.letter.span,
          expected: `datum ${first.letter} in all frames`,
          numbers: [first.letter, letter],
        },
      ]
    })
  },
}
