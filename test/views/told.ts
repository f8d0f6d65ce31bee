import type { Curve2 } from '../../src/geometry/curve2.ts'
import { endOf, startOf } from '../../src/geometry/evaluate.ts'
import type { Vec2 } from '../../src/geometry/vec.ts'

const round = (x: number) => {
  const r = Math.round(x * 1e6) / 1e6
  return Object.is(r, -0) ? '0' : String(r)
}
const point = (p: Vec2) => `${round(p[0])},${round(p[1])}`

/** A curve in words that do not depend on its direction: `line 0,0 40,0`, `circle 10,10 r3`, `arc 0,0 r5 5,0 0,5`. */
export function told(curve: Curve2): string {
  const ends = [startOf(curve), endOf(curve)]
    .map((p) => [round(p[0]), round(p[1])] as const)
    .sort((a, b) => Number(a[0]) - Number(b[0]) || Number(a[1]) - Number(b[1]))
    .map((p) => p.join(','))
  switch (curve.kind) {
    case 'line':
      return `line ${ends.join(' ')}`
    case 'arc':
      return Math.abs(Math.abs(curve.sweep) - 2 * Math.PI) < 1e-9
        ? `circle ${point(curve.c)} r${round(curve.r)}`
        : `arc ${point(curve.c)} r${round(curve.r)} ${ends.join(' ')}`
    case 'ellipse': {
      const size = Math.hypot(...curve.major)
      const whole = Math.abs(Math.abs(curve.sweep) - 2 * Math.PI) < 1e-9
      return `ellipse ${point(curve.c)} ${round(size)}×${round(size * Math.abs(curve.ratio))}${whole ? '' : ` ${ends.join(' ')}`}`
    }
    case 'spline':
      return `spline ${ends.join(' ')}`
  }
}

/** Lines as sorted sentences, for comparison with a hand-worked answer. */
export const toldAll = (
  lines: readonly { readonly curve: Curve2; readonly kind: string; readonly covered?: true }[],
): string[] => lines.map((l) => `${l.covered ? 'covered ' : ''}${l.kind} ${told(l.curve)}`).sort()
