import { holesOf } from '../../measure/cuts.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

/** Least straight wall below a countersink, mm. */
const LAND = 0.3

export const rule: DrawingRule = {
  name: 'countersink-through',
  weight: 'look again',
  source: 'common practice, no source: the head sits in at most two thirds of the sheet; 0.3 mm of wall',
  about: 'A countersink as deep as the sheet ends in a knife edge and enlarges the hole.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const seen = new Set<string>()
    return holesOf(part).flatMap((hole) => {
      const { countersink } = hole.callout
      if (!countersink || !hole.through || seen.has(hole.of.id)) return []
      const deep = (countersink.diameter.mm / 2 - hole.r) / Math.tan((countersink.angle.value * Math.PI) / 360)
      const land = hole.deep - deep
      if (land >= Math.max(LAND, 0.1 * hole.deep)) return []
      seen.add(hole.of.id)
      return [
        {
          text: `The countersink leaves ${said(Math.max(0, land), brief.header.units)} of straight hole below it.`,
          span: countersink.diameter.span,
          expected: 'thicker material, a smaller head, or a dimple',
          feature: hole.of.id,
          numbers: [countersink.diameter.text, said(land, brief.header.units)],
        },
      ]
    })
  },
}
