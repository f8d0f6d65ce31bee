import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'projection-unusual',
  weight: 'look again',
  source: 'ASME Y14.3-2012: third angle projection (from memory)',
  about: 'Readers of ASME drawings expect the right view at the right. First angle there makes left-handed parts.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.practice === 'ASME' && header.projection === 'first angle'
      ? [
          {
            text: 'An ASME sheet in first angle projection.',
            ...(header.said?.practice ? { span: header.said.practice } : {}),
            expected: 'practice ASME, in third angle',
          },
        ]
      : [],
}
