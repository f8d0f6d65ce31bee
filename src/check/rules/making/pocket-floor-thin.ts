import { along, scale } from '../../../geometry/vec3.ts'
import { firstHit } from '../../measure/faces.ts'
import { said } from '../../measure/said.ts'
import { fallsShort } from '../../measure/thumb.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'pocket-floor-thin',
  weight: 'look again',
  source: 'common practice, no source: 1 mm, or a fiftieth of the pocket’s longer side',
  about: 'A wide thin floor lifts under the cutter and rings; it comes out bowed.',
  reads: 'drawing',
  check: ({ part, brief }) =>
    part.features.flatMap((f) => {
      const pocket = f.feature
      if (pocket?.kind !== 'pocket' || pocket.depth.kind !== 'blind') return []
      const at = f.members[0]!.point
      const inward = scale(f.outward, -1)
      const hit = firstHit(part.body, along(at, inward, pocket.depth.size.mm + 1e-4), inward)
      const least = Math.max(1, Math.max(pocket.across.mm, pocket.up.mm) / 50)
      if (!hit || !fallsShort(hit.far, least)) return []
      return [
        {
          text: `Under the pocket stand ${said(hit.far, brief.header.units)} of material.`,
          span: pocket.depth.size.span,
          expected: `at least ${said(least, brief.header.units)}`,
          feature: f.id,
          numbers: [pocket.depth.size.text, said(hit.far, brief.header.units)],
        },
      ]
    }),
}
