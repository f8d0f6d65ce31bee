import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'withdrawn-characteristic',
  weight: 'must change',
  source:
    'ASME Y14.5-2018, foreword: concentricity and symmetry taken out; ISO 1101 keeps coaxiality and symmetry (from memory)',
  about:
    'Concentricity and symmetry were taken out of ASME Y14.5 in 2018: their median points could hardly be measured. Position, runout or profile say the same.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'withdrawn-characteristic'),
}
