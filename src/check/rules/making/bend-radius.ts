import { leastBend } from '../../measure/metal.ts'
import { said } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'bend-radius',
  weight: 'must change',
  source:
    'Machinery’s Handbook, bending sheet metal, least inside radius by material (from memory; sources differ by half a thickness)',
  about: 'Bent tighter than its material allows, the sheet cracks at the outside of the bend.',
  reads: 'brief',
  check: ({ brief }) => {
    const { stock, header } = brief
    if (stock?.kind !== 'angle' || stock.make !== 'formed' || !stock.insideRadius) return []
    const least = leastBend(header.material?.text, stock.thickness.mm)
    if (stock.insideRadius.mm >= least * stock.thickness.mm - 0.02) return []
    const unit = stock.insideRadius.unit
    return [
      {
        text: Number.isFinite(least)
          ? `R${stock.insideRadius.text} is ${(stock.insideRadius.mm / stock.thickness.mm).toFixed(1)} thicknesses; this material cracks below ${least}.`
          : 'This material cannot be bent.',
        span: stock.insideRadius.span,
        expected: Number.isFinite(least)
          ? `at least R${said(least * stock.thickness.mm, unit)}`
          : 'another material, or a machined angle',
        numbers: [stock.insideRadius.text, stock.thickness.text],
      },
    ]
  },
}
