import { said } from '../../measure/said.ts'
import { counterboreOf, screwFor } from '../../measure/screw.ts'
import type { BriefRule } from '../../rule.ts'

/** Least clearance about the head, mm in diameter. */
const AROUND = 0.25

export const rule: BriefRule = {
  name: 'counterbore-under-head',
  weight: 'must change',
  source: 'ASME B18.3 and ISO 4762, head diameters; DIN 974-1, ASME B18.3 counterbores (from memory)',
  about: 'The hole is the standard clearance hole of a screw whose head does not go into the counterbore.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || !f.counterbore) return []
      const screw = screwFor(f)
      const head = screw && counterboreOf(screw)
      const { diameter } = f.counterbore
      if (!screw || !head || diameter.mm >= head.head + AROUND) return []
      return [
        {
          text: `⌀${f.diameter.text} is the hole for ${screw.name}, whose head of ${said(head.head, diameter.unit)} does not go into ⌴ ⌀${diameter.text}.`,
          span: diameter.span,
          expected: `⌴ ⌀${said(head.bore, diameter.unit)}`,
          numbers: [f.diameter.text, diameter.text],
        },
      ]
    }),
}
