import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-forbidden',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 8, ISO 1101:2017 clause 17: form refers to no datum (from memory)',
  about:
    'Form is a matter of the feature alone: flatness, straightness, circularity and cylindricity refer to no datum.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'datum-forbidden'),
}
