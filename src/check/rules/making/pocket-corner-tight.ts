import { said } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

/** Depth over the diameter of the cutter that goes into the corner. */
const REACH = 5

export const rule: BriefRule = {
  name: 'pocket-corner-tight',
  weight: 'look again',
  source: 'Machinery’s Handbook, end mills: reach of about 4 to 5 diameters (from memory)',
  about: 'A cutter that fits the corner must also reach the floor; beyond five diameters it bends and chatters.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'pocket' || !f.cornerRadius || f.cornerRadius.mm <= 0.05 || f.depth.kind !== 'blind') return []
      const ratio = f.depth.size.mm / (2 * f.cornerRadius.mm)
      if (ratio <= REACH + 1e-6) return []
      return [
        {
          text: `R${f.cornerRadius.text} takes a cutter of ${said(2 * f.cornerRadius.mm, f.cornerRadius.unit)}, ${ratio.toFixed(0)} diameters deep.`,
          span: f.cornerRadius.span,
          expected: `at least R${said(f.depth.size.mm / (2 * REACH), f.cornerRadius.unit)}`,
          numbers: [f.cornerRadius.text, f.depth.size.text],
        },
      ]
    }),
}
