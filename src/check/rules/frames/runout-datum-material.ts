import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'runout-datum-material',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 12: runout applies regardless of material boundary (from memory)',
  about: 'Runout turns about the axis that the datum feature itself has; a material boundary would let the axis float.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'runout-datum-material'),
}
