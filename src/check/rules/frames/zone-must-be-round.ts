import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'zone-must-be-round',
  weight: 'must change',
  source: 'ISO 1101:2017: the zone of coaxiality is a cylinder (from memory)',
  about: 'Coaxiality holds an axis about another on all sides: its zone is a cylinder and its value carries ⌀.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'zone-must-be-round'),
}
