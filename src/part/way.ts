import type { Curve2, Line2 } from '../geometry/curve2.ts'
import { intersections } from '../geometry/intersect.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { along } from '../geometry/vec3.ts'
import { boreRadiusAt } from './contour.ts'
import { limitsAlong } from './place/ground.ts'
import { clearance } from './profile-edit.ts'
import { faceAxes, outwardOf } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** A straight way into the part, square to an axis of space. */
export interface Way {
  readonly from: Vec3
  readonly inward: Vec3
  readonly axis: 0 | 1 | 2
}

/** Open space met on a way: where it begins and ends, mm from the start, and the name of what opens it. */
export interface Opening {
  readonly from: number
  readonly to: number
  readonly name: string
}

const SLACK = 1e-7

/** Open spaces inside the part along a way, the nearest first, as the features worked so far have left it. */
export function openingsAlong(shop: Workshop, way: Way): Opening[] {
  const far = farSide(shop, way)
  const found = [
    ...ofContour(shop, way),
    ...ofProfile(shop, way, far),
    ...ofReliefs(shop, way, far),
    ...ofHoles(shop, way),
  ]
  const sorted = found.filter((o) => o.to - o.from > SLACK).sort((a, b) => a.from - b.from)
  const joined: Opening[] = []
  for (const o of sorted) {
    const last = joined[joined.length - 1]
    if (last && o.from < last.to + SLACK) joined[joined.length - 1] = { ...last, to: Math.max(last.to, o.to) }
    else joined.push(o)
  }
  // what opens at the surface, or on to the far side, has no wall before it or behind it
  return joined.filter((o) => o.from > SLACK && o.to < far - SLACK)
}

function farSide(shop: Workshop, { from, inward, axis }: Way): number {
  if (shop.contour && axis !== shop.contour.axis) return Infinity
  const limits = limitsAlong(shop, axis)
  return limits ? Math.abs((inward[axis] > 0 ? limits[1].at : limits[0].at) - from[axis]) : Infinity
}

/** The bore of a turned part, across its axis. */
function ofContour(shop: Workshop, { from, axis }: Way): Opening[] {
  const { contour } = shop
  if (!contour || axis === contour.axis) return []
  const bore = boreRadiusAt(contour, from[contour.axis])
  const off = from[3 - axis - contour.axis]!
  if (!bore || Math.abs(off) >= bore.r) return []
  const half = Math.sqrt(bore.r ** 2 - off ** 2)
  const middle = Math.abs(from[axis])
  return [
    {
      from: middle - half,
      to: middle + half,
      name: bore.name.replace(/ (wall|counterbore wall|drill point|countersink)$/, ''),
    },
  ]
}

/** Gaps of the outline and through cuts in it, where the way runs in its plane. */
function ofProfile(shop: Workshop, way: Way, far: number): Opening[] {
  const { profile } = shop
  if (!profile || profile.axis === way.axis || !Number.isFinite(far)) return []
  const outline = profile.curves.map((c) => c.curve)
  const gaps = stretchesOf(outline, way, profile.axis, far, false).map((s): Opening => ({ ...s, name: '' }))
  const cuts = profile.holes.flatMap((hole) => {
    const name = (hole[0]?.face ?? '').replace(/ (wall|end|corner)$/, '')
    return stretchesOf(
      hole.map((c) => c.curve),
      way,
      profile.axis,
      far,
      true,
    ).map((s): Opening => ({ ...s, name }))
  })
  return [...gaps, ...cuts]
}

function ofReliefs(shop: Workshop, way: Way, far: number): Opening[] {
  return shop.reliefs.flatMap((r): Opening[] => {
    if (r.added) return []
    if (r.axis === way.axis) {
      const { across, up } = faceAxes(r.axis)
      if (!clearance(r.border, [way.from[across], way.from[up]]).inside) return []
      const ends = [r.low, r.high].map((h) => (h - way.from[way.axis]) * way.inward[way.axis])
      return [{ from: Math.min(...ends), to: Math.max(...ends), name: r.feature }]
    }
    const at = way.from[r.axis]
    if (at < r.low + SLACK || at > r.high - SLACK || !Number.isFinite(far)) return []
    return stretchesOf(r.border, way, r.axis, far, true).map((s) => ({ ...s, name: r.feature }))
  })
}

/** Holes along another axis that the way crosses. */
function ofHoles(shop: Workshop, { from, inward, axis }: Way): Opening[] {
  return shop.roundCuts.flatMap((c): Opening[] => {
    if (c.axis === axis || from[c.axis] < c.low + SLACK || from[c.axis] > c.high - SLACK) return []
    const third = (3 - axis - c.axis) as 0 | 1 | 2
    const off = from[third] - c.point[third]
    if (Math.abs(off) >= c.r) return []
    const half = Math.sqrt(c.r ** 2 - off ** 2)
    const middle = (c.point[axis] - from[axis]) * inward[axis]
    return [{ from: middle - half, to: middle + half, name: c.name }]
  })
}

/** Stretches of the way that lie inside the loop, or outside it; the loop lies in the plane square to `plane`. */
function stretchesOf(
  loop: readonly Curve2[],
  way: Way,
  plane: 0 | 1 | 2,
  far: number,
  inside: boolean,
): { readonly from: number; readonly to: number }[] {
  const { across, up } = faceAxes(plane)
  const long = far + 1
  const at = (s: number): Vec2 => {
    const p = along(way.from, way.inward, s)
    return [p[across], p[up]]
  }
  const line: Line2 = { kind: 'line', a: at(-1), b: at(long) }
  const cuts = loop.flatMap((c) => intersections(line, c, 1e-9).map((m) => m.a * (long + 1) - 1))
  const stops = [-1, ...cuts.sort((a, b) => a - b), long]
  return stops.flatMap((from, i) => {
    const to = stops[i + 1]
    if (to === undefined || to - from < SLACK) return []
    return clearance(loop, at((from + to) / 2)).inside === inside ? [{ from, to }] : []
  })
}

/** The way from a point on a side straight in. */
export const wayIn = (from: Vec3, side: keyof typeof outwardOf): Way => {
  const out = outwardOf[side]
  const axis = ([0, 1, 2] as const).find((k) => out[k] !== 0)!
  return { from, inward: [-out[0], -out[1], -out[2]], axis }
}
