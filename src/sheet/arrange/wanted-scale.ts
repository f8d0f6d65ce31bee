import type { View } from '../../views/view.ts'

/** Figures by which a drawing counts as readable (common practice, no source). */
const READABLE = {
  /** A hole's circle on paper, mm. */
  circle: 3,
  /** A short edge on paper, mm: the least space between lines (ISO 128-2) and a line's width. */
  edge: 1.2,
  /** The longest side of the part on paper, mm. */
  part: 80,
  /** A part is enlarged for a small feature no further than to this on paper, mm: its size and place are told by numbers. */
  enlarged: 160,
  most: 20,
}

/**
 * The scale (paper over part) at which the smallest circle and edge of the views can still be read and the part fills
 * a hand's breadth of paper; enlarged no further than to two.
 */
export function wantedScale(views: readonly View[]): number {
  let circle = Infinity
  let edge = Infinity
  let longest = 0
  for (const view of views) {
    if (view.kind === 'pictorial') continue
    const [w, h] = [view.box.max[0] - view.box.min[0], view.box.max[1] - view.box.min[1]]
    longest = Math.max(longest, w, h)
    for (const { kind, curve } of view.lines) {
      if (kind !== 'visible') continue
      if (curve.kind === 'arc') {
        if (Math.abs(curve.sweep) > 6) circle = Math.min(circle, 2 * curve.r)
      } else if (curve.kind === 'line') {
        edge = Math.min(edge, Math.hypot(curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]))
      }
    }
  }
  const wanted = Math.max(READABLE.circle / circle, READABLE.edge / edge, longest > 0 ? READABLE.part / longest : 0)
  const large = longest > 0 ? Math.max(1, READABLE.enlarged / longest) : 1
  return Math.min(READABLE.most, large, wanted)
}
