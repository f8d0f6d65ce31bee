import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'material-not-allowed',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 5, ISO 2692 (from memory)',
  about:
    'The maximum and least material conditions go with an axis or a middle plane. Circularity, cylindricity, runout and profile hold surfaces, and take none.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'material-not-allowed'),
}
