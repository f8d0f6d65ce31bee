import type { Vec3 } from '../../geometry/vec.ts'
import { along, cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Body, BodyFace, Curve3, Surface3 } from '../../kernel/body.ts'
import type { Datum, Part, PartFeature } from '../../part/part.ts'

/** An axis with what is round about it: `reach` along the direction from the point, largest radius, faces. */
export interface RoundAxis {
  readonly point: Vec3
  readonly direction: Vec3
  readonly reach: readonly [from: number, to: number]
  readonly radius: number
}

/** One member of a round feature: a hole has one axis, a slot the axes of its two ends. */
export interface RoundMember {
  readonly axes: readonly RoundAxis[]
  /** A closed slot's middle, from which it is located; `alone` where its length is stated overall and its ends are not. */
  readonly middle?: { readonly point: Vec3; readonly alone: boolean }
}

export interface RoundFeature {
  readonly feature: string
  readonly pattern: NonNullable<PartFeature['pattern']>
  readonly members: readonly RoundMember[]
}

/** Kinds that carry centre lines; rounds, fillets, chamfers and bends get none. */
const ROUND_KINDS: ReadonlySet<PartFeature['kind']> = new Set(['hole', 'slot', 'boss', 'bore', 'keyseat'])

/** Everything of the part that gets centre lines, the axis of a turned part first. */
export function roundFeatures(part: Part): RoundFeature[] {
  const own: RoundFeature[] = part.axis
    ? [
        {
          feature: 'axis',
          pattern: { kind: 'single' },
          members: [{ axes: [about(part.axis.point, part.axis.direction, part.body.faces, part.body)] }],
        },
      ]
    : []
  const featured = part.features
    .filter((f) => ROUND_KINDS.has(f.kind))
    .map(
      (f): RoundFeature => ({
        feature: f.id,
        pattern: f.pattern ?? { kind: f.members.length > 1 ? 'points' : 'single' },
        members: f.members.map((m) => {
          const axes = axesOfMember(m.faces, m.outward ?? f.outward, m.axes, part)
          if (f.feature?.kind !== 'slot' || axes.length !== 2) return { axes }
          return { axes, middle: { point: m.point, alone: f.feature.measured === 'overall' } }
        }),
      }),
    )
    .filter((f) => f.members.some((m) => m.axes.length > 0))
  return [...own, ...featured]
}

/** The distinct axes along `outward` of the member's round faces; its named axes where it has no such faces. */
function axesOfMember(faces: readonly number[], outward: Vec3, named: readonly string[], part: Part): RoundAxis[] {
  const round = faces.map((id) => part.body.faces[id]).filter((f): f is BodyFace => f !== undefined)
  const groups: { point: Vec3; direction: Vec3; faces: BodyFace[] }[] = []
  for (const face of round) {
    const axis = axisOfSurface(face.surface)
    if (!axis || norm(cross(axis.direction, outward)) > 1e-9) continue
    const home = groups.find((g) => distanceToAxis(axis.point, g.point, g.direction) < 1e-6)
    if (home) home.faces.push(face)
    else groups.push({ point: axis.point, direction: outward, faces: [face] })
  }
  if (groups.length > 0) return groups.map((g) => about(g.point, g.direction, g.faces, part.body))
  return named.flatMap((id): RoundAxis[] => {
    const datum = part.data.find((d): d is Datum & { kind: 'axis' } => d.id === id && d.kind === 'axis')
    if (!datum) return []
    const on = part.body.faces.filter((f) => isAbout(f.surface, datum.point, datum.direction))
    return on.length > 0 ? [about(datum.point, datum.direction, on, part.body)] : []
  })
}

/** Measures faces about an axis by their borders, which hold the extremes of cylinders and cones. */
function about(point: Vec3, direction: Vec3, faces: readonly BodyFace[], body: Body): RoundAxis {
  let [from, to, radius] = [Infinity, -Infinity, 0]
  for (const face of faces) {
    for (const use of face.loops.flat()) {
      for (const p of samples(body.edges[use.edge]!.curve)) {
        const s = dot(sub(p, point), direction)
        from = Math.min(from, s)
        to = Math.max(to, s)
        radius = Math.max(radius, distanceToAxis(p, point, direction))
      }
    }
  }
  return { point, direction, reach: [from, to], radius }
}

function axisOfSurface(surface: Surface3): { readonly point: Vec3; readonly direction: Vec3 } | undefined {
  if (surface.kind !== 'cylinder' && surface.kind !== 'cone') return undefined
  return { point: surface.axes.origin, direction: surface.axes.z }
}

export function isAbout(surface: Surface3, point: Vec3, direction: Vec3): boolean {
  const axis = axisOfSurface(surface)
  return (
    axis !== undefined &&
    norm(cross(axis.direction, direction)) < 1e-9 &&
    distanceToAxis(axis.point, point, direction) < 1e-6
  )
}

export const distanceToAxis = (p: Vec3, point: Vec3, direction: Vec3): number => norm(cross(sub(p, point), direction))

function samples(curve: Curve3): Vec3[] {
  switch (curve.kind) {
    case 'line':
      return [curve.a, curve.b]
    case 'spline':
      return [...curve.poles]
    default: {
      const [p, q] = curve.kind === 'circle' ? [curve.r, curve.r] : [curve.major, curve.minor]
      const { origin, x, y } = curve.axes
      return [0, 0.25, 0.5, 0.75, 1].map((t) => {
        const a = curve.from + t * curve.sweep
        return along(along(origin, x, p * Math.cos(a)), y, q * Math.sin(a))
      })
    }
  }
}
