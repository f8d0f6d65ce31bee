import { cross, norm, sub } from '../../../geometry/vec3.ts'
import type { Part } from '../../../part/part.ts'
import { crossWall } from '../../measure/ahead.ts'
import { type Hole, holesOf } from '../../measure/cuts.ts'
import { isSlits, ownersOf } from '../../measure/owners.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

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
      const below = bottomOpens(part, hole)
      if (below) {
        seen.add(hole.of.id)
        return [below]
      }
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

/** A blind hole whose floor or drill point is cut by a round wall that runs across it. */
function bottomOpens(part: Part, hole: Hole): Finding | undefined {
  const { depth, thread, threadDepth } = hole.callout
  if (depth.kind !== 'blind') return undefined
  const own = new Set(hole.faces)
  const isBottom = (f: number | undefined) =>
    f !== undefined && own.has(f) && / (floor|drill point)$/.test(part.body.faces[f]!.name ?? '')
  const cut = part.body.edges
    .filter((e) => e.faces.some(isBottom))
    .flatMap((e) => e.faces)
    .map((f) => (f === undefined ? undefined : part.body.faces[f]))
    .find((f) => f && crossWall(part, hole, f) !== undefined)
  if (!cut) return undefined
  const wall = said(crossWall(part, hole, cut)!, depth.size.unit)
  const into = cut.name?.replace(/ (wall|counterbore wall)$/, '') ?? 'a round wall'
  const numbers = [
    thread?.text ?? hole.callout.diameter.text,
    ...(threadDepth ? [threadDepth.text] : []),
    depth.size.text,
  ]
  return {
    text: `The bottom of ${hole.id} breaks into the ${into}: the wall there is ${wall} thick.`,
    span: depth.size.span,
    expected: `a depth whose drill point ends before ${wall}, or THRU to ${into}`,
    feature: hole.of.id,
    numbers,
  }
}
