import { said } from '../../measure/said.ts'
import { countersinkOf, screwFor } from '../../measure/screw.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'countersink-under-head',
  weight: 'look again',
  source: 'ASME B18.3 table of flat heads; ISO 10642, theoretical head diameter (from memory)',
  about: 'A countersink smaller than the head leaves it standing proud.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || !f.countersink) return []
      const screw = screwFor(f)
      const head = screw && countersinkOf(screw)
      const { diameter } = f.countersink
      // Countersinks are drawn to the real head, up to a tenth under the sharp one.
      if (!screw || !head || diameter.mm >= 0.9 * head.wide) return []
      return [
        {
          text: `The flat head of ${screw.name} is ${said(head.wide, diameter.unit)} wide and stands proud of ⌵ ⌀${diameter.text}.`,
          span: diameter.span,
          expected: `⌵ ⌀${said(head.wide, diameter.unit)}`,
          numbers: [f.diameter.text, diameter.text],
        },
      ]
    }),
}
