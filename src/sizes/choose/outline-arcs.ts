import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { BodyEdge } from '../../kernel/body.ts'
import type { Reach } from '../dimension.ts'
import { axisIndex, type Element, SAME } from '../proof/elements.ts'
import type { Model } from '../proof/model.ts'

/** A point of an arc's axis, with the arc's faces. */
export interface Centre {
  readonly at: Vec3
  readonly axis: Vec3
  readonly faces: readonly number[]
}

interface Arc {
  readonly element: Element
  readonly centre: Centre
  readonly r: number
  /** Straight borders along the axis. */
  readonly borders: readonly BodyEdge[]
}

function arcsOf(model: Model): Arc[] {
  return model.elements.flatMap((element): Arc[] => {
    const { surface, faces } = element
    if (surface.kind !== 'cylinder') return []
    const borders = model.body.edges.filter((e) => e.curve.kind === 'line' && e.faces.some((f) => faces.includes(f!)))
    const centre = { at: surface.axes.origin, axis: surface.axes.z, faces }
    return borders.length > 0 ? [{ element, centre, r: surface.r, borders }] : []
  })
}

const besides = (model: Model, arc: Arc, edge: BodyEdge): Element | undefined =>
  edge.faces
    .map((f) => (f === undefined ? undefined : model.elementOf.get(f)))
    .find((e) => e !== undefined && e !== arc.element)

/**
 * Half rounds, and the side that each is cut in: the two borders stand a diameter apart, and one of the sides beside
 * them passes through the centre. Their ends then stand level to first order whatever the radius, so that no size of
 * the ends can place the centre off that side.
 */
export function halfRounds(
  model: Model,
): { readonly centre: Centre; readonly side: Reach; readonly direction: Vec3 }[] {
  return arcsOf(model).flatMap((arc) => {
    const [a, b] = arc.borders
    if (arc.borders.length !== 2 || a?.curve.kind !== 'line' || b?.curve.kind !== 'line') return []
    const { at, axis } = arc.centre
    const apart = norm(cross(sub(b.curve.a, a.curve.a), axis))
    if (Math.abs(apart - 2 * arc.r) > SAME) return []
    for (const edge of arc.borders) {
      const side = besides(model, arc, edge)
      if (side?.surface.kind !== 'plane') continue
      const { z, origin } = side.surface.axes
      const k = axisIndex(z)
      if (k === undefined || Math.abs(dot(sub(at, origin), z)) > SAME) continue
      const direction: Vec3 = [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
      return [
        { centre: arc.centre, side: { at: origin, name: 'side of the half round', faces: side.faces }, direction },
      ]
    }
    return []
  })
}

/** The centre of the arc that runs smoothly into a side at the point, level with the point along the direction. */
export function tangentCentre(model: Model, at: Vec3, direction: Vec3): Centre | undefined {
  const onLine = ({ curve }: BodyEdge) =>
    curve.kind === 'line' && norm(cross(sub(at, curve.a), sub(curve.b, curve.a))) / norm(sub(curve.b, curve.a)) < SAME
  return arcsOf(model).find(
    (arc) => Math.abs(dot(sub(arc.centre.at, at), direction)) < SAME && arc.borders.some((e) => e.smooth && onLine(e)),
  )?.centre
}
