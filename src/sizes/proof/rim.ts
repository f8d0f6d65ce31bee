import { norm, sub } from '../../geometry/vec3.ts'
import type { Reach } from '../dimension.ts'
import { cornerOf } from './corner.ts'
import { type AxisIndex, SAME } from './elements.ts'
import type { Expression, Model, RoundReading, Values } from './model.ts'

/**
 * The crown along `k` of a circle in which the reach's own cone ends: the sharp edge of a taper at its large end, from
 * which the depth of a keyseat is given. Undefined: no such circle has its crown there.
 */
export function crownOfRim(model: Model, reach: Reach, k: AxisIndex): Expression | undefined {
  for (const edge of model.body.edges) {
    const { curve } = edge
    if (curve.kind !== 'circle') continue
    const cone = edge.faces
      .filter((f) => f !== undefined && reach.faces?.includes(f))
      .map((f) => model.readings[model.elementOf.get(f!)?.id ?? -1])
      .find((r): r is RoundReading => r?.form === 'cone')
    const side = Math.sign(reach.at[k] - curve.axes.origin[k])
    if (!cone || side === 0 || Math.abs(curve.axes.origin[k] + side * curve.r - reach.at[k]) > SAME) continue
    const centre = cornerOf(model, edge)
    if (!centre) continue
    const radius = (x: Values) => norm(sub(centre.point(x), cone.point(x))) * Math.tan(x[cone.half]! / model.scale)
    const uses = [...new Set([...centre.uses, ...cone.uses])]
    return { uses, of: (x) => cone.point(x)[k] + side * radius(x) }
  }
  return undefined
}
