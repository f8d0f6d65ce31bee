import { heldFrames } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'line-direction-open',
  weight: 'look again',
  source: 'ISO 1101:2017 clause 13, intersection planes: the direction of line elements is stated (from memory)',
  about:
    'The lines of a flat face run every way. On an ISO sheet a frame of straightness or of a line’s profile must say along which of them it is measured; a note says it, or flatness holds them all.',
  reads: 'drawing',
  check: (subject) => {
    const { header } = subject.brief
    if (
      header.practice !== 'ISO' ||
      header.notes.some((n) => /\b(line elements?|straightness|line profile)\b/i.test(n.text))
    )
      return []
    return heldFrames(subject).flatMap(({ said, feature }) => {
      const { characteristic, span } = said.frame
      if (feature?.kind !== 'plane' || (characteristic !== 'straightness' && characteristic !== 'profile of a line'))
        return []
      const instead = characteristic === 'straightness' ? 'flatness' : 'profile of a surface'
      return [
        {
          text: `The ${characteristic} of ${feature.id} does not say along which lines of the face.`,
          span,
          expected: `${instead}, or a note: Line elements of ${feature.id} measured parallel to …`,
        },
      ]
    })
  },
}
