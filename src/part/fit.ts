import type { Span } from '../brief/span.ts'
import { boxOfCurves, pointAt } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { landsOf } from './lands.ts'
import type { Profile, WorkFace } from './model.ts'
import { beyondWords, placeOf, reachWords } from './off-face.ts'
import { clearance } from './profile-edit.ts'
import { inProfile } from './profile-holes.ts'
import { axisOf, faceAxes } from './sides.ts'
import type { RoundCut, Workshop } from './workshop.ts'

const SLACK = 1e-7

/**
 * Whether circles of radius r about the points lie on the face, `each` of them to a member; marks the feature where one
 * does not.
 */
export function fitsFace(
  shop: Workshop,
  face: WorkFace,
  points: readonly Vec3[],
  r: number,
  span: Span,
  id: string,
  each = 1,
): boolean {
  const states = points.map((p) => circleOn(shop, face, p, r))
  const members = Array.from({ length: points.length / each }, (_, i) => states.slice(i * each, (i + 1) * each))
  const off = members.filter((m) => m.every((s) => s === 'off')).length
  const over = members.filter((m) => m.some((s) => s !== 'on')).length - off
  if (off === 0 && over === 0) return true
  const many = members.length > 1
  const at = placeOf(shop, span)
  const bad = off > 0 ? off : over
  const [is, verb] = off > 0 ? ['off', 'lie'] : ['over', 'break']
  const which = members.flatMap((m, i) => {
    const isBad = off > 0 ? m.every((s) => s === is) : m.some((s) => s !== 'on')
    return isBad ? points.slice(i * each, (i + 1) * each) : []
  })
  const beyond = beyondWords(shop, face, which, off > 0 ? 0 : r)
  const who = !many
    ? `${id} ${verb}s`
    : bad === members.length
      ? `${bad === 2 ? 'Both' : `All ${bad}`} of ${id} ${verb}`
      : `${bad} of the ${members.length} of ${id} ${verb}${bad === 1 ? 's' : ''}`
  if (off > 0) {
    const text = `${who} off the ${face.name}: ${many ? 'up to ' : ''}${beyond}, by the centre.`
    shop.must(many ? 'pattern-off-face' : 'hole-off-part', at, text, `a place on it: ${reachWords(shop, face)}`)
  } else {
    const text = `${who} out of the edge of the ${face.name}${each === 1 ? `, ${beyond}` : ''}.`
    shop.must('breaks-edge', at, text, 'a place further in, or an open slot or notch')
  }
  return false
}

/** On any of the lands at the face's level. */
function circleOn(shop: Workshop, face: WorkFace, p: Vec3, r: number): 'on' | 'over' | 'off' {
  const states = landsOf(shop, face).map((land) => circleOnLand(shop, land, p, r))
  return states.find((s) => s === 'on') ?? states.find((s) => s === 'over') ?? 'off'
}

function circleOnLand(shop: Workshop, face: WorkFace, p: Vec3, r: number): 'on' | 'over' | 'off' {
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

/** One of the holes, by its place in the list, and the earlier one that it cuts into. */
export interface Overlap {
  readonly member: number
  /** Name of the other hole: of an earlier feature, or of this one. */
  readonly other: string
  /** Between the centres, mm; and what that must be more than. */
  readonly apart: number
  readonly least: number
}

type Round = Pick<RoundCut, 'feature' | 'name' | 'point' | 'r'>

/**
 * The first of these that overlaps an earlier round cut or another of its own; records them where there is none. Holes
 * on one axis are no overlap: one goes on inside the other.
 */
export function overlapping(
  shop: Workshop,
  id: string,
  axis: 0 | 1 | 2,
  points: readonly Vec3[],
  r: number,
  reaches: readonly (readonly [low: number, high: number])[],
): Overlap | undefined {
  const { across, up } = faceAxes(axis)
  const cell = 2 * Math.max(r, ...shop.roundCuts.map((c) => c.r), 1e-3)
  const grid = new Map<string, Round[]>()
  const key = (i: number, j: number) => `${i},${j}`
  const put = (c: Round) => {
    const k = key(Math.floor(c.point[across] / cell), Math.floor(c.point[up] / cell))
    const list = grid.get(k)
    if (list) list.push(c)
    else grid.set(k, [c])
  }
  const own = points.map((point, i) => ({ point, r, feature: id, name: points.length > 1 ? `${id}.${i + 1}` : id }))
  for (const c of shop.roundCuts) if (c.axis === axis) put(c)
  for (const [member, { point }] of own.entries()) {
    const [i, j] = [Math.floor(point[across] / cell), Math.floor(point[up] / cell)]
    for (let a = i - 1; a <= i + 1; a++) {
      for (let b = j - 1; b <= j + 1; b++) {
        for (const c of grid.get(key(a, b)) ?? []) {
          const apart = Math.hypot(point[across] - c.point[across], point[up] - c.point[up])
          if (Math.abs(point[axis] - c.point[axis]) > 1e-9 && c.feature !== id) continue
          const inside = apart <= 1e-7
          if (inside ? Math.abs(r - c.r) < 1e-9 : apart < r + c.r - SLACK)
            return { member, other: c.name, apart, least: r + c.r }
        }
      }
    }
    put(own[member]!)
  }
  own.forEach((cut, i) => {
    const [low, high] = reaches[i]!
    shop.roundCuts.push({ ...cut, axis, low, high })
  })
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
