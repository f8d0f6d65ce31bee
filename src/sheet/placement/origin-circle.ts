import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Drawn } from './form.ts'
import { flattened } from './ink.ts'
import { bar, type Shape } from './shapes.ts'

/** The circle at an origin, as printed and as the room it takes. */
export function originCircle(
  c: Vec2,
  r: number,
): { readonly stroke: Drawn['strokes'][number]; readonly shapes: readonly Shape[] } {
  const curve: Curve2 = { kind: 'arc', c, r, from: 0, sweep: 2 * Math.PI }
  const points = flattened(curve)
  const shapes = points.slice(1).map((p, i): Shape => ({ ...bar('extension', points[i]!, p), unseen: true }))
  return { stroke: { kind: 'dimension', curve }, shapes }
}
