import type { Curve2 } from '../geometry/curve2.ts'
import { boxOfCurves, endOf, lengthOf, pointAt, startOf } from '../geometry/evaluate.ts'
import { intersections } from '../geometry/intersect.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'

/** Closed loops that bound a cut region, outer first, on paper (mm). */
export type Region = readonly (readonly Curve2[])[]

export interface HatchStyle {
  /** Degrees. */
  readonly angle: number
  /** mm between lines. */
  readonly spacing: number
  /** mm from the origin to a line; absent: where the lines keep clear of corners. */
  readonly offset?: number
}

/** Directions tried, the usual one first. */
const ANGLES = [0, 90, -15, 15, 75, 105] as const
/** An outline within this of the hatching, or square to it, is avoided (ASME Y14.3-2012 §4.3, from memory). */
const CLEAR_OF_OUTLINE = 12

/**
 * Direction and spacing for all cut regions of one part, which must look alike in every section (ISO 128-3; ASME
 * Y14.3): 45° unless an outline runs that way; spacing by the largest region.
 */
export function hatchStyle(regions: readonly Region[], figures: PracticeFigures): HatchStyle {
  const { angle, spacing } = figures.hatching
  const sloping: { direction: number; length: number }[] = []
  let area = 0
  for (const region of regions) {
    for (const loop of region) {
      for (const c of loop) {
        if (c.kind !== 'line') continue
        const direction = (Math.atan2(c.b[1] - c.a[1], c.b[0] - c.a[0]) * 180) / Math.PI
        sloping.push({ direction, length: lengthOf(c) })
      }
    }
    const box = boxOfCurves(region[0] ?? [])
    area = Math.max(area, (box.max[0] - box.min[0]) * (box.max[1] - box.min[1]))
  }
  const clash = (a: number) =>
    sloping.reduce((sum, s) => sum + (apart(a, s.direction) < CLEAR_OF_OUTLINE ? s.length : 0), 0)
  let best = angle as number
  for (const turn of ANGLES) if (clash(angle + turn) < clash(best) - 1e-6) best = angle + turn
  // Small areas close, large ones wide: the spacing grows with the side of the region (common practice, no source).
  const side = Math.sqrt(Math.max(0, area))
  const spread = Math.min(1, Math.max(0, (side - 20) / 130))
  const wide = spacing[0] + (spacing[1] - spacing[0]) * spread
  return { angle: best, spacing: Math.round(wide * 4) / 4 }
}

/** Degrees between two directions of lines. */
function apart(a: number, b: number): number {
  const d = Math.abs(a - b) % 180
  return Math.min(d, 180 - d)
}

/** Lines that fill a region, cut exactly where they meet its loops. */
export function hatchLines(region: Region, style: HatchStyle): Curve2[] {
  const curves = region.flat()
  if (curves.length === 0) return []
  const turn = (style.angle * Math.PI) / 180
  const along: Vec2 = [Math.cos(turn), Math.sin(turn)]
  const across: Vec2 = [-along[1], along[0]]
  const box = boxOfCurves(curves)
  const corners: Vec2[] = [box.min, box.max, [box.min[0], box.max[1]], [box.max[0], box.min[1]]]
  const on = (p: Vec2, d: Vec2) => p[0] * d[0] + p[1] * d[1]
  const [lo, hi] = [Math.min(...corners.map((c) => on(c, across))), Math.max(...corners.map((c) => on(c, across)))]
  const [from, to] = [
    Math.min(...corners.map((c) => on(c, along))) - 1,
    Math.max(...corners.map((c) => on(c, along))) + 1,
  ]
  const start = style.offset ?? phase(curves, across, style.spacing)
  const first = Math.ceil((lo - start) / style.spacing)
  const lines: Curve2[] = []
  for (let k = first; start + k * style.spacing < hi; k++) {
    const level = start + k * style.spacing
    const at = (s: number): Vec2 => [along[0] * s + across[0] * level, along[1] * s + across[1] * level]
    const ray: Curve2 = { kind: 'line', a: at(from), b: at(to) }
    const hits: number[] = []
    for (const c of curves) for (const hit of intersections(ray, c, 1e-7)) hits.push(from + hit.a * (to - from))
    hits.sort((a, b) => a - b)
    const stops = hits.filter((s, i) => i === 0 || s - hits[i - 1]! > 1e-6)
    for (let i = 0; i + 1 < stops.length; i++) {
      const [a, b] = [stops[i]!, stops[i + 1]!]
      if (b - a < LEAST_LINE || !within(at((a + b) / 2), curves, along)) continue
      lines.push({ kind: 'line', a: at(a), b: at(b) })
    }
  }
  return lines
}

/** Shorter lines would print as dots. */
const LEAST_LINE = 0.3

/** The offset at which lines keep clearest of the corners and of the tangent points of the loops. */
function phase(curves: readonly Curve2[], across: Vec2, spacing: number): number {
  const levels = curves.flatMap((c) =>
    [startOf(c), endOf(c), ...(c.kind === 'arc' ? poles(c, across) : [pointAt(c, 0.5)])].map(
      (p) => (((p[0] * across[0] + p[1] * across[1]) % spacing) + spacing) % spacing,
    ),
  )
  let best = 0
  let widest = -1
  for (let i = 0; i < 16; i++) {
    const offset = ((i + 0.5) * spacing) / 16
    const clear = Math.min(
      ...levels.map((l) => {
        const d = Math.abs(l - offset)
        return Math.min(d, spacing - d)
      }),
    )
    if (clear > widest + 1e-9) {
      widest = clear
      best = offset
    }
  }
  return best
}

function poles(c: Extract<Curve2, { kind: 'arc' }>, across: Vec2): Vec2[] {
  return [1, -1].map((s): Vec2 => [c.c[0] + s * c.r * across[0], c.c[1] + s * c.r * across[1]])
}

/** Even-odd rule on a ray slightly turned, so that it passes no corner that hatch lines were set to avoid. */
function within(p: Vec2, curves: readonly Curve2[], along: Vec2): boolean {
  const far: Vec2 = [p[0] + along[0] * REACH, p[1] + along[1] * REACH]
  const ray: Curve2 = { kind: 'line', a: p, b: far }
  let crossings = 0
  const seen: number[] = []
  for (const c of curves) {
    for (const hit of intersections(ray, c, 1e-7)) {
      const s = hit.a * REACH
      // Neighbours of a loop share their end point: one crossing.
      if (seen.some((other) => Math.abs(other - s) < 1e-6)) continue
      seen.push(s)
      crossings++
    }
  }
  return crossings % 2 === 1
}

/** Longer than any sheet. */
const REACH = 2000
