import type { Stand } from './board.ts'
import { type Bar, meet, near, ofDimensionLine } from './shapes.ts'

/** How many times extension lines and leaders cross dimension lines of other sizes. */
export function crossingsOf(stands: readonly Stand[]): number {
  const bars = stands.flatMap((s) =>
    s.settled.flatMap((x) =>
      x.shapes.filter((b): b is Bar => b.shape === 'bar').map((bar) => ({ bar, of: x, unit: s })),
    ),
  )
  let count = 0
  for (const p of bars) {
    if (!ofDimensionLine(p.bar.role)) continue
    for (const q of bars) {
      if (q.of === p.of || (q.unit === p.unit && p.unit.option.settled)) continue
      if (ofDimensionLine(q.bar.role) || !near(p.bar, q.bar, 0)) continue
      if (meet(p.bar.ax, p.bar.ay, p.bar.bx, p.bar.by, q.bar.ax, q.bar.ay, q.bar.bx, q.bar.by, 0.6).how === 'cross')
        count++
    }
  }
  return count
}
