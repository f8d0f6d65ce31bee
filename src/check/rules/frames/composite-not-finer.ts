import { frameFindings } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'composite-not-finer',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 10: the lower segment refines the upper (from memory)',
  about:
    'The lower segment of a composite frame holds the features to each other more finely than the upper holds the pattern. An equal or larger value says nothing.',
  reads: 'drawing',
  check: (subject) => frameFindings(subject, 'composite-not-finer'),
}
