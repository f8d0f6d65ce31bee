import { holesOf, slotEndsOf } from '../../measure/cuts.ts'
import { said } from '../../measure/said.ts'
import { sheetThickness } from '../../measure/sheet-metal.ts'
import { shareOfLeast } from '../../measure/small-part.ts'
import { beside, worstLigaments } from '../../measure/worst.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'sheet-hole-near-edge',
  weight: 'look again',
  source: 'Machinery’s Handbook, punching: web between hole and edge at least the thickness of the sheet (from memory)',
  about: 'A punched hole nearer to the edge than the sheet is thick bulges the edge.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const t = sheetThickness(part)
    if (t === undefined) return []
    const cuts = [...holesOf(part), ...slotEndsOf(part)]
    return worstLigaments(part, cuts, () => () => true).flatMap(({ cut, least }) => {
      // What leaves next to nothing is the other rules' business.
      if (least.mm >= t - 1e-6 || least.mm < Math.max(0.8 * shareOfLeast(part), 0.3 * cut.r)) return []
      const unit = brief.header.units
      return [
        {
          text: `${cut.id} stands ${said(least.mm, unit)} from the ${beside(part, cut, least.edge)}, less than the sheet is thick.`,
          span: cut.callout.span,
          expected: `at least ${said(t, unit)}`,
          feature: cut.of.id,
          numbers: [said(2 * cut.r, unit), said(t, unit), said(least.mm, unit)],
        },
      ]
    })
  },
}
