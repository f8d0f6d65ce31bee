import type { Side } from '../brief/brief.ts'
import { boxOf, boxOfCurves } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { add, scale } from '../geometry/vec3.ts'
import { inPlane, type ProfilePlane } from '../kernel/profile.ts'
import type { Profile, ProfileCurve, WorkFace } from './model.ts'
import { counterClockwise } from './profile-edit.ts'
import { endSides, faceAxes, unitAxis } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** The plane in which a profile square to an axis is drawn: its coordinates are across and up of that face. */
export function profilePlane(axis: 0 | 1 | 2, span: readonly [number, number]): ProfilePlane {
  const { across, up } = faceAxes(axis)
  // right × up must point along the thickness: front profiles (x, z) look toward −y
  const start = axis === 1 ? span[1] : span[0]
  return { origin: scale(unitAxis[axis], start), right: unitAxis[across], up: unitAxis[up] }
}

/** Sets the profile, its work faces, plane data and the names of its faces. */
export function startProfile(
  shop: Workshop,
  axis: 0 | 1 | 2,
  span: readonly [number, number],
  curves: readonly ProfileCurve[],
): Profile {
  const plane = profilePlane(axis, span)
  const [low, high] = endSides[axis]!
  const profile: Profile = {
    plane,
    axis,
    thickness: span[1] - span[0],
    caps: axis === 1 ? [high, low] : [low, high],
    curves: counterClockwise(curves),
    holes: [],
  }
  shop.profile = profile
  shop.stockWalls = new Set(curves.map((c) => c.face))
  const box = boxOfCurves(profile.curves.map((c) => c.curve))
  for (const [side, at] of [
    [low, span[0]],
    [high, span[1]],
  ] as const) {
    addFace(shop, { name: side, side, at, min: box.min, max: box.max, depth: profile.thickness, cap: true })
  }
  for (const c of profile.curves) addSideFace(shop, profile, span, c)
  return profile
}

/** Work face and datum of a straight side that is square to an axis of space; a datum alone for a slanted one. */
function addSideFace(shop: Workshop, profile: Profile, span: readonly [number, number], c: ProfileCurve): void {
  if (c.curve.kind !== 'line') return
  const { a, b } = c.curve
  const { across, up } = faceAxes(profile.axis)
  const n = Math.hypot(b[0] - a[0], b[1] - a[1])
  // outside lies to the right of a counter-clockwise loop
  const out: Vec2 = [(b[1] - a[1]) / n, -(b[0] - a[0]) / n]
  const level = Math.abs(out[0]) > 1 - 1e-12 ? 0 : Math.abs(out[1]) > 1 - 1e-12 ? 1 : undefined
  if (level === undefined) {
    const normal = add(scale(unitAxis[across], out[0]), scale(unitAxis[up], out[1]))
    shop.plane(c.face, inPlane(profile.plane, a), normal)
    return
  }
  const axis = level === 0 ? across : up
  const side: Side = endSides[axis]![out[level] > 0 ? 1 : 0]
  const other = level === 0 ? 1 : 0
  const run: Vec2 = [Math.min(a[other], b[other]), Math.max(a[other], b[other])]
  const axes = faceAxes(axis)
  const alongAxis = other === 0 ? across : up
  // the face's two coordinates are the profile's other one and the thickness, in the face's own order
  const first: Vec2 = axes.across === alongAxis ? run : span
  const second: Vec2 = axes.across === alongAxis ? span : run
  addFace(shop, {
    name: c.face,
    side,
    at: a[level],
    min: [first[0], second[0]],
    max: [first[1], second[1]],
    depth: depthBehind(profile, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], [-out[0], -out[1]]),
  })
}

/** Distance from a point on a side straight in to the far side of the material. */
function depthBehind(profile: Profile, from: Vec2, d: Vec2): number {
  const far = 1e7
  let nearest = Infinity
  for (const { curve } of profile.curves) {
    const box = boxOf(curve)
    if (curve.kind === 'line') {
      const e: Vec2 = [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
      const det = d[0] * e[1] - d[1] * e[0]
      if (Math.abs(det) < 1e-12) continue
      const w: Vec2 = [curve.a[0] - from[0], curve.a[1] - from[1]]
      const s = (w[0] * e[1] - w[1] * e[0]) / det
      const t = (w[0] * d[1] - w[1] * d[0]) / det
      if (s > 1e-7 && s < far && t >= -1e-12 && t <= 1 + 1e-12) nearest = Math.min(nearest, s)
    } else {
      // an arc is reached somewhere in its box; the far side of the box is deep enough
      const reach = Math.max(
        (box.min[0] - from[0]) * d[0] + (box.min[1] - from[1]) * d[1],
        (box.max[0] - from[0]) * d[0] + (box.max[1] - from[1]) * d[1],
      )
      const across0 = (box.min[0] - from[0]) * -d[1] + (box.min[1] - from[1]) * d[0]
      const across1 = (box.max[0] - from[0]) * -d[1] + (box.max[1] - from[1]) * d[0]
      if (across0 * across1 < 0 && reach > 1e-7) nearest = Math.min(nearest, reach)
    }
  }
  return Number.isFinite(nearest) ? nearest : 0
}

const sameRun = (a: Vec2, b: Vec2) => Math.abs(a[0] - b[0]) < 1e-9 && Math.abs(a[1] - b[1]) < 1e-9

export function addFace(shop: Workshop, face: WorkFace): void {
  const axis = { left: 0, right: 0, front: 1, rear: 1, bottom: 2, top: 2 }[face.side] as 0 | 1 | 2
  const sign = face.side === 'right' || face.side === 'rear' || face.side === 'top' ? 1 : -1
  const normal: Vec3 = scale(unitAxis[axis], sign)
  // one name may stand for several lands at one level
  const isThere = (f: WorkFace) => f.name === face.name && sameRun(f.min, face.min) && sameRun(f.max, face.max)
  if (!shop.faces.some(isThere)) shop.faces.push(face)
  shop.plane(face.name, scale(unitAxis[axis], face.at), normal)
}
