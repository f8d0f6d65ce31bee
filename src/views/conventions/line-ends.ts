import { boxOf, derivativeAt, endOf, startOf } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { LineEnd, ViewLine } from '../view.ts'
import { nearest } from './nearest.ts'

/**
 * Says of both ends of every hidden and centre line what is there, so that dashes can be fitted: `continues` where it
 * runs on in the direction of a visible line, or a centre line in that of any outline (a gap must part them); `corner`
 * where it meets any other outline (a dash must touch); `free` where nothing is. Other kinds pass through.
 */
export function withEnds(lines: readonly ViewLine[], tolerance: number): ViewLine[] {
  const outline = lines
    .filter((l) => l.kind === 'visible' || l.kind === 'hidden')
    .map((l) => ({ line: l, box: boxOf(l.curve) }))
  return lines.map((line) => {
    if ((line.kind !== 'hidden' && line.kind !== 'centre') || line.covered) return line
    const closed = distance(startOf(line.curve), endOf(line.curve)) <= tolerance
    const end = (p: Vec2, outward: Vec2): LineEnd => {
      let corner = closed
      for (const other of outline) {
        if (other.line === line || outside(other.box, p, tolerance)) continue
        if (nearest(other.line.curve, p).distance > tolerance) continue
        corner = true
        const parts = other.line.kind === 'visible' || line.kind === 'centre'
        if (parts && runsOn(other.line, p, outward, tolerance)) return 'continues'
      }
      return corner ? 'corner' : 'free'
    }
    const d0 = derivativeAt(line.curve, 0)
    const d1 = derivativeAt(line.curve, 1)
    return { ...line, ends: [end(startOf(line.curve), [-d0[0], -d0[1]]), end(endOf(line.curve), d1)] }
  })
}

/** True where `other` starts or ends at p and leads away in the direction `outward`. */
function runsOn(other: ViewLine, p: Vec2, outward: Vec2, tolerance: number): boolean {
  const d0 = derivativeAt(other.curve, 0)
  const d1 = derivativeAt(other.curve, 1)
  if (distance(startOf(other.curve), p) <= tolerance && sameWay(d0, outward)) return true
  return distance(endOf(other.curve), p) <= tolerance && sameWay([-d1[0], -d1[1]], outward)
}

/** Directions within about a twentieth of a degree. */
function sameWay(a: Vec2, b: Vec2): boolean {
  const cross = a[0] * b[1] - a[1] * b[0]
  const dot = a[0] * b[0] + a[1] * b[1]
  return dot > 0 && Math.abs(cross) < 1e-3 * dot
}

const distance = (a: Vec2, b: Vec2) => Math.hypot(a[0] - b[0], a[1] - b[1])

function outside(box: { readonly min: Vec2; readonly max: Vec2 }, p: Vec2, by: number): boolean {
  return p[0] < box.min[0] - by || p[0] > box.max[0] + by || p[1] < box.min[1] - by || p[1] > box.max[1] + by
}
