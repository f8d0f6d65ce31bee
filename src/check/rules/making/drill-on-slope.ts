import { holesOf } from '../../measure/cuts.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'drill-on-slope',
  weight: 'look again',
  source: 'Machinery’s Handbook, drilling: entry and exit square to the surface (from memory)',
  about:
    'A drill that meets a slope skids off; where it leaves through one, it grabs. A spotface or a flat gives it something square.',
  reads: 'drawing',
  check: ({ part }) => {
    const seen = new Set<string>()
    return holesOf(part).flatMap((hole) => {
      if (seen.has(hole.of.id) || hole.callout.countersink || hole.callout.counterbore || hole.callout.spotface)
        return []
      const own = new Set(hole.faces)
      const slope = part.body.edges.find((e) => {
        if (e.curve.kind !== 'ellipse') return false
        const [mine, other] = own.has(e.faces[0]) ? [e.faces[0], e.faces[1]] : [e.faces[1], e.faces[0]]
        return mine !== undefined && own.has(mine) && other !== undefined && !own.has(other)
      })
      const face = slope?.faces
        .map((f) => (f === undefined || own.has(f) ? undefined : part.body.faces[f]))
        .find(Boolean)
      if (!face) return []
      seen.add(hole.of.id)
      return [
        {
          text: `${hole.id} meets the ${face.name ?? 'surface'} at a slope.`,
          span: hole.callout.span,
          expected: 'a flat or a spotface square to the drill',
          feature: hole.of.id,
          numbers: [hole.callout.diameter.text],
        },
      ]
    })
  },
}
