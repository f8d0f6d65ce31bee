import { startOf, sweepParameter } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import type { View, ViewLine } from '../views/view.ts'

/**
 * The view as it can be printed at `scale`: of the two edges of a chamfer or another slope that would stand nearer than
 * the least space, or leave less white between them than a narrow line is wide, one is left out; beside dashes the
 * least space is left white, for a hidden edge tells less than it blurs (common practice, no source). The outline stays;
 * of two lines within it the one of the smaller dimension stays (ISO 128-3:2022, slight slopes and tapers, from memory).
 */
export function withoutSlightSlopes(view: View, scale: number, figures: PracticeFigures): View {
  const widthOf = (l: ViewLine) => (l.kind === 'visible' ? figures.widths.thick : figures.widths.thin)
  const fits = (a: ViewLine, b: ViewLine) => {
    const widths = (widthOf(a) + widthOf(b)) / 2
    if (a.kind === 'hidden' || b.kind === 'hidden') return widths + figures.leastSpace
    return Math.max(figures.leastSpace, widths + figures.widths.thin)
  }
  const out = new Set<ViewLine>()
  const sloping = view.lines.filter((l) => l.slopes && (l.kind === 'visible' || l.kind === 'hidden'))
  for (const [i, a] of sloping.entries()) {
    for (const b of sloping.slice(i + 1)) {
      if (out.has(a) || out.has(b) || !a.slopes!.some((id) => b.slopes!.includes(id))) continue
      const apart = spaceBetween(a, b)
      if (apart === undefined) continue
      if (apart * scale >= fits(a, b) - 1e-6) continue
      const gone = lesser(a, b, view)
      if (gone) out.add(gone)
    }
  }
  return out.size === 0 ? view : { ...view, lines: view.lines.filter((l) => !out.has(l)) }
}

/** Distance of two lines side by side, mm on the part; undefined where they are not. */
function spaceBetween({ curve: a }: ViewLine, { curve: b }: ViewLine): number | undefined {
  if (a.kind === 'arc' && b.kind === 'arc') {
    const off = Math.hypot(a.c[0] - b.c[0], a.c[1] - b.c[1])
    return off < 1e-6 ? Math.abs(a.r - b.r) : undefined
  }
  if (a.kind !== 'line' || b.kind !== 'line') return undefined
  const [ux, uy] = [a.b[0] - a.a[0], a.b[1] - a.a[1]]
  const [vx, vy] = [b.b[0] - b.a[0], b.b[1] - b.a[1]]
  const [lu, lv] = [Math.hypot(ux, uy), Math.hypot(vx, vy)]
  if (Math.abs(ux * vy - uy * vx) > 1e-6 * lu * lv) return undefined
  const along = (p: Vec2) => ((p[0] - a.a[0]) * ux + (p[1] - a.a[1]) * uy) / lu
  const [s, e] = [along(b.a), along(b.b)].sort((p, q) => p - q) as [number, number]
  if (Math.min(lu, e) - Math.max(0, s) < 0.5 * Math.min(lu, lv)) return undefined
  return Math.abs((b.a[0] - a.a[0]) * uy - (b.a[1] - a.a[1]) * ux) / lu
}

/** The line to leave out; neither where both belong to the outline. */
function lesser(a: ViewLine, b: ViewLine, view: View): ViewLine | undefined {
  if (a.kind !== b.kind) return a.kind === 'hidden' ? a : b
  const [outerA, outerB] = [seesOut(a, b, view), seesOut(b, a, view)]
  if (outerA || outerB) return outerA && outerB ? undefined : outerA ? b : a
  return sizeOf(a) > sizeOf(b) ? a : b
}

function sizeOf({ curve: c }: ViewLine): number {
  if (c.kind === 'arc') return c.r
  return c.kind === 'line' ? Math.hypot(c.b[0] - c.a[0], c.b[1] - c.a[1]) : 0
}

/** Whether nothing visible stands beyond the line on the side away from the other, looked at in three places. */
function seesOut(line: ViewLine, other: ViewLine, view: View): boolean {
  return [0.1, 0.5, 0.9].some((t) => {
    const [from, way] = lookout(line, other, t)
    return !view.lines.some((l) => l !== line && l.kind === 'visible' && meetsRay(l, from, way))
  })
}

/** A point of the line and the unit direction away from the other. */
function lookout({ curve: c }: ViewLine, { curve: o }: ViewLine, t: number): readonly [from: Vec2, way: Vec2] {
  if (c.kind === 'arc' && o.kind === 'arc') {
    const angle = c.from + t * c.sweep
    const out: Vec2 = [Math.cos(angle), Math.sin(angle)]
    const sign = c.r > o.r ? 1 : -1
    return [
      [c.c[0] + c.r * out[0], c.c[1] + c.r * out[1]],
      [sign * out[0], sign * out[1]],
    ]
  }
  const a = startOf(c)
  const b: Vec2 = c.kind === 'line' ? c.b : a
  const from: Vec2 = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  const n: Vec2 = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length]
  const q = startOf(o)
  const sign = (q[0] - from[0]) * n[0] + (q[1] - from[1]) * n[1] > 0 ? -1 : 1
  return [from, [sign * n[0], sign * n[1]]]
}

function meetsRay({ curve: c }: ViewLine, from: Vec2, way: Vec2): boolean {
  const near = 1e-6
  if (c.kind === 'line') {
    const [vx, vy] = [c.b[0] - c.a[0], c.b[1] - c.a[1]]
    const det = way[0] * vy - way[1] * vx
    if (Math.abs(det) < 1e-9 * Math.hypot(vx, vy)) return false
    const [wx, wy] = [c.a[0] - from[0], c.a[1] - from[1]]
    const t = (wx * vy - wy * vx) / det
    const u = (wx * way[1] - wy * way[0]) / det
    return t > near && u > -near && u < 1 + near
  }
  if (c.kind !== 'arc') return false
  const [wx, wy] = [from[0] - c.c[0], from[1] - c.c[1]]
  const half = wx * way[0] + wy * way[1]
  const square = half * half - (wx * wx + wy * wy - c.r * c.r)
  if (square < 0) return false
  return [-half - Math.sqrt(square), -half + Math.sqrt(square)].some((t) => {
    if (t <= near) return false
    const at = Math.atan2(from[1] + t * way[1] - c.c[1], from[0] + t * way[0] - c.c[0])
    return sweepParameter(c.from, c.sweep, at) !== undefined
  })
}
