import type { HoleFeature } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, unit } from '../../geometry/vec3.ts'
import type { ChosenSize, PartFeature } from '../../part/part.ts'
import { holeCallout, isDrill } from '../callout/hole.ts'
import { sizeParts } from '../callout/numbers.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Callout, Statement, Stretch } from '../dimension.ts'
import type { Context } from './context.ts'
import type { Draft, Showing } from './draft.ts'
import { showAtCircles, showDiameter } from './show.ts'
import type { Sight } from './sight.ts'

/** Worth of a section before a view in which lines of something else happen to stand at the same places. */
const CUT_OPEN = 20

/** How much less a view is worth that shows a counterbore's or countersink's hole from behind. */
const FROM_BEHIND = 30

/** The one note of a hole feature, and what each of its numbers states. */
export function holeDraft(
  context: Context,
  feature: PartFeature,
  hole: HoleFeature,
  chosen: readonly ChosenSize[],
): Draft {
  const { members, outward } = feature
  const largest = [hole.counterbore?.diameter, hole.countersink?.diameter, hole.spotface?.diameter, hole.diameter]
  const radii = largest.flatMap((d) => (d ? [d.mm / 2] : []))
  const states: Statement[] = []
  const cones = new Set<number>()
  for (const one of chosen) {
    if (one.kind === 'diameter') {
      const isCone = one.faces.some((id) => surfaceKind(context, id) === 'cone')
      if (isCone) states.push({ kind: 'cone diameter', faces: one.faces, diameter: one.size.mm })
      else states.push({ kind: 'radius', faces: one.faces })
      if (isCone) for (const id of one.faces) cones.add(id)
    } else if (one.kind === 'depth') {
      const r = one.role === 'hole' || one.role === undefined ? hole.diameter.mm / 2 : 0
      // the others of a ring are as deep by its own words
      const told = members.filter((m, i) => i === 0 || !m.outward || isSquare(m.outward))
      const [first, ...also] = told.map((m) => sunk(m, m.outward ?? outward, one.size.mm, r, Math.max(...radii)))
      if (first) states.push({ kind: 'distance', ...first, ...(also.length > 0 ? { also } : {}) })
    }
  }
  const pointFaces = members.flatMap((m) =>
    m.faces.filter((id) => surfaceKind(context, id) === 'cone' && !cones.has(id)),
  )
  for (const one of chosen) {
    if (one.kind !== 'angle') continue
    const faces = one.role === 'countersink' ? [...cones] : pointFaces
    if (faces.length > 0) states.push({ kind: 'cone angle', faces })
  }
  const pointSaid = chosen.some((c) => c.kind === 'angle' && c.role !== 'countersink')
  if (pointFaces.length > 0 && !pointSaid) states.push({ kind: 'cone angle', faces: pointFaces, custom: true })

  const { axis } = context.part
  if (axis && members.some((m) => m.outward))
    states.push({
      kind: 'ring',
      axis: axis.direction,
      at: axis.point,
      members: members.map((m) => ({ faces: m.faces, outward: m.outward ?? outward })),
    })

  const ways = distinctWays(members.map((m) => m.outward ?? outward))
  const circles = ways.map((way) =>
    showAtCircles(
      members.flatMap((m) => (same(m.outward ?? outward, way) ? [m.point] : [])),
      way,
      radii,
    ),
  )
  const atCircles = (sight: Sight) => circles.flatMap((show) => show(sight) ?? []).sort((a, b) => b.score - a.score)[0]
  const across = members.map((m) =>
    showDiameter(m.faces, m.point, m.outward ?? outward, hole.diameter.mm / 2, 'circle'),
  )
  const sunken = hole.counterbore ?? hole.countersink ?? hole.spotface
  const callout = holeCallout(hole, members.length, context.writing, readersName(context, hole))
  return {
    id: `${feature.id}/note`,
    callout,
    value: hole.diameter.mm,
    // A thread's size and tolerance are its designation.
    ...(hole.thread && !isDrill(hole) ? {} : { size: hole.diameter }),
    direction: 'diameter',
    states,
    shows: (sight: Sight): Showing | undefined => {
      const noted = atCircles(sight)
      if (noted && sunken && dot(outward, sight.view.frame.toViewer) < 0)
        return { ...noted, score: noted.score - FROM_BEHIND, callout: withFarSide(context, callout) }
      if (noted) return noted
      // In a section along the axis a bore is sized across its walls, at the member that the section cuts.
      if (sight.facing(outward)) return undefined
      const cut = across.flatMap((show) => show(sight) ?? [])
      const best = cut.sort((a, b) => b.score - a.score)[0]
      return best && { ...best, score: best.score + (sight.view.kind === 'section' ? CUT_OPEN : 0) }
    },
    span: hole.diameter.span,
    feature: feature.id,
  }
}

/** What the hole ends in by what is printed of it: its size for a hole, and not the name that the brief has for it. */
function readersName(context: Context, { depth }: HoleFeature): string | undefined {
  const into = depth.kind === 'through' ? depth.oneWall?.into?.text.toLowerCase() : undefined
  const cut = context.part.features.find((f) => f.id.toLowerCase() === into)?.feature
  if (cut?.kind === 'slot' || cut?.kind === 'pocket') return cut.kind
  if (cut?.kind !== 'hole' || into?.startsWith('bore')) return undefined
  if (cut.thread) return cut.thread.text
  const { tolerance: _, ...bare } = cut.diameter
  return plainText({ lines: [sizeParts(bare, context.writing, '⌀')] })
}

/** In a view from behind: which side it is sunk from (common practice, no source). */
const withFarSide = ({ header }: Context, { lines }: Callout): Callout => ({
  lines: [...lines, [header.practice === 'ASME' ? 'FAR SIDE' : 'far side']],
})

/** From the worked face down to a floor, or to the rim where a drill point begins. */
function sunk(
  { point, faces, id }: PartFeature['members'][number],
  outward: Vec3,
  deep: number,
  r: number,
  widest: number,
): Stretch {
  const e = unit(cross(outward, Math.abs(outward[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]))
  const side = norm(e) === 0 ? 0 : r
  const down = (h: number): Vec3 => [
    point[0] - h * outward[0] + side * e[0],
    point[1] - h * outward[1] + side * e[1],
    point[2] - h * outward[2] + side * e[2],
  ]
  const direction: Vec3 = [-outward[0], -outward[1], -outward[2]]
  return {
    direction,
    from: { at: down(0), name: `face at ${id}`, mouth: { faces, r: widest } },
    to: { at: down(deep), name: `bottom of ${id}`, faces },
  }
}

const same = (a: Vec3, b: Vec3): boolean => dot(a, b) > 1 - 1e-9

const isSquare = (way: Vec3): boolean => way.some((c) => Math.abs(c) > 1 - 1e-9)

const distinctWays = (ways: readonly Vec3[]): Vec3[] =>
  ways.filter((way, i) => ways.findIndex((w) => same(w, way)) === i)

function surfaceKind(context: Context, face: number): string | undefined {
  return context.part.body.faces.find((f) => f.id === face)?.surface.kind
}
