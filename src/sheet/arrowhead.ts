import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2 } from '../geometry/vec.ts'

/** Closed outline of an arrowhead with its point at `tip`, looking along the unit vector `way`. */
export function arrowhead(tip: Vec2, way: Vec2, size: { readonly length: number; readonly width: number }): Curve2[] {
  const back: Vec2 = [tip[0] - way[0] * size.length, tip[1] - way[1] * size.length]
  const half = size.width / 2
  const left: Vec2 = [back[0] - way[1] * half, back[1] + way[0] * half]
  const right: Vec2 = [back[0] + way[1] * half, back[1] - way[0] * half]
  return [
    { kind: 'line', a: tip, b: left },
    { kind: 'line', a: left, b: right },
    { kind: 'line', a: right, b: tip },
  ]
}
