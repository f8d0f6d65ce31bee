import type { Vec3 } from '../../geometry/vec.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import { distinct } from './condition.ts'
import { type Element, SAME } from './elements.ts'
import type { Expression, Model, RoundReading, Values } from './model.ts'

/**
 * Where a hole of radius `r` (mm) begins that is worked into a round: the level along `direction` of the highest material
 * under it, which is the crown of a cylinder, and of a taper the crown at the hole's side towards the large end. Undefined: no
 * round surface beside the hole has its crown at `level`.
 */
export function mouthOf(
  model: Model,
  hole: Element,
  r: number,
  direction: Vec3,
  level: number,
): Expression | undefined {
  const own = model.readings[hole.id]
  if (!own || own.form === 'plane') return undefined
  for (const element of beside(model, hole)) {
    const surface = model.readings[element.id]
    if (surface?.form !== 'cylinder' && surface?.form !== 'cone') continue
    if (Math.abs(dot(surface.direction(model.values), direction)) > 1e-9) continue
    const radius = radiusAt(surface, own, r, model.scale)
    for (const side of [1, -1]) {
      const of = (x: Values) => dot(surface.point(x), direction) + side * radius(x)
      if (Math.abs(of(model.values) - level) < SAME) return { uses: distinct([...surface.uses, ...own.uses]), of }
    }
  }
  return undefined
}

/** Radius of the round where the hole's side towards its large end meets it. */
function radiusAt(surface: RoundReading, hole: RoundReading, r: number, scale: number): (x: Values) => number {
  if (surface.form === 'cylinder') return (x) => x[surface.radius]!
  return (x) => {
    const place = dot(sub(hole.point(x), surface.point(x)), surface.direction(x))
    return (Math.abs(place) + r) * Math.tan(x[surface.half]! / scale)
  }
}

function beside(model: Model, hole: Element): Element[] {
  return model.body.edges.flatMap(({ faces }) => {
    if (!faces.some((f) => f !== undefined && hole.faces.includes(f))) return []
    return faces.flatMap((f) => model.elementOf.get(f ?? -1) ?? []).filter((e) => e !== hole)
  })
}
