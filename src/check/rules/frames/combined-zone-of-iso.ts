import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'combined-zone-of-iso',
  weight: 'must change',
  source: 'ISO 1101:2017: CZ and SZ (from memory)',
  about: 'CZ and SZ tell in ISO practice whether several features share a zone. ASME says it with a count or a note.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'combined-zone-of-iso'),
}
