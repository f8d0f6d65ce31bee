import { said } from '../../measure/said.ts'
import { counterboreOf, screwFor } from '../../measure/screw.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'counterbore-shallow',
  weight: 'look again',
  source: 'ASME B18.3 and ISO 4762: the head of a socket head cap screw is as high as the screw is thick (from memory)',
  about: 'A counterbore of the screw’s own width is made to bury the head; if it is shallower, the head stands out.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || !f.counterbore) return []
      const screw = screwFor(f)
      const head = screw && counterboreOf(screw)
      const { diameter, depth } = f.counterbore
      // Another width is for another head: hexagon, washer, nut.
      if (!screw || !head || Math.abs(diameter.mm - head.bore) > 0.12 * head.bore || depth.mm >= head.high - 0.02)
        return []
      return [
        {
          text: `The head of ${screw.name} is ${said(head.high, depth.unit)} high and stands out of a counterbore ${depth.text} deep.`,
          span: depth.span,
          expected: `at least ${said(head.high, depth.unit)} deep`,
          numbers: [f.diameter.text, diameter.text, depth.text],
        },
      ]
    }),
}
