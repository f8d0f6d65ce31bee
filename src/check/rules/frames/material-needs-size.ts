import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'material-needs-size',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 5, ISO 2692 (from memory)',
  about: 'A material condition gives a bonus as the size departs from it. A surface has no size.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'material-needs-size'),
}
