import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'zero-tolerance',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 10, ISO 2692 (from memory)',
  about:
    'A zero tolerance is good practice where the size’s own departure from maximum or least material feeds it. Without a material condition it can never be met.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'zero-tolerance'),
}
