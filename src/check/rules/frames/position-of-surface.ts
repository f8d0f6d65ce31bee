import { heldFrames } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'position-of-surface',
  weight: 'must change',
  source:
    'ASME Y14.5-2018 section 10: position locates features of size; ISO 1101 locates plane surfaces with it too (from memory)',
  about:
    'In ASME practice position locates the axis or middle of a feature of size. A plane face is located by a profile.',
  reads: 'drawing',
  check: (subject) =>
    subject.brief.header.practice === 'ASME'
      ? heldFrames(subject).flatMap(({ said, feature }) =>
          said.frame.characteristic === 'position' && feature?.kind === 'plane'
            ? [
                {
                  text: `Position cannot locate ${feature.id}, which is a plane face.`,
                  span: said.frame.span,
                  expected: 'profile of a surface with the same datums',
                },
              ]
            : [],
        )
      : [],
}
