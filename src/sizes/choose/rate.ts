import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { add, dot, scale } from '../../geometry/vec3.ts'
import type { BodyFace } from '../../kernel/body.ts'
import { rateCallout } from '../callout/shapes.ts'
import type { SignWay } from '../callout/sign-ways.ts'
import type { Statement } from '../dimension.ts'
import { type Context, mooringOf } from './context.ts'
import type { Draft } from './draft.ts'
import type { Chosen } from './kinds.ts'
import { showSlope } from './show.ts'

/**
 * A taper or slope by its rate: a note on a leader to the contour, its sign turned as the taper or slope runs in the
 * view (ISO 3040:2016 clause 5, from memory).
 */
export function rateDraft(context: Context, chosen: Chosen<'angle'>): Draft | undefined {
  const { angle, from, to } = chosen
  const faces = context.part.body.faces.filter((f) => f.name === to && isRated(f, angle.rate))
  const ids = faces.map((f) => f.id)
  const [first] = faces
  const base = mooringOf(context, from, [0, 0, 0])
  if (!first || (angle.rate === 'slope' && base?.faces[0] === undefined)) {
    context.marks.push({
      rule: 'size-reaches-nothing',
      weight: 'look again',
      text: `The ${angle.rate} that this rate is for is no longer on the part; another statement has cut it away.`,
      span: chosen.span,
      expected: 'statements that leave the face standing',
      source: 'common practice, no source',
    })
    return undefined
  }
  const states: Statement[] =
    angle.rate === 'taper'
      ? [{ kind: 'cone angle', faces: ids }]
      : [{ kind: 'angle', faces: [base!.faces[0]!, first.id] }]
  const slope = showSlope(context, ids)
  return {
    id: `stock/${angle.rate}/${to}`,
    callout: rateCallout(angle, context.writing, 'right'),
    value: angle.value,
    angle,
    leg: lengthOf(context, ids),
    direction: 'angle',
    states,
    shows: (sight) => {
      const showing = slope(sight)
      if (showing?.measured.kind !== 'leader') return showing
      const inPlane = (d: Vec3) => sight.inPlane(d)
      const way = first.surface.kind === 'cone' ? narrowing(first, inPlane) : falling(first, base?.normal, inPlane)
      return { ...showing, callout: rateCallout(angle, context.writing, way) }
    },
    span: chosen.span,
  }
}

const isRated = (f: BodyFace, rate: 'taper' | 'slope' | undefined): boolean =>
  f.surface.kind === (rate === 'taper' ? 'cone' : 'plane')

type InPlane = (direction: Vec3) => Vec2 | undefined

/** Where the cone's narrow end looks. */
function narrowing({ surface }: BodyFace, inPlane: InPlane): SignWay {
  if (surface.kind !== 'cone') return 'right'
  return wayOf(inPlane(scale(surface.axes.z, surface.halfAngle > 0 ? -1 : 1)))
}

/** Where the sign's thin end looks: down the slope, along its base. */
function falling({ surface, reversed }: BodyFace, base: Vec3 | undefined, inPlane: InPlane): SignWay {
  if (surface.kind !== 'plane' || !base) return 'right'
  const out = scale(surface.axes.z, reversed ? -1 : 1)
  return wayOf(inPlane(add(out, scale(base, -dot(out, base)))))
}

/** The nearest of the four ways of a drawing. */
function wayOf(way: Vec2 | undefined): SignWay {
  if (!way) return 'right'
  if (Math.abs(way[0]) >= Math.abs(way[1])) return way[0] < 0 ? 'left' : 'right'
  return way[1] < 0 ? 'down' : 'up'
}

/** Longest straight border of the faces, or the distance of their circles, mm. */
function lengthOf(context: Context, ids: readonly number[]): number {
  const borders = context.part.body.edges.filter((e) => e.faces.some((f) => f !== undefined && ids.includes(f)))
  const points = borders.flatMap(({ curve }): Vec3[] =>
    curve.kind === 'line' ? [curve.a, curve.b] : curve.kind === 'circle' ? [curve.axes.origin] : [],
  )
  const apart = (p: Vec3, q: Vec3) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
  return Math.max(10, ...points.flatMap((p) => points.map((q) => apart(p, q))))
}
