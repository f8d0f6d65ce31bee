import type { HoleFeature, SlotFeature } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, negate, norm, sub } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { samples } from './faces.ts'
import { once } from './once.ts'

/** One round cut of the part: a hole of a pattern, or the round end of a slot. */
export interface RoundCut {
  /** `hole 1.2`, `slot 1.1`. */
  readonly id: string
  readonly of: PartFeature
  readonly callout: HoleFeature | SlotFeature
  /** Ids of the member's own faces. */
  readonly faces: readonly number[]
  /** Where the axis meets the worked face, and the way into the material. */
  readonly at: Vec3
  readonly inward: Vec3
  /** Radius below any counterbore or countersink, mm. */
  readonly r: number
  /** From the worked face to the end of the wall, mm; of a through cut the last edge that it leaves. */
  readonly deep: number
  readonly through: boolean
}

export interface Hole extends RoundCut {
  readonly callout: HoleFeature
}

/** Every member of every hole and bore. */
export const holesOf = once((part: Part): readonly Hole[] =>
  part.features.flatMap((of) => {
    const callout = of.feature
    if (callout?.kind !== 'hole') return []
    return of.members.map((m): Hole => {
      const inward = negate(m.outward ?? of.outward)
      return {
        id: m.id,
        of,
        callout,
        faces: m.faces,
        at: m.point,
        inward,
        r: callout.diameter.mm / 2,
        deep: reach(part, m.faces, m.point, inward),
        through: callout.depth.kind === 'through',
      }
    })
  }),
)

/** Round ends of closed slots, two a slot. */
export const slotEndsOf = once((part: Part): readonly RoundCut[] =>
  part.features.flatMap((of) => {
    const callout = of.feature
    if (callout?.kind !== 'slot' || callout.openTo) return []
    const inward = negate(of.outward)
    return of.members.flatMap((m): RoundCut[] => {
      const deep = reach(part, m.faces, m.point, inward)
      const ends = part.data.filter((d) => d.kind === 'axis' && d.id.startsWith(`${m.id} end `))
      return ends.map((end) => {
        const off = dot(sub(m.point, end.point), inward)
        const at: Vec3 = [
          end.point[0] + off * inward[0],
          end.point[1] + off * inward[1],
          end.point[2] + off * inward[2],
        ]
        return {
          id: m.id,
          of,
          callout,
          faces: m.faces,
          at,
          inward,
          r: callout.width.mm / 2,
          deep,
          through: callout.depth.kind === 'through',
        }
      })
    })
  }),
)

/** How far the faces go along the direction from a point. */
function reach(part: Part, faces: readonly number[], from: Vec3, along: Vec3): number {
  const own = new Set(faces)
  let most = 0
  for (const edge of part.body.edges) {
    if (!edge.faces.some((f) => f !== undefined && own.has(f))) continue
    for (const p of samples(edge)) most = Math.max(most, dot(sub(p, from), along))
  }
  return most
}

/** Radius of the cut at a depth below the worked face, mm: counterbore and countersink included. */
export function radiusAt(cut: RoundCut, depth: number): number {
  if (cut.callout.kind !== 'hole') return cut.r
  const { counterbore, countersink, spotface } = cut.callout
  const bore = counterbore ?? (spotface?.depth && { diameter: spotface.diameter, depth: spotface.depth })
  if (bore && depth <= bore.depth.mm + 1e-6) return bore.diameter.mm / 2
  if (countersink) {
    const half = (countersink.angle.value * Math.PI) / 360
    return Math.max(cut.r, countersink.diameter.mm / 2 - depth * Math.tan(half))
  }
  return cut.r
}

/** No radius of the cut is larger, mm. */
export function widestRadius(cut: RoundCut): number {
  if (cut.callout.kind !== 'hole') return cut.r
  const { counterbore, countersink, spotface } = cut.callout
  return Math.max(cut.r, ...[counterbore, countersink, spotface].map((s) => (s ? s.diameter.mm / 2 : 0)))
}

/** Distance of a point from the cut's axis, mm. */
export function offAxis(cut: Pick<RoundCut, 'at' | 'inward'>, p: Vec3): number {
  return norm(cross(sub(p, cut.at), cut.inward))
}
