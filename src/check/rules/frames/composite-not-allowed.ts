import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'composite-not-allowed',
  weight: 'must change',
  source: 'ASME Y14.5-2018 sections 10 and 11: composite position and composite profile (from memory)',
  about: 'Only position and profile have composite frames; other characteristics repeat their symbol in each row.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'composite-not-allowed'),
}
