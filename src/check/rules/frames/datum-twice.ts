import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-twice',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 7, ISO 5459 (from memory)',
  about: 'A datum has its place once in a frame. The same letter in a second compartment takes no further freedom.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'datum-twice'),
}
