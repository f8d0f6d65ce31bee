import { borderOf } from '../../../sizes/geometric/border.ts'
import { datumsOf, heldFrames } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-on-itself',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 7, ISO 5459: a feature is held to datums of other features (from memory)',
  about:
    'A feature cannot be held to the datum that is taken from itself: it would always lie true. A profile all around holds the sides along its border, not the surface itself.',
  reads: 'drawing',
  check: (subject) => {
    const own = new Map(datumsOf(subject).map(({ letter, feature }) => [letter, feature?.id]))
    return heldFrames(subject).flatMap(({ said, feature }) =>
      said.frame.rows.flatMap((row) =>
        row.datums.flatMap(({ letters, span }) =>
          feature &&
          !borderOf(subject.part, said, feature) &&
          letters.length === 1 &&
          own.get(letters[0]!) === feature.id
            ? [
                {
                  text: `The frame holds ${feature.id} to datum ${letters[0]}, which is taken from ${feature.id} itself.`,
                  span,
                  expected: 'the letter of another feature',
                },
              ]
            : [],
        ),
      ),
    )
  },
}
