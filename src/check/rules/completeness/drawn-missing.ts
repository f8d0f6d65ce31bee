import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'drawn-missing',
  weight: 'look again',
  source: 'ISO 7200:2004, 5.3: creator, mandatory (from memory)',
  about: 'Whoever drew it signs it, so that the shop knows whom to ask.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.header.drawn ? [] : [{ text: 'Nobody has signed as having drawn this.', expected: 'drawn     name, date' }],
}
