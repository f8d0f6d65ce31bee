import type { Mark } from '../../brief/mark.ts'
import type { Part, PartFeature } from '../../part/part.ts'

const EDGE_WORK = ['round', 'fillet', 'chamfer']
const CUTS = ['hole', 'bore', 'slot', 'pocket']

/**
 * A hole, slot or pocket whose rim lies partly on a rounded or chamfered edge of the part: its rim is no plane figure
 * there, so that a depth, counterbore or countersink has no face to be measured from. Work on the rim itself, and rounds
 * or chamfers about the cut's own axis, belong there.
 */
export function runIntoMarks(part: Part): Mark[] {
  const edgeWork = part.features.filter((f) => EDGE_WORK.includes(f.kind) && f.feature)
  const cuts = part.features.filter((f) => CUTS.includes(f.kind) && f.feature)
  return cuts.flatMap((cut) =>
    edgeWork
      .filter((work) => meets(part, cut, work))
      .map((work): Mark => {
        const name = work.id
        return {
          rule: 'runs-into-edge',
          weight: 'look again',
          text: `${capital(cut.id)} runs into ${name}: part of its rim lies on the ${work.kind === 'chamfer' ? 'chamfered' : 'rounded'} edge.`,
          span: cut.feature!.span,
          expected: `a place further from the edge, or a smaller ${work.kind}`,
          source: 'common practice, no source',
        }
      }),
  )
}

function meets(part: Part, cut: PartFeature, work: PartFeature): boolean {
  const walls = new Set(cut.members.flatMap((m) => m.faces))
  const edges = new Set(work.members.flatMap((m) => m.faces))
  const surfaces = new Map(part.body.faces.map((f) => [f.id, f.surface]))
  return part.body.edges.some(({ faces: [a, b], smooth }) => {
    if (b === undefined || smooth || !((walls.has(a) && edges.has(b)) || (walls.has(b) && edges.has(a)))) return false
    const wall = surfaces.get(walls.has(a) ? a : b)!
    const edge = surfaces.get(walls.has(a) ? b : a)!
    // Straight edges only: a cone or torus goes round a rim.
    return wall.kind === 'cylinder' && (edge.kind === 'cylinder' || edge.kind === 'plane' || edge.kind === 'spline')
  })
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1)
