import { said } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

/** Straight part of a flange beyond the bend, in thicknesses, that the die can hold. */
const LEAST = 2

export const rule: BriefRule = {
  name: 'flange-short',
  weight: 'must change',
  source:
    'Machinery’s Handbook, press-brake work: flange of at least twice the thickness beyond the bend (from memory)',
  about: 'The flange must reach over the edge of the die, or it slips in and the bend comes out crooked.',
  reads: 'brief',
  check: ({ brief }) => {
    const { stock } = brief
    if (stock?.kind !== 'angle' || stock.make !== 'formed') return []
    const t = stock.thickness.mm
    const bend = t + (stock.insideRadius?.mm ?? 0)
    return [stock.uprightHeight, stock.baseDepth].flatMap((leg) =>
      leg.mm - bend >= LEAST * t - 1e-6
        ? []
        : [
            {
              text: `The leg of ${leg.text} leaves ${said(Math.max(0, leg.mm - bend), leg.unit)} straight beyond the bend: too little to hold in the die.`,
              span: leg.span,
              expected: `at least ${said(bend + LEAST * t, leg.unit)} in all`,
              numbers: [leg.text, stock.thickness.text],
            },
          ],
    )
  },
}
