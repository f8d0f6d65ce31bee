import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-missing',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 7, ISO 1101:2017 (from memory)',
  about:
    'Orientation, location and runout are measured from something: without a datum letter the frame does not say from what.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'datum-missing'),
}
