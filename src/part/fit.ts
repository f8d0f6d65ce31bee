import type { Span } from '../brief/span.ts'
import { boxOfCurves, pointAt } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import type { Profile, WorkFace } from './model.ts'
import { clearance } from './profile-edit.ts'
import { inProfile } from './profile-holes.ts'
import { axisOf, faceAxes } from './sides.ts'
import type { Workshop } from './workshop.ts'

const SLACK = 1e-7

/** Whether circles of radius r about the points lie on the face; marks the feature where one does not. */
export function fitsFace(
  shop: Workshop,
  face: WorkFace,
  points: readonly Vec3[],
  r: number,
  span: Span,
  id: string,
): boolean {
  let off = 0
  let over = 0
  for (const p of points) {
    const state = circleOn(shop, face, p, r)
    if (state === 'off') off++
    if (state === 'over') over++
  }
  if (off === 0 && over === 0) return true
  const many = points.length > 1
  if (off > 0) {
    const rule = many ? 'pattern-off-face' : 'hole-off-part'
    const text = many
      ? `${off} of the ${points.length} of ${id} lie off the ${face.name}.`
      : `${id} lies off the ${face.name}.`
    shop.must(rule, span, text, `a place on the ${face.name}`)
  } else {
    const text = many
      ? `${over} of the ${points.length} of ${id} break out of the edge of the ${face.name}.`
      : `${id} breaks out of the edge of the ${face.name}.`
    shop.must('breaks-edge', span, text, 'a place further in, or an open slot or notch')
  }
  return false
}

function circleOn(shop: Workshop, face: WorkFace, p: Vec3, r: number): 'on' | 'over' | 'off' {
  const profile = shop.profileOf(face) ?? (face.cap ? shop.profile : undefined)
  if (profile) {
    const { distance, inside } = clearance(
      profile.curves.map((c) => c.curve),
      inProfile(profile, p),
    )
    if (!inside) return 'off'
    return distance < r + SLACK ? 'over' : 'on'
  }
  const { across, up } = faceAxes(axisOf[face.side])
  const q: Vec2 = [p[across], p[up]]
  if (face.radius !== undefined) {
    const l = Math.hypot(q[0] - (face.min[0] + face.max[0]) / 2, q[1] - (face.min[1] + face.max[1]) / 2)
    if (l >= face.radius) return 'off'
    return l + r > face.radius - SLACK ? 'over' : 'on'
  }
  const least = Math.min(q[0] - face.min[0], face.max[0] - q[0], q[1] - face.min[1], face.max[1] - q[1])
  if (least <= 0) return 'off'
  return least < r + SLACK ? 'over' : 'on'
}

/**
 * Name of an earlier round cut (or of the feature itself) that one of these overlaps, and records these. Holes on one
 * axis are no overlap: one goes on inside the other.
 */
export function overlapping(
  shop: Workshop,
  id: string,
  axis: 0 | 1 | 2,
  points: readonly Vec3[],
  r: number,
): string | undefined {
  const { across, up } = faceAxes(axis)
  const cell = 2 * Math.max(r, ...shop.roundCuts.map((c) => c.r), 1e-3)
  const grid = new Map<string, { point: Vec3; r: number; feature: string }[]>()
  const key = (i: number, j: number) => `${i},${j}`
  const put = (c: { point: Vec3; r: number; feature: string }) => {
    const k = key(Math.floor(c.point[across] / cell), Math.floor(c.point[up] / cell))
    const list = grid.get(k)
    if (list) list.push(c)
    else grid.set(k, [c])
  }
  for (const c of shop.roundCuts) if (c.axis === axis) put(c)
  for (const point of points) {
    const [i, j] = [Math.floor(point[across] / cell), Math.floor(point[up] / cell)]
    for (let a = i - 1; a <= i + 1; a++) {
      for (let b = j - 1; b <= j + 1; b++) {
        for (const c of grid.get(key(a, b)) ?? []) {
          const l = Math.hypot(point[across] - c.point[across], point[up] - c.point[up])
          const apart = axis !== undefined && Math.abs(point[axis] - c.point[axis]) > 1e-9 && c.feature !== id
          if (l > 1e-7 && l < r + c.r - SLACK && !apart) return c.feature === id ? 'its own neighbour' : c.feature
          if (l <= 1e-7 && !apart && Math.abs(r - c.r) < 1e-9) return c.feature === id ? 'itself' : c.feature
        }
      }
    }
    put({ point, r, feature: id })
  }
  for (const point of points) shop.roundCuts.push({ feature: id, axis, point, r })
  return undefined
}

/** Whether a closed loop in the profile's plane lies inside the outline and clear of the loops already there. */
export function loopFits(profile: Profile, samples: readonly Vec2[]): boolean {
  const outline = profile.curves.map((c) => c.curve)
  return samples.every((p) => {
    const { inside, distance } = clearance(outline, p)
    return inside && distance > SLACK
  })
}

/** Whether the loop would meet one that is already in the profile: then it must be cut from the solid. */
export function meetsLoops(profile: Profile, samples: readonly Vec2[]): boolean {
  const box = boxOf(samples)
  return profile.holes.some((hole) => {
    const curves = hole.map((c) => c.curve)
    const other = boxOfCurves(curves)
    if (box.max[0] < other.min[0] || box.min[0] > other.max[0]) return false
    if (box.max[1] < other.min[1] || box.min[1] > other.max[1]) return false
    return (
      samples.some((p) => clearance(curves, p).inside) ||
      curves.some((c) => [0, 0.25, 0.5, 0.75].some((t) => insidePolygon(samples, pointAt(c, t))))
    )
  })
}

function boxOf(points: readonly Vec2[]) {
  const xs = points.map((p) => p[0])
  const ys = points.map((p) => p[1])
  return { min: [Math.min(...xs), Math.min(...ys)] as const, max: [Math.max(...xs), Math.max(...ys)] as const }
}

function insidePolygon(points: readonly Vec2[], p: Vec2): boolean {
  let inside = false
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length]!
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside
  })
  return inside
}
