import type { Vec2 } from '../../geometry/vec.ts'
import type { View, ViewLine } from '../view.ts'

/**
 * A straight centre line no longer than what is drawn: where flats or other cuts have taken the round away, it ends at
 * the outline's box and not where the whole circle would have been.
 */
export function withinBox(line: ViewLine, box: View['box']): ViewLine {
  const { curve } = line
  if (curve.kind !== 'line') return line
  const { a, b } = curve
  let [from, to] = [0, 1]
  for (const k of [0, 1] as const) {
    const d = b[k] - a[k]
    if (Math.abs(d) < 1e-9) continue
    const [s, t] = [(box.min[k] - a[k]) / d, (box.max[k] - a[k]) / d]
    from = Math.max(from, Math.min(s, t))
    to = Math.min(to, Math.max(s, t))
  }
  if (from >= to || (from === 0 && to === 1)) return line
  const at = (t: number): Vec2 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  return { ...line, curve: { kind: 'line', a: at(from), b: at(to) } }
}
