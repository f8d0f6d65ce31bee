import type { Vec2 } from '../../geometry/vec.ts'

/**
 * What a straight piece of a placed size is. `tail` is the part of a dimension line outside its extension lines; `across`
 * a dimension line that stands in the view itself, from edge to edge of a step.
 */
export type BarRole = 'dimension' | 'tail' | 'across' | 'extension' | 'leader' | 'shoulder'

/** The bar is part of a dimension line. */
export function ofDimensionLine(role: BarRole): boolean {
  return role === 'dimension' || role === 'tail' || role === 'across'
}

/** A straight piece of line on paper, mm, with its bounds. Arcs stand as chains of bars. */
export interface Bar {
  readonly shape: 'bar'
  readonly role: BarRole
  /** Takes room as an extension line does, but is printed as something else. */
  readonly unseen?: true
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

/** A rectangle on paper, mm, in any attitude: (ux, uy) is the unit direction of its half length `hw`. */
export interface Slab {
  readonly shape: 'slab'
  /** An arrow's direction (ux, uy) points to its tip. */
  readonly role: 'text' | 'arrow' | 'dot'
  /** An arrow at the end of a leader. */
  readonly ofLeader: boolean
  /** Text in a clear part of the step that it measures. */
  readonly inStep?: true
  /** A head that points to the bottom of a groove narrower than itself. */
  readonly inGroove?: true
  readonly cx: number
  readonly cy: number
  readonly ux: number
  readonly uy: number
  readonly hw: number
  readonly hh: number
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

export type Shape = Bar | Slab

/** Lengths below this (mm) are drawing accuracy, not geometry. */
export const TOUCH = 0.12

export function bar(role: BarRole, a: Vec2, b: Vec2): Bar {
  const ax = a[0]
  const ay = a[1]
  const bx = b[0]
  const by = b[1]
  return {
    shape: 'bar',
    role,
    ax,
    ay,
    bx,
    by,
    x0: Math.min(ax, bx),
    y0: Math.min(ay, by),
    x1: Math.max(ax, bx),
    y1: Math.max(ay, by),
  }
}

export function slab(
  role: Slab['role'],
  centre: Vec2,
  along: Vec2,
  halfLength: number,
  halfWidth: number,
  ofLeader = false,
): Slab {
  const cx = centre[0]
  const cy = centre[1]
  const ux = along[0]
  const uy = along[1]
  const ex = Math.abs(ux) * halfLength + Math.abs(uy) * halfWidth
  const ey = Math.abs(uy) * halfLength + Math.abs(ux) * halfWidth
  return {
    shape: 'slab',
    role,
    ofLeader,
    cx,
    cy,
    ux,
    uy,
    hw: halfLength,
    hh: halfWidth,
    x0: cx - ex,
    y0: cy - ey,
    x1: cx + ex,
    y1: cy + ey,
  }
}

/** Bounds overlap when each is grown by half of `margin`. */
export function near(
  a: { x0: number; y0: number; x1: number; y1: number },
  b: { x0: number; y0: number; x1: number; y1: number },
  margin: number,
): boolean {
  return a.x0 - margin < b.x1 && b.x0 - margin < a.x1 && a.y0 - margin < b.y1 && b.y0 - margin < a.y1
}

/** Whether the segment enters the slab grown by `margin` (shrunk where negative). */
export function entersSlab(ax: number, ay: number, bx: number, by: number, s: Slab, margin: number): boolean {
  const w = s.hw + margin
  const h = s.hh + margin
  if (w <= 0 || h <= 0) return false
  const px = (ax - s.cx) * s.ux + (ay - s.cy) * s.uy
  const py = (ay - s.cy) * s.ux - (ax - s.cx) * s.uy
  const dx = (bx - ax) * s.ux + (by - ay) * s.uy
  const dy = (by - ay) * s.ux - (bx - ax) * s.uy
  let lo = 0
  let hi = 1
  // Liang-Barsky in the slab's own axes.
  if (Math.abs(dx) < 1e-9) {
    if (Math.abs(px) >= w) return false
  } else {
    const t0 = (-w - px) / dx
    const t1 = (w - px) / dx
    lo = Math.max(lo, Math.min(t0, t1))
    hi = Math.min(hi, Math.max(t0, t1))
  }
  if (Math.abs(dy) < 1e-9) {
    if (Math.abs(py) >= h) return false
  } else {
    const t0 = (-h - py) / dy
    const t1 = (h - py) / dy
    lo = Math.max(lo, Math.min(t0, t1))
    hi = Math.min(hi, Math.max(t0, t1))
  }
  return lo < hi - 1e-9
}

/** Where along the segment (0 to 1) it lies in the slab grown by `margin`. */
export function withinSlab(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  s: Slab,
  margin: number,
): readonly [number, number] | undefined {
  if (!entersSlab(ax, ay, bx, by, s, margin)) return undefined
  let [lo, hi] = [0, 1]
  const limit = (p: number, d: number, half: number) => {
    if (Math.abs(d) < 1e-9) return
    const [t0, t1] = [(-half - p) / d, (half - p) / d]
    lo = Math.max(lo, Math.min(t0, t1))
    hi = Math.min(hi, Math.max(t0, t1))
  }
  limit((ax - s.cx) * s.ux + (ay - s.cy) * s.uy, (bx - ax) * s.ux + (by - ay) * s.uy, s.hw + margin)
  limit((ay - s.cy) * s.ux - (ax - s.cx) * s.uy, (by - ay) * s.ux - (bx - ax) * s.uy, s.hh + margin)
  return [lo, hi]
}

/** Whether two slabs come closer than `margin` (overlap deeper than −margin where negative). */
export function slabsMeet(a: Slab, b: Slab, margin: number): boolean {
  if (!near(a, b, margin)) return false
  return !apart(a, b, margin) && !apart(b, a, margin)
}

/** Separating-axis test over the axes of `a`. */
function apart(a: Slab, b: Slab, margin: number): boolean {
  const dx = b.cx - a.cx
  const dy = b.cy - a.cy
  const c = Math.abs(a.ux * b.ux + a.uy * b.uy)
  const s = Math.abs(a.ux * b.uy - a.uy * b.ux)
  if (Math.abs(dx * a.ux + dy * a.uy) >= a.hw + b.hw * c + b.hh * s + margin) return true
  return Math.abs(dy * a.ux - dx * a.uy) >= a.hh + b.hw * s + b.hh * c + margin
}

/** How two segments lie: apart, crossing in both interiors, along one another, or parallel side by side. */
export type Meeting =
  | { readonly how: 'apart' }
  | { readonly how: 'cross' }
  | { readonly how: 'along' | 'beside'; readonly overlap: number; readonly distance: number }

const APART: Meeting = { how: 'apart' }
const CROSS: Meeting = { how: 'cross' }

/** `slack`: how far (mm) the second segment may fall short of the first and still count as crossing it. */
export function meet(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
  slack = -TOUCH,
): Meeting {
  const ux = bx - ax
  const uy = by - ay
  const vx = dx - cx
  const vy = dy - cy
  const lu = Math.sqrt(ux * ux + uy * uy)
  const lv = Math.sqrt(vx * vx + vy * vy)
  if (lu < TOUCH || lv < TOUCH) return APART
  const det = ux * vy - uy * vx
  const wx = cx - ax
  const wy = cy - ay
  if (Math.abs(det) < 0.02 * lu * lv) {
    const distance = Math.abs(wx * uy - wy * ux) / lu
    const s = (wx * ux + wy * uy) / lu
    const e = s + (vx * ux + vy * uy) / lu
    const overlap = Math.min(lu, Math.max(s, e)) - Math.max(0, Math.min(s, e))
    if (overlap <= TOUCH) return APART
    return { how: distance < TOUCH ? 'along' : 'beside', overlap, distance }
  }
  const t = (wx * vy - wy * vx) / det
  const u = (wx * uy - wy * ux) / det
  const et = TOUCH / lu
  const eu = -slack / lv
  return t > et && t < 1 - et && u > eu && u < 1 - eu ? CROSS : APART
}
