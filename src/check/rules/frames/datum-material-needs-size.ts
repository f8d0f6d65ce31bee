import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-material-needs-size',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 7, ISO 2692 (from memory)',
  about:
    'Maximum and least material boundaries belong to datum features of size. A plane face has no size to depart from.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'datum-material-needs-size'),
}
