import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'unequal-not-allowed',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 11, ISO 1660 (from memory)',
  about: 'Only a profile’s zone can lie unequally about the true profile.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'unequal-not-allowed'),
}
