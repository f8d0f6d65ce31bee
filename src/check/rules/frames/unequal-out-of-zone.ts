import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'unequal-out-of-zone',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 11 (from memory)',
  about: 'The value after Ⓤ is the part of the zone that lies outside the material, and so at most the whole of it.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'unequal-out-of-zone'),
}
