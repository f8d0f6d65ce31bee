import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'projection-not-allowed',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 10, ISO 1101:2017 (from memory)',
  about:
    'A projected zone stands outside the part where the mating pin or stud will; it goes with position and orientation only.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'projection-not-allowed'),
}
