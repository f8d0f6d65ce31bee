import type { Span } from '../../brief/span.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, norm, scale, sub } from '../../geometry/vec3.ts'
import type { BodyFace } from '../../kernel/body.ts'
import { chamferCallout, diameterCallout, radiusCallout } from '../callout/shapes.ts'
import type { Statement } from '../dimension.ts'
import { fullRounds } from '../proof/full-round.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { freeEnd } from './free-end.ts'
import type { Chosen } from './kinds.ts'
import { showAtCircles, showDiameter, showLinear, showRadius, showSlope } from './show.ts'

const facesById = (context: Context, ids: readonly number[]): BodyFace[] =>
  context.part.body.faces.filter((f) => ids.includes(f.id))

/** Diameters that no note holds: turned steps, rims, bosses, taper ends, groove bottoms. */
export function diameterDraft(context: Context, chosen: Chosen<'diameter'>): Draft | undefined {
  const faces = facesById(context, chosen.faces)
  const face =
    faces.find((f) => f.surface.kind === 'cylinder') ?? faces.find((f) => f.surface.kind === 'cone') ?? faces[0]
  if (!face || face.surface.kind === 'spline' || face.surface.kind === 'plane') return noFace(context, chosen)
  const { surface } = face
  const { origin, z } = surface.axes
  const r = chosen.size.mm / 2
  const turned =
    context.part.axis && norm(cross(sub(origin, context.part.axis.point), context.part.axis.direction)) < 1e-5
  const style = turned ? 'profile' : 'circle'
  const { stock } = context.part.brief
  const thread = stock?.kind === 'turned' && stock.steps.find((s) => s.name.text === chosen.of)?.thread
  let states: Statement[] = [{ kind: 'radius', faces: chosen.faces }]
  let shows = showDiameter(
    chosen.faces,
    origin,
    z,
    r,
    style,
    turned ? freeEnd(context, chosen.faces, origin, z, r) : undefined,
  )
  if (surface.kind === 'cone') {
    states = [{ kind: 'cone diameter', faces: chosen.faces, diameter: chosen.size.mm }]
    const rim = rimOf(context, face, r)
    const profile = showDiameter(chosen.faces, rim ?? origin, z, r, style)
    shows = (sight) => {
      const way = sight.inPlane(z)
      if (!rim || !way) return profile(sight)
      const { right, up } = sight.view.frame
      const across = Math.abs(way[0]) > Math.abs(way[1]) ? up : right
      const end = (side: number): Vec3 => [
        rim[0] + side * r * across[0],
        rim[1] + side * r * across[1],
        rim[2] + side * r * across[2],
      ]
      const at = (side: number) => ({
        at: end(side),
        name: chosen.of,
        faces: chosen.faces,
        axis: sight.view.frame.toViewer,
      })
      return showLinear(at(-1), at(1), across)(sight)
    }
  }
  const feature = chosen.group && context.features.has(chosen.group) ? chosen.group : undefined
  return {
    id: `${chosen.group ?? 'stock'}/diameter/${chosen.of}`,
    callout: thread
      ? { lines: [[thread.text]] }
      : diameterCallout(chosen.size, context.writing, chosen.count, surface.kind === 'sphere'),
    value: chosen.size.mm,
    // the designation holds the thread's own limits
    ...(thread ? {} : { size: chosen.size }),
    direction: 'diameter',
    states,
    shows,
    span: chosen.span,
    ...(feature ? { feature } : {}),
  }
}

/** Centre of the circle of that radius on a face's border, else of the one where a cone would end but for a chamfer. */
function rimOf(context: Context, face: BodyFace, r: number): Vec3 | undefined {
  for (const { curve, faces } of context.part.body.edges) {
    if (faces.includes(face.id) && curve.kind === 'circle' && Math.abs(curve.r - r) < 1e-5) return curve.axes.origin
  }
  if (face.surface.kind !== 'cone') return undefined
  const { axes, r: own, halfAngle } = face.surface
  return add(axes.origin, scale(axes.z, (r - own) / Math.tan(halfAngle)))
}

export function radiusDraft(context: Context, chosen: Chosen<'radius'>): Draft | undefined {
  const faces = facesById(context, chosen.faces)
  // The other corner of a round end holds the face of both.
  const isShared = faces.length === 0 && fullRounds(context.part).some((e) => Math.abs(e.r - chosen.size.mm) < 1e-6)
  if (isShared) return undefined
  if (faces.length === 0) return noFace(context, chosen)
  const spherical = faces[0]!.surface.kind === 'sphere'
  // A ball end as round as its diameter allows follows from the diameter.
  const follows = spherical && faces.every((f) => endsRound(context, f.id, chosen.size.mm))
  const feature = chosen.group && context.features.has(chosen.group) ? chosen.group : undefined
  return {
    id: `${chosen.group ?? 'stock'}/radius/${chosen.of}`,
    callout: radiusCallout(chosen.size, context.writing, chosen.count, spherical),
    value: chosen.size.mm,
    size: chosen.size,
    kind: 'corner',
    direction: 'radius',
    states: [{ kind: 'radius', faces: chosen.faces }],
    shows: showRadius(chosen.faces, chosen.size.mm),
    ...(follows ? { reference: true } : {}),
    span: chosen.span,
    ...(feature ? { feature } : {}),
  }
}

/** The ball runs smoothly into a cylinder of its own radius. */
function endsRound({ part: { body } }: Context, ball: number, r: number): boolean {
  return body.edges.some(({ smooth, faces }) => {
    const other = faces.find((f) => f !== ball)
    const next = body.faces.find((f) => f.id === other)?.surface
    return smooth && faces.includes(ball) && next?.kind === 'cylinder' && Math.abs(next.r - r) < 1e-6
  })
}

export function chamferDraft(context: Context, chosen: Chosen<'chamfer'>): Draft | undefined {
  if (chosen.faces.length === 0) return noFace(context, chosen)
  // Round a corner the chamfer runs on as a cone, with the same two numbers.
  const runOn = context.part.body.faces.filter((f) => f.name === `${chosen.group} corner`).map((f) => f.id)
  const second = chosen.leg ? { leg: chosen.leg } : chosen.angle ? { angle: chosen.angle } : undefined
  const feature = chosen.group && context.features.has(chosen.group) ? chosen.group : undefined
  return {
    id: `${chosen.group ?? 'stock'}/chamfer`,
    callout: chamferCallout(chosen.size, second, context.writing, chosen.count),
    value: chosen.size.mm,
    size: chosen.size,
    kind: 'corner',
    direction: 'chamfer',
    states: [
      {
        kind: 'chamfer',
        faces: [...chosen.faces, ...runOn],
        by: chosen.leg ? 'two legs' : 'leg and angle',
        leg: chosen.size.mm,
      },
    ],
    shows: showChamfer(context, chosen.faces),
    span: chosen.span,
    ...(feature ? { feature } : {}),
  }
}

/**
 * At the slope seen edge-on; at the edge of a hole also at its circle, which any view from the front shows, and so where
 * flats leave no slope at the outline, as of a hexagon head.
 */
function showChamfer(context: Context, faces: readonly number[]): Draft['shows'] {
  const slope = showSlope(context, faces)
  if (context.part.axis && context.sights.some((sight) => slope(sight))) return slope
  const circles = showAtRim(context, faces)
  return (sight) => {
    const [edge, seen] = [slope(sight), circles?.(sight)]
    return edge && seen ? (edge.score > seen.score ? edge : seen) : (edge ?? seen)
  }
}

/** At the circle in which a chamfer about an axis ends: round a hole the larger one, on an outside the smaller. */
function showAtRim(context: Context, faces: readonly number[]): Draft['shows'] | undefined {
  const turned = facesById(context, faces).filter((f) => f.surface.kind === 'cone')
  const rims = context.part.body.edges.flatMap(({ curve, faces: beside }) =>
    curve.kind === 'circle' && beside.some((f) => turned.some((t) => t.id === f)) ? [curve] : [],
  )
  if (rims.length === 0) return undefined
  const radii = rims.map((c) => c.r)
  const r = turned.some((f) => !f.reversed) ? Math.min(...radii) : Math.max(...radii)
  const [{ axes }] = rims as [(typeof rims)[number]]
  const isBehind = (a: (typeof rims)[number], b: (typeof rims)[number]) =>
    norm(cross(sub(a.axes.origin, b.axes.origin), axes.z)) < 1e-6
  const own = rims.filter((c) => Math.abs(c.r - r) < 1e-6)
  // both ends of one hole are one circle in the view along it
  const each = own.filter((c, i) => !own.slice(0, i).some((o) => isBehind(c, o)))
  return showAtCircles(
    each.map((c) => c.axes.origin),
    axes.z,
    [r],
  )
}

function noFace(context: Context, chosen: { readonly span: Span; readonly group?: string }): undefined {
  // What could not be worked has said so at its own statement.
  const own = context.features.get(chosen.group ?? '')?.feature?.span
  const said = context.part.marks.some(
    (m) => m.weight === 'must change' && m.span && own && m.span.from >= own.from && m.span.to <= own.to,
  )
  if (said) return undefined
  context.marks.push({
    rule: 'size-reaches-nothing',
    weight: 'look again',
    text: 'The face that this size is for is no longer on the part; another statement has cut it away.',
    span: chosen.span,
    expected: 'statements that leave the face standing',
    source: 'common practice, no source',
  })
  return undefined
}
