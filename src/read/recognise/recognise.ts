import type { Body } from '../../kernel/body.ts'
import { blendsOf, bossesOf, type FoundBlend } from './blends.ts'
import { type Line3, type Neighbour, neighboursOf, sameLine } from './borders.ts'
import { type FoundHole, holesOf } from './holes.ts'
import { flatDirection, turnedAxis } from './shape.ts'
import { coneChamfer, type FoundChamfer, type FoundSlope, slopesOf } from './slopes.ts'
import { type FoundSlot, slotsOf } from './slots.ts'
import { isRound, type Wall, wallsOf } from './walls.ts'

/** What a drafter would see in a solid that nobody has described. */
export interface Recognised {
  readonly holes: readonly FoundHole[]
  readonly slots: readonly FoundSlot[]
  /** Round walls with the material inside. */
  readonly bosses: readonly Wall[]
  /** Round inside walls that are no hole: closed hollows. */
  readonly hollows: readonly Wall[]
  readonly blends: readonly FoundBlend[]
  readonly chamfers: readonly FoundChamfer[]
  readonly slopes: readonly FoundSlope[]
  /** Axis of a part of revolution. */
  readonly axis?: Line3
  /** Direction of its one thickness, of a flat part. */
  readonly flat?: 0 | 1 | 2
  readonly beside: ReadonlyMap<number, readonly Neighbour[]>
}

/** Features of a solid from its faces alone. */
export function recognise(body: Body): Recognised {
  const beside = neighboursOf(body)
  const walls = wallsOf(body)
  const axis = turnedAxis(body, walls)
  const drilled = holesOf(body, walls, beside).map((hole) =>
    axis && sameLine(hole.line, axis) ? unsunk(body, hole, walls, beside) : hole,
  )
  const slots = slotsOf(body, walls, beside)
  const sunk = new Set(drilled.flatMap((h) => [...(h.countersink?.faces ?? []), ...h.others.flatMap((o) => o.faces)]))
  const cones = walls
    .filter((w) => isRound(w) && !w.faces.some((f) => sunk.has(f)))
    .flatMap((w) => coneChamfer(body, w, beside) ?? [])
  const broken = new Set(cones.flatMap((c) => c.faces))
  const holes = drilled.map((h) => ({ ...h, faces: h.faces.filter((f) => !broken.has(f)) }))
  const taken = new Set([...broken, ...holes.flatMap((h) => h.faces), ...slots.flatMap((s) => s.faces)])
  const { chamfers, slopes } = slopesOf(body, beside, taken)
  const flat = axis ? undefined : flatDirection(body)
  return {
    holes,
    slots,
    bosses: bossesOf(walls).filter((w) => !w.faces.some((f) => broken.has(f))),
    hollows: walls.filter((w) => w.inside && isRound(w) && !w.faces.some((f) => taken.has(f))),
    blends: blendsOf(walls, beside, taken),
    chamfers: [...chamfers, ...cones],
    slopes,
    ...(axis ? { axis } : {}),
    ...(flat === undefined ? {} : { flat }),
    beside,
  }
}

/** The broken edge of a bore is a chamfer; a countersink is for a screw's head. */
function unsunk(
  body: Body,
  hole: FoundHole,
  walls: readonly Wall[],
  beside: ReadonlyMap<number, readonly Neighbour[]>,
): FoundHole {
  const { countersink, ...rest } = hole
  const cone = countersink && walls.find((w) => w.faces.some((f) => countersink.faces.includes(f)))
  return cone && coneChamfer(body, cone, beside) ? rest : hole
}
