import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'composite-datum-order',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 10: datums of the lower segment repeat those of the upper in order (from memory)',
  about:
    'The lower segment of a composite frame may repeat the upper one’s datums, in the same order and from the first; another order would be another frame.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'composite-datum-order'),
}
