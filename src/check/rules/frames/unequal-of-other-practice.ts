import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'unequal-of-other-practice',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 11: Ⓤ; ISO 1660: UZ (from memory)',
  about:
    'Unequal profiles are written with Ⓤ and the part outside the material in ASME practice, with UZ and the shift of the zone’s middle in ISO.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'unequal-of-other-practice'),
}
