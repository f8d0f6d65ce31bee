import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, norm, scale, sub, unit } from '../../geometry/vec3.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { Part } from '../../part/part.ts'

/** The true geometry that a feature stands for: a plane (face, or middle of a width) or an axis. */
export interface Element {
  readonly kind: 'plane' | 'axis'
  readonly point: Vec3
  /** Unit normal of a plane, unit direction of an axis. */
  readonly direction: Vec3
}

type Solid = Pick<Part, 'body' | 'features'>

/** The elements of a feature, one for each member of a pattern; none for cones and free forms. */
export function elementsOf({ body, features }: Solid, feature: NamedFeature): Element[] {
  const faces = body.faces.filter((f) => feature.faces.includes(f.id))
  const direction = unit(feature.direction)
  if (feature.kind === 'plane')
    return faces
      .slice(0, 1)
      .flatMap((f) => (f.surface.kind === 'plane' ? [{ kind: 'plane', point: f.surface.axes.origin, direction }] : []))
  if (feature.kind === 'round') {
    const axes = faces.flatMap((f): Element[] =>
      f.surface.kind === 'cylinder'
        ? [{ kind: 'axis', point: f.surface.axes.origin, direction: unit(f.surface.axes.z) }]
        : [],
    )
    return axes.filter((a, i) => i === axes.findIndex((b) => isSameAxis(a, b)))
  }
  const members = features.find((f) => f.id === feature.feature)?.members.map((m) => m.faces) ?? [feature.faces]
  return members.flatMap((own): Element[] => {
    const at = faces.flatMap((f) =>
      own.includes(f.id) && f.surface.kind === 'plane' ? [dot(f.surface.axes.origin, direction)] : [],
    )
    const middle = at.length < 2 ? middleOfVee(body, own, direction) : (Math.min(...at) + Math.max(...at)) / 2
    return middle === undefined ? [] : [{ kind: 'plane', point: scale(direction, middle), direction }]
  })
}

/** Where along the direction the two sides of a vee meet that lean alike to it. */
function middleOfVee(body: Part['body'], own: readonly number[], direction: Vec3): number | undefined {
  const sides = body.faces.flatMap((f) => {
    if (!own.includes(f.id) || f.surface.kind !== 'plane') return []
    const { z, origin } = f.surface.axes
    const lean = dot(z, direction)
    if (Math.abs(lean) < 1e-9) return []
    // One sense for both: across to the same hand, so that what is left of the two normals is opposite.
    const n = lean > 0 ? z : scale(z, -1)
    return [{ n, lean: Math.abs(lean), offset: dot(n, origin) }]
  })
  const [a, b] = sides
  if (sides.length !== 2 || !a || !b || Math.abs(a.lean - b.lean) > 1e-9) return undefined
  const both = add(a.n, b.n)
  return norm(cross(both, direction)) < 1e-9 ? (a.offset + b.offset) / (2 * a.lean) : undefined
}

function isSameAxis(a: Element, b: Element): boolean {
  const apart = sub(a.point, b.point)
  return norm(cross(a.direction, b.direction)) < 1e-9 && norm(cross(apart, a.direction)) < 1e-6
}

/** Two unit vectors square to a direction and to each other. */
export function across(direction: Vec3): readonly [Vec3, Vec3] {
  const k = [0, 1, 2].reduce((a, b) => (Math.abs(direction[b]!) < Math.abs(direction[a]!) ? b : a))
  const aside: Vec3 = [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
  const first = unit(cross(direction, aside))
  return [first, cross(direction, first)]
}

/** Where an axis stands nearest to a point. */
export const footOn = ({ point, direction }: Element, p: Vec3): Vec3 =>
  add(point, scale(direction, dot(sub(p, point), direction)))
