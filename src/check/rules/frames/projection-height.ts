import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'projection-height',
  weight: 'look again',
  source: 'ASME Y14.5-2018 section 10, ISO 1101:2017 (from memory)',
  about:
    'A projected zone needs its height, the thickness of what the pin or stud goes through; without it nobody knows where to measure.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'projection-height'),
}
