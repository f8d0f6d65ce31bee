import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'too-many-datums',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 7, ISO 5459: three datums hold a part, two a runout (from memory)',
  about:
    'Three datums take a part’s six freedoms, and runout needs an axis and at most a face beside it. More letters say nothing.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'too-many-datums'),
}
