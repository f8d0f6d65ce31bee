import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'tangent-plane-not-allowed',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 6 (from memory)',
  about: 'The tangent plane may be held in orientation, profile or runout. Form is that of the surface itself.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'tangent-plane-not-allowed'),
}
