import { along } from '../../../geometry/vec3.ts'
import { holesOf } from '../../measure/cuts.ts'
import { firstHit } from '../../measure/faces.ts'
import { said } from '../../measure/said.ts'
import { fallsShort } from '../../measure/thumb.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'thin-floor',
  weight: 'look again',
  source: 'common practice, no source: 1 mm, or a tenth of the diameter',
  about:
    'The skin left under a blind hole bulges or breaks out when the drill comes near. Go through, or stop earlier.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const seen = new Set<string>()
    return holesOf(part).flatMap((hole) => {
      if (hole.through || seen.has(hole.of.id)) return []
      const hit = firstHit(part.body, along(hole.at, hole.inward, hole.deep + 1e-4), hole.inward)
      const least = Math.max(1, 0.2 * hole.r)
      if (!hit || !fallsShort(hit.far, least)) return []
      seen.add(hole.of.id)
      return [
        {
          text: `Under ${hole.id} stand ${said(hit.far, brief.header.units)} of material.`,
          span: hole.callout.depth.kind === 'blind' ? hole.callout.depth.size.span : hole.callout.span,
          expected: `at least ${said(least, brief.header.units)}, or THRU`,
          feature: hole.of.id,
          numbers: [hole.callout.diameter.text, said(hit.far, brief.header.units)],
        },
      ]
    })
  },
}
