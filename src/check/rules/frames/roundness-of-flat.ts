import { heldFrames } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

const ROUND = ['circularity', 'cylindricity', 'coaxiality']

export const rule: DrawingRule = {
  name: 'roundness-of-flat',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 8, ISO 1101:2017 clause 17 (from memory)',
  about:
    'Circularity, cylindricity and coaxiality hold round features; a flat face has flatness, two sides have symmetry or position.',
  reads: 'drawing',
  check: (subject) =>
    heldFrames(subject).flatMap(({ said, feature }) => {
      const { characteristic, span } = said.frame
      if (!feature || feature.kind === 'round' || !ROUND.includes(characteristic)) return []
      return [
        {
          text: `${feature.id[0]!.toUpperCase()}${feature.id.slice(1)} is not round and has no ${characteristic}.`,
          span,
          expected:
            feature.kind === 'plane' ? 'flatness, or a round feature' : 'position or symmetry, or a round feature',
        },
      ]
    }),
}
