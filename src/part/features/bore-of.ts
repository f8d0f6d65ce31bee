import type { KeyseatFeature } from '../../brief/brief.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { limitsOf } from '../contour.ts'
import { findRound, plainName } from '../find-name.ts'
import { limitsAlong } from '../place/ground.ts'
import { clearance } from '../profile-edit.ts'
import { roundsCalled } from '../round-called.ts'
import { faceAxes } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

/** A bore that a keyseat is cut into: of a turned part about its axis, or a hole of any other. */
export interface Bore {
  readonly name: string
  /** mm. */
  readonly r: number
  readonly axis: 0 | 1 | 2
  /** A point of its axis; its coordinate along the axis is 0. */
  readonly centre: Vec3
  readonly axisId: string
  /** Coordinates along the axis between which it runs, and those of the part's ends. */
  readonly from: number
  readonly to: number
  readonly ends: readonly [number, number]
  /** Whether material is left about points beside the axis, given from the centre in the two coordinates across it. */
  readonly holds: (points: readonly Vec2[], from: number, to: number) => boolean
}

/** The bore of that name; undefined where the words mean none. */
export function boreOf(shop: Workshop, { face }: KeyseatFeature): Bore | undefined {
  const { contour } = shop
  const round = contour && findRound(shop, face)
  if (contour) {
    if (!round?.inside) return undefined
    const ends = limitsOf(contour)
    const own = contour.bores.find((p) => p.name === round.name || p.name === `${round.name} wall`)
    return {
      name: round.name,
      r: round.r,
      axis: contour.axis,
      centre: [0, 0, 0],
      axisId: 'axis',
      from: Math.max(ends[0], own?.h0 ?? ends[0]),
      to: Math.min(ends[1], own?.h1 ?? ends[1]),
      ends,
      holds: (points, from, to) => {
        const out = Math.max(...points.map((p) => Math.hypot(...p)))
        return contour.outer.every((o) => o.h0 >= to || o.h1 <= from || Math.min(o.r0, o.r1) > out + 1e-9)
      },
    }
  }
  const [cut, more] = roundsCalled(shop, plainName(face.text), shop.roundCuts)
  if (!cut || more) return undefined
  const { across, up } = faceAxes(cut.axis)
  const limits = limitsAlong(shop, cut.axis)
  const ends: readonly [number, number] = limits ? [limits[0].at, limits[1].at] : [cut.low, cut.high]
  const centre: [number, number, number] = [...cut.point]
  centre[cut.axis] = 0
  return {
    name: cut.name,
    r: cut.r,
    axis: cut.axis,
    centre,
    axisId: `${cut.name} axis`,
    from: Math.max(ends[0], cut.low),
    to: Math.min(ends[1], cut.high),
    ends,
    holds: (points) =>
      points.every((p) => {
        const at: Vec2 = [centre[across] + p[0], centre[up] + p[1]]
        const { profile } = shop
        if (profile?.axis === cut.axis) {
          const outline = profile.curves.map((c) => c.curve)
          const { distance, inside } = clearance(outline, at)
          return inside && distance > 1e-9
        }
        return [across, up].every((axis, i) => {
          const own = limitsAlong(shop, axis)
          return !own || (at[i]! > own[0].at + 1e-9 && at[i]! < own[1].at - 1e-9)
        })
      }),
  }
}
