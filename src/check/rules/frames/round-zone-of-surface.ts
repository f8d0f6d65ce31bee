import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'round-zone-of-surface',
  weight: 'must change',
  source: 'ASME Y14.5-2018, ISO 1101:2017 (from memory)',
  about: 'A surface has no axis: its zone lies between two planes, and its value carries no ⌀.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'round-zone-of-surface'),
}
