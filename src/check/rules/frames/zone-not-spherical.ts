import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'zone-not-spherical',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 10 (from memory)',
  about: 'A spherical zone holds a centre point, and only position does that.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'zone-not-spherical'),
}
