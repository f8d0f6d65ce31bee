import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'approval-missing',
  weight: 'remark',
  source: 'ISO 7200:2004, 5.3: approval person, mandatory (from memory)',
  about: 'A drawing is released by whoever approves it; until then it is a draft.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.header.approved
      ? []
      : [{ text: 'The drawing is not approved yet.', expected: 'approved  name, date, once it is' }],
}
