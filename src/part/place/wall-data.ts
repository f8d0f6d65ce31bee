import type { Placement } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { endSides, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import type { ByAxis, Walls } from './ground.ts'

/** One direction in which a cut has two walls: half its extent, and what they are called, `end` where they are round. */
export interface Reach {
  readonly half: number
  readonly word: 'side' | 'end'
}

/** Planes at the walls of each member, the crowns of round ends, where the placement says that a distance reaches one. */
export function wallData(
  shop: Workshop,
  placement: Placement,
  names: readonly string[],
  points: readonly Vec3[],
  reaches: ByAxis<Reach>,
): Walls | undefined {
  const isSaid = placement.kind === 'runs' && placement.runs.some(({ anchor }) => anchor.kind === 'from' && anchor.wall)
  if (!isSaid) return undefined
  const along = (axis: 0 | 1 | 2) => {
    const reach = reaches[axis]
    if (!reach) return {}
    const at = (end: 0 | 1) =>
      names.map((name, i) => {
        const point: [number, number, number] = [...points[i]!]
        point[axis] += (end === 0 ? -1 : 1) * reach.half
        return shop.plane(`${name} ${endSides[axis]![end]} ${reach.word}`, point, unitAxis[axis])
      })
    return { [axis]: { low: at(0), high: at(1) } }
  }
  return { ...along(0), ...along(1), ...along(2) }
}

/** The halves alone. */
export const halvesOf = (reaches: ByAxis<Reach>): ByAxis<number> =>
  Object.fromEntries(Object.entries(reaches).map(([axis, { half }]) => [axis, half]))
