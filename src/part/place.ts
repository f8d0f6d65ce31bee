import type { Mirror, Placement } from '../brief/brief.ts'
import type { Span } from '../brief/span.ts'
import type { Vec3 } from '../geometry/vec.ts'
import { placeCircle } from './place/circle.ts'
import { centreAlong, type Ground, type Placed } from './place/ground.ts'
import { placeOnAxis, placePoints } from './place/points.ts'
import { placeRuns } from './place/runs.ts'
import { axisOf, lieAxis } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** More members than this are refused. */
const MOST_MEMBERS = 5000

/** Finds where the members sit. Undefined (and a mark) where that cannot be said. */
export function placeMembers(
  shop: Workshop,
  ground: Ground,
  placement: Placement,
  id: string,
  copies: { readonly count: number; readonly mirror?: Mirror | undefined; readonly round?: boolean },
): Placed | undefined {
  const { count, mirror, round } = copies
  const placed = (() => {
    switch (placement.kind) {
      case 'runs':
        if (placement.around && !round) {
          shop.must(
            'not-round',
            placement.around.span,
            `${id} is spaced equally round no axis: that is read of holes worked square into a turned surface.`,
            'holes outside, from top: 4X … with one place along the axis, or a bolt circle, or rows with a distance apart',
          )
          return undefined
        }
        return placeRuns(shop, ground, placement.runs, id, placement.span, isAround(placement))
      case 'bolt circle':
        return placeCircle(shop, ground, placement, id, mirror ? Math.ceil(count / 2) : count)
      case 'points':
        return placePoints(shop, ground, placement, id)
      case 'axis':
        return placeOnAxis(shop, ground, placement, id)
    }
  })()
  if (!placed) return undefined
  const full = mirror ? mirrored(shop, ground, placed, mirror) : placed
  shop.members += full.points.length
  if (shop.members > MOST_MEMBERS) {
    shop.must(
      'too-many',
      placement.span,
      `The part would have more than ${MOST_MEMBERS} holes, slots and the like.`,
      'fewer members',
    )
    return undefined
  }
  return full
}

/** Whether the members stand round the axis of the surface, the first where the placement says. */
export const isAround = (placement: Placement): boolean => placement.kind === 'runs' && placement.around !== undefined

function countOf(placement: Placement): number {
  if (placement.kind === 'runs') return placement.runs.reduce((n, r) => n * Math.max(1, r.count.value), 1)
  return placement.kind === 'points' ? placement.points.length : 1
}

/** Whether the members asked for are more than can be built; marked at once, before any list of them is made. */
export function tooMany(shop: Workshop, placement: Placement, count: { value: number; span: Span }): boolean {
  const asked = Math.max(countOf(placement), placement.kind === 'bolt circle' || isAround(placement) ? count.value : 1)
  if (asked + shop.members <= MOST_MEMBERS) return false
  shop.must(
    'too-many',
    count.span,
    `${asked} members are more than a drawing can show; the most is ${MOST_MEMBERS}.`,
    'fewer members',
  )
  return true
}

function mirrored(shop: Workshop, ground: Ground, placed: Placed, mirror: Mirror): Placed {
  const axis = lieAxis[mirror.across]
  if (axis === axisOf[ground.side]) {
    shop.must(
      'wrong-direction',
      mirror.span,
      `A feature on the ${ground.side} cannot be mirrored ${mirror.across} on the same face.`,
      'a direction in the face',
    )
    return placed
  }
  const { at, between } = centreAlong(shop, ground, axis)
  const n = placed.points.length
  const others = placed.points.map((p): Vec3 => {
    const q: [number, number, number] = [...p]
    q[axis] = 2 * at - p[axis]
    return q
  })
  return {
    points: [...placed.points, ...others],
    pattern: placed.pattern.kind === 'bolt circle' ? placed.pattern : { kind: n > 1 ? 'points' : 'row' },
    choose: (ids, walls) => {
      placed.choose(ids.slice(0, n), walls)
      for (let i = 0; i < n; i++) {
        shop.imply('centred', `mirrored ${mirror.across}`, [ids[i]!, ids[i + n]!, ...between])
        shop.imply('aligned', `mirrored ${mirror.across}`, [ids[i]!, ids[i + n]!])
      }
    },
  }
}
