import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'number-missing',
  weight: 'must change',
  source: 'ISO 7200:2004, 5.1: identification number, mandatory; ASME Y14.1: drawing number block (from memory)',
  about: 'A drawing is found, ordered and revised by its number.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.header.number ? [] : [{ text: 'The drawing has no number.', expected: 'number    VB-1042   rev A' }],
}
