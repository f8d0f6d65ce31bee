import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'owner-missing',
  weight: 'look again',
  source: 'ISO 7200:2004, 5.1: legal owner, mandatory (from memory)',
  about: 'The title block says whose drawing it is.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.header.firm
      ? []
      : [{ text: 'The title block does not say whose drawing this is.', expected: 'firm      name of the firm' }],
}
