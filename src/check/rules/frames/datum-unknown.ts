import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-unknown',
  weight: 'must change',
  source: 'ASME Y14.5-2018 6.3, ISO 5459: every datum referred to is identified on the drawing (from memory)',
  about: 'A frame that refers to a letter which stands at no feature cannot be measured.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'datum-unknown'),
}
