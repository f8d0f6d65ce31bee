import { characteristics } from '../../../brief/frame/frame.ts'
import { datumsOf, heldFrames } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'runout-without-axis',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 12, ISO 1101:2017 clause 17: runout is about a datum axis (from memory)',
  about:
    'Runout is what an indicator shows while the part turns about a datum axis: one of the datums must be a round feature.',
  reads: 'drawing',
  check: (subject) => {
    const kinds = new Map(datumsOf(subject).map(({ letter, feature }) => [letter, feature?.kind]))
    return heldFrames(subject).flatMap(({ said }) => {
      if (characteristics[said.frame.characteristic].family !== 'runout') return []
      return said.frame.rows.flatMap((row) => {
        const letters = row.datums.flatMap((d) => d.letters)
        const known = letters.flatMap((letter) => kinds.get(letter) ?? [])
        if (known.length < letters.length || letters.length === 0 || known.includes('round')) return []
        return [
          {
            text: `Runout of ${said.of.text} refers to ${letters.join(' and ')}, and ${letters.length === 1 ? 'that has' : 'those have'} no axis to turn about.`,
            span: row.span,
            expected: 'the letter of a round feature',
          },
        ]
      })
    })
  },
}
