import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { figureOutlines } from './metrics-data.ts'

const read = new Map<string, readonly Curve2[]>()

/** The outline of a figure 0 to 9, in capital heights: contours of lines and quadratic splines, to be filled. */
export function figureOutline(figure: string): readonly Curve2[] {
  const known = read.get(figure)
  if (known) return known
  const curves: Curve2[] = []
  let at: Vec2 = [0, 0]
  let start: Vec2 = [0, 0]
  const close = () => {
    if (at[0] !== start[0] || at[1] !== start[1]) curves.push({ kind: 'line', a: at, b: start })
  }
  for (const [, command, numbers] of (figureOutlines[figure] ?? '').matchAll(/([MLQ])([-\d ]+)/g)) {
    const n = numbers!.split(' ').map((t) => Number(t) / 1000)
    const end: Vec2 = [n[n.length - 2]!, n[n.length - 1]!]
    if (command === 'M') {
      close()
      start = end
    } else if (command === 'L') curves.push({ kind: 'line', a: at, b: end })
    else curves.push({ kind: 'spline', degree: 2, knots: [0, 0, 0, 1, 1, 1], poles: [at, [n[0]!, n[1]!], end] })
    at = end
  }
  close()
  read.set(figure, curves)
  return curves
}
