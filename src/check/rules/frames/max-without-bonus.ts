import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'max-without-bonus',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 10 (from memory)',
  about: 'MAX bounds what a bonus may bring the tolerance to. Without a material condition there is no bonus to bound.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'max-without-bonus'),
}
