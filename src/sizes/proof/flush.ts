import { dot, norm, sub } from '../../geometry/vec3.ts'
import type { BodyEdge } from '../../kernel/body.ts'
import type { Equation } from './condition.ts'
import { cornerOf } from './corner.ts'
import { SAME } from './elements.ts'
import type { Model, Reading } from './model.ts'

type Circle = Extract<BodyEdge['curve'], { kind: 'circle' }>

/**
 * Where a taper runs out into a cylinder and a flat lays part of their common end bare, the plane there and the circle in
 * which the two meet stand level: they are one shoulder of the drawing.
 */
export function flushEnds(model: Model): Equation[] {
  const rims = model.body.edges.flatMap((edge) => {
    const { curve } = edge
    // a chamfer's border has its own sizes
    if (curve.kind !== 'circle' || edge.faces.some((f) => f !== undefined && model.edged.has(f))) return []
    const readings = edge.faces.map((f) =>
      f === undefined ? undefined : model.readings[model.elementOf.get(f)?.id ?? -1],
    )
    return [{ edge, curve, readings }]
  })
  const has = (readings: readonly (Reading | undefined)[], form: Reading['form']) =>
    readings.find((r) => r?.form === form)
  const result: Equation[] = []
  const seen = new Set<Reading>()
  for (const { edge, curve, readings } of rims) {
    const cone = has(readings, 'cone')
    if (!cone || !has(readings, 'cylinder')) continue
    const bare = rims.find((r) => r.readings.includes(cone) && has(r.readings, 'plane') && isOne(r.curve, curve))
    const plane = bare && has(bare.readings, 'plane')
    const circle = cornerOf(model, edge)
    if (plane?.form !== 'plane' || !circle || seen.has(cone)) continue
    seen.add(cone)
    result.push({
      uses: [...new Set([...circle.uses, ...plane.uses])],
      of: (x) => dot(circle.point(x), plane.normal(x)) - plane.offset(x),
      kind: 'aligned',
    })
  }
  return result
}

const isOne = (a: Circle, b: Circle): boolean =>
  norm(sub(a.axes.origin, b.axes.origin)) < SAME && Math.abs(a.r - b.r) < SAME
