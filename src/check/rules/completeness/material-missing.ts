import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'material-missing',
  weight: 'must change',
  source: 'ASME Y14.100-2017, material on the engineering drawing (from memory)',
  about: 'A detail drawing states its material. Without it the part can be neither bought, weighed nor quoted.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.header.material
      ? []
      : [
          {
            text: 'The drawing names no material.',
            expected: 'material, with its specification: material  S235JR EN 10025-2',
          },
        ],
}
