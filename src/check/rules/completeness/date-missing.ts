import type { Words } from '../../../brief/brief.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'date-missing',
  weight: 'look again',
  source: 'ISO 7200:2004, 5.1: date of issue, mandatory (from memory)',
  about: 'A signature without its date cannot be held against a revision.',
  reads: 'brief',
  check: ({ brief }) => {
    const { drawn, checked, approved } = brief.header
    const undated = [drawn, checked, approved].flatMap((s): Words[] => (s && !s.date ? [s.name] : []))
    return undated.map(({ text, span }) => ({
      text: `${text} signed without a date.`,
      span,
      expected: `${text}, and the date`,
    }))
  },
}
