import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'zone-not-round',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 6, ISO 1101:2017 (from memory)',
  about: 'A ⌀ before the value makes the zone a cylinder, which only an axis or a straight median line can lie in.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'zone-not-round'),
}
