import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'title-missing',
  weight: 'must change',
  source: 'ISO 7200:2004, 5.2: title, mandatory; ASME Y14.1: title block (from memory)',
  about: 'The title block carries the name of the part.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.header.part ? [] : [{ text: 'The drawing has no title.', expected: 'part      Motor bracket' }],
}
