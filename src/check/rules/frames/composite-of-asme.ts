import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'composite-of-asme',
  weight: 'must change',
  source: 'ISO 1101:2017, ISO 5458: every row carries its symbol (from memory)',
  about:
    'A composite frame, one symbol for several rows, is of ASME Y14.5. On an ISO sheet each row has a symbol of its own.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'composite-of-asme'),
}
