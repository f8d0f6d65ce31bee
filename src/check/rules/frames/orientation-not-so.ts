import { dot } from '../../../geometry/vec3.ts'
import { locatedBy } from '../../measure/datum-reach.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'orientation-not-so',
  weight: 'must change',
  source:
    'ASME Y14.5-2018 section 9, ISO 1101:2017 clause 17: square at 90°, parallel at 0°, angularity between (from memory)',
  about:
    'Perpendicularity holds what is drawn square to its first datum, parallelism what is drawn parallel to it. On a feature that lies otherwise the frame contradicts the drawing.',
  reads: 'drawing',
  check: (subject) =>
    locatedBy(subject, (c) => c === 'perpendicularity' || c === 'parallelism').flatMap((l): Finding[] => {
      const [own] = l.elements
      const datum = l.datums[0]?.elements[0]
      if (!own || !datum) return []
      const along = Math.abs(dot(own.direction, datum.direction))
      // A normal stands square to its plane, an axis lies in its own line.
      const alike = own.kind === datum.kind
      const parallel = alike ? along > 1 - 1e-9 : along < 1e-6
      const square = alike ? along < 1e-6 : along > 1 - 1e-9
      const { characteristic } = l.held.said.frame
      if (characteristic === 'perpendicularity' ? square : parallel) return []
      const is = parallel ? 'parallel' : square ? 'square' : 'at an angle'
      const instead = parallel ? 'parallelism' : square ? 'perpendicularity' : 'angularity, with the basic angle'
      return [
        {
          text: `${l.held.feature.id} is drawn ${is} to datum ${l.datums[0]!.name}, and its frame says ${characteristic}.`,
          span: l.held.said.frame.span,
          expected: instead,
          numbers: [characteristic, l.datums[0]!.name],
        },
      ]
    }),
}
