import type { HoleFeature } from '../../../brief/brief.ts'
import { sheetThickness } from '../../measure/sheet-metal.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'hole-under-sheet-thickness',
  weight: 'look again',
  source: 'Machinery’s Handbook, punching: least hole about the thickness of the sheet (from memory)',
  about: 'A punch thinner than the sheet breaks. Smaller holes are drilled, which costs a second set-up.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const t = sheetThickness(part)
    if (t === undefined || brief.header.notes.some((n) => /\bdrill/i.test(n.text))) return []
    return brief.features
      .filter((f): f is HoleFeature => f.kind === 'hole' && !f.thread && f.diameter.mm < t - 1e-6)
      .map((f) => ({
        text: `⌀${f.diameter.text} is smaller than the sheet is thick: it cannot be punched.`,
        span: f.diameter.span,
        expected: 'a larger hole, or a note that it is drilled',
        numbers: [f.diameter.text, String(t)],
      }))
  },
}
