import type { Span } from '../brief/span.ts'
import type { Curve2 } from '../geometry/curve2.ts'
import { boxOfCurves } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { landUnder } from './lands.ts'
import type { Footprint, Relief, WorkFace } from './model.ts'
import { clearance } from './profile-edit.ts'
import { axisOf, faceAxes, outwardOf } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** The material under a footprint, along the axis of the face. */
export interface Column {
  /** Coordinate of the surface that depths run from: the highest under the footprint. */
  readonly at: number
  /** Material below it, mm. Nothing is left where it is not greater than zero. */
  readonly thick: number
  /** A feature whose wall crosses the footprint at the surface, so that it stands on two levels. */
  readonly crossed?: string
}

const SLACK = 1e-7

function lies({ points, r }: Footprint, relief: Relief): 'in' | 'out' | 'across' {
  let [inside, outside] = [false, false]
  for (const p of points) {
    const { min, max } = relief.box
    if (p[0] + r < min[0] || p[0] - r > max[0] || p[1] + r < min[1] || p[1] - r > max[1]) {
      outside = true
      continue
    }
    const c = clearance(relief.border, p)
    if (c.distance < r - SLACK) return 'across'
    // points on the border itself belong to either side
    if (c.distance > SLACK) [inside, outside] = [inside || c.inside, outside || !c.inside]
  }
  return inside ? (outside ? 'across' : 'in') : 'out'
}

/** The material under a circle or a loop on a face, as the features worked so far have left it. */
export function columnUnder(reliefs: readonly Relief[], face: WorkFace, footprint: Footprint): Column {
  const axis = axisOf[face.side]
  const out = outwardOf[face.side][axis]
  // heights along the face's outward direction
  let top = out * face.at
  let bottom = top - face.depth
  const near = reliefs
    .filter((r) => r.axis === axis)
    .map((r) => ({ ...r, lies: lies(footprint, r), from: out > 0 ? r.low : -r.high, to: out > 0 ? r.high : -r.low }))
    .filter((r) => r.lies !== 'out')
  const whole = near.filter((r) => r.lies === 'in')
  for (let moved = true; moved; ) {
    moved = false
    for (const r of whole) {
      if (r.added ? Math.abs(r.from - top) < SLACK : r.to > top - SLACK && r.from < top - SLACK) {
        top = r.added ? r.to : r.from
        moved = true
      } else if (!r.added && r.from < bottom + SLACK && r.to > bottom + SLACK && r.to < top) {
        bottom = r.to
        moved = true
      } else if (r.added && Math.abs(r.to - bottom) < SLACK) {
        bottom = r.from
        moved = true
      }
    }
  }
  const crossed = near.find(
    (r) =>
      r.lies === 'across' && (r.added ? Math.abs(r.from - top) < SLACK : r.to > top - SLACK && r.from < top - SLACK),
  )
  return { at: out * top, thick: top - bottom, ...(crossed ? { crossed: crossed.feature } : {}) }
}

/** Added material that a footprint meets before a face's plane and beyond the far side of the material, mm. */
export function addedOnWay(
  shop: Workshop,
  face: WorkFace,
  footprint: Footprint,
  deep: number,
): { readonly before: number; readonly beyond: number } {
  const axis = axisOf[face.side]
  const out = outwardOf[face.side][axis]
  const met = shop.reliefs.filter((r) => r.added && r.axis === axis && lies(footprint, r) !== 'out')
  const heights = met.flatMap((r) => [out * (r.low - face.at), out * (r.high - face.at)])
  return { before: Math.max(0, ...heights), beyond: Math.max(0, ...heights.map((h) => -h - deep)) }
}

/** Circle about a point of space on a face. */
export function circleOn(face: WorkFace, p: Vec3, r: number): Footprint {
  const { across, up } = faceAxes(axisOf[face.side])
  return { points: [[p[across], p[up]]], r }
}

/**
 * The surface that the depths of one member run from. Marks a member that stands on two levels, and remembers the
 * depth for `depthsStand`.
 */
export function surfaceUnder(shop: Workshop, face: WorkFace, footprint: Footprint, id: string, span: Span): Column {
  const column = columnUnder(shop.reliefs, landUnder(shop, face, footprint.points[0]!), footprint)
  if (column.crossed && !shop.marks.some((m) => m.rule === 'two-levels' && m.span === span)) {
    shop.mark(
      'look again',
      'two-levels',
      span,
      `${id} stands half in ${column.crossed}: its depth is counted from the higher of the two surfaces.`,
      `a place clear of the wall of ${column.crossed}`,
    )
  }
  shop.depths.push({ id, span, face, footprint, at: column.at, after: shop.reliefs.length })
  return column
}

/** Marks depths whose surface a later statement took away or built over: the sheet would count them from elsewhere. */
export function depthsStand(shop: Workshop): void {
  const told = new Set<string>()
  for (const d of shop.depths) {
    if (told.has(d.id) || shop.reliefs.slice(d.after).every((r) => r.feature === d.id)) continue
    const others = shop.reliefs.filter((r) => r.feature !== d.id)
    const now = columnUnder(others, d.face, d.footprint)
    if (Math.abs(now.at - d.at) < SLACK) continue
    told.add(d.id)
    const by = others.find((r) => Math.abs(r.low - now.at) < SLACK || Math.abs(r.high - now.at) < SLACK)
    shop.must(
      'depth-from-where',
      d.span,
      `${by?.feature ?? 'A later cut'} is stated after ${d.id} and moves the surface that its depth is counted from.`,
      `the statement of ${by?.feature ?? 'that cut'} above this one`,
    )
  }
}

/** The rectangle of two coordinates as a border. */
export function rectangle(min: Vec2, max: Vec2): Curve2[] {
  const corners: Vec2[] = [min, [max[0], min[1]], max, [min[0], max[1]]]
  return corners.map((a, i) => ({ kind: 'line', a, b: corners[(i + 1) % 4]! }))
}

/** Records a piece taken or added between two heights along an axis. */
export function addRelief(
  shop: Workshop,
  feature: string,
  axis: 0 | 1 | 2,
  border: readonly Curve2[],
  heights: readonly [number, number],
  added = false,
): void {
  const [low, high] = [Math.min(...heights), Math.max(...heights)]
  shop.reliefs.push({ feature, axis, border, box: boxOfCurves(border), low, high, added })
}
