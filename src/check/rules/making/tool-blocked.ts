import { along, scale } from '../../../geometry/vec3.ts'
import { holesOf } from '../../measure/cuts.ts'
import { firstHit } from '../../measure/faces.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'tool-blocked',
  weight: 'must change',
  source: 'common practice, no source',
  about:
    'A counterbore, a countersink or a blind hole is cut from its own face. If material stands over that face, no tool gets there.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const seen = new Set<string>()
    return holesOf(part).flatMap((hole) => {
      const { callout, of } = hole
      const needsFace = callout.counterbore || callout.countersink || callout.spotface || callout.depth.kind === 'blind'
      if (!needsFace || seen.has(of.id)) return []
      const out = scale(hole.inward, -1)
      const hit = firstHit(part.body, along(hole.at, out, 0.01), out)
      if (!hit) return []
      seen.add(of.id)
      return [
        {
          text: `${hole.id} is worked from the ${callout.face.text}, but the ${hit.face.name ?? 'part itself'} stands ${said(hit.far, brief.header.units)} over it: no tool gets in.`,
          span: callout.span,
          expected: 'a back counterbore from the other side, or an opening for the tool',
          feature: of.id,
          numbers: [callout.diameter.text, said(hit.far, brief.header.units)],
        },
      ]
    })
  },
}
