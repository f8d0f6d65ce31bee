import { cross, norm, sub } from '../../../geometry/vec3.ts'
import { holesOf } from '../../measure/cuts.ts'
import { isSlits, ownersOf } from '../../measure/owners.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'drill-breaks-sideways',
  weight: 'look again',
  source: 'common practice, no source',
  about:
    'A drill that comes out of the side of another hole or of a wall part of the way down runs off toward the open side.',
  reads: 'drawing',
  check: ({ part }) => {
    const owners = ownersOf(part)
    const seen = new Set<string>()
    return holesOf(part).flatMap((hole) => {
      if (seen.has(hole.of.id)) return []
      const own = new Set(hole.faces)
      const open = part.body.edges.find((e) => {
        // a slit is sawn into the finished bore
        if (isSlits(owners, e) || e.seam || e.smooth || e.curve.kind !== 'line') return false
        const mine = e.faces.filter((f) => f !== undefined && own.has(f)).length
        if (mine !== 1) return false
        const d = sub(e.curve.b, e.curve.a)
        return norm(cross(d, hole.inward)) < 1e-6 * norm(d)
      })
      const face = open?.faces
        .map((f) => (f === undefined || own.has(f) ? undefined : part.body.faces[f]))
        .find(Boolean)
      // a keyseat belongs to its bore
      if (!face || face.name?.startsWith('keyseat ')) return []
      seen.add(hole.of.id)
      return [
        {
          text: `${hole.id} breaks out sideways into the ${face.name ?? 'surface beside it'}.`,
          span: hole.callout.span,
          expected: 'another place or diameter, or an open slot',
          feature: hole.of.id,
          numbers: [hole.callout.diameter.text],
        },
      ]
    })
  },
}
