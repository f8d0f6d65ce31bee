import { framedSizes } from '../../../sizes/geometric/basic-sizes.ts'
import { generalTolerance } from '../../../tolerance/general/title-block.ts'
import { lengthOf } from '../../measure/frame-conditions.ts'
import { heldFrames } from '../../measure/framed.ts'
import { said as inUnits } from '../../measure/said.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'zone-wider-than-general',
  weight: 'look again',
  source:
    'common practice, no source; a round zone about the square of ± both ways is 2√2 times ± wide (ASME Y14.5 annex, from memory)',
  about:
    'A frame of position is finer than what the title block holds without it. A round zone wider than the square of the general tolerance needs no frame, or its point slipped.',
  reads: 'drawing',
  check: ({ brief, part }) => {
    const { header } = brief
    const framed = framedSizes(part)
    return heldFrames({ brief, part }).flatMap(({ said, feature }): Finding[] => {
      const [row] = said.frame.rows
      if (said.frame.characteristic !== 'position' || !row || !feature) return []
      const general = framed.flatMap(({ by, size }) => {
        const found = by === said && 'mm' in size ? generalTolerance(header, size) : undefined
        return found?.ok ? [found.value.plusMinus] : []
      })
      const most = 2 * Math.SQRT2 * Math.max(...general)
      const value = lengthOf(row.value, header.units)
      if (general.length === 0 || value <= most) return []
      return [
        {
          text: `The position ${row.value.text} of ${feature.id} is wider than the title block would hold it: ±${inUnits(Math.max(...general), header.units)} comes to ⌀${inUnits(most, header.units)}.`,
          span: row.value.span,
          expected: `less than ${inUnits(most, header.units)}, or sizes without a frame`,
          ...(feature.feature ? { feature: feature.feature } : {}),
          numbers: [row.value.text, inUnits(most, header.units)],
        },
      ]
    })
  },
}
