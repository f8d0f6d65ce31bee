import type { Vec3 } from '../../geometry/vec.ts'
import { add, along, dot, norm, scale, sub, unit } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import { type Neighbour, opposite, outwardOfPlane, parallel, pointsOfFace, SAME } from './borders.ts'
import type { Wall } from './walls.ts'

/** A straight slot with round ends; an open one has one round end and runs out of the part at the other. */
export interface FoundSlot {
  /** Middle of the slot where it opens, and the direction out of the worked face. */
  readonly mouth: Vec3
  readonly outward: Vec3
  /** Along the long way, toward the open end where there is one. */
  readonly way: Vec3
  /** Centres of the round ends at the mouth. */
  readonly ends: readonly Vec3[]
  readonly faces: readonly number[]
  readonly width: number
  /** Overall. */
  readonly length: number
  /** Absent where it goes through. */
  readonly depth?: number
  readonly open: boolean
}

const isHalf = (wall: Wall): boolean =>
  wall.inside && wall.kind === 'cylinder' && Math.abs(wall.sweep - Math.PI) < 0.1 * Math.PI

/** Pairs of half-round walls joined by two planes, and single ones whose planes run out. */
export function slotsOf(
  body: Body,
  walls: readonly Wall[],
  beside: ReadonlyMap<number, readonly Neighbour[]>,
): FoundSlot[] {
  const halves = walls.filter(isHalf).map((wall) => ({ wall, sides: sidesOf(body, wall, beside) }))
  const candidates = halves.filter((h) => h.sides.length === 2)
  const used = new Set<Wall>()
  const found: FoundSlot[] = []
  for (const a of candidates) {
    if (used.has(a.wall)) continue
    const b = candidates.find(
      (o) =>
        o !== a &&
        !used.has(o.wall) &&
        Math.abs(o.wall.radii[0] - a.wall.radii[0]) < SAME &&
        parallel(o.wall.line.direction, a.wall.line.direction) &&
        o.sides.every((s) => a.sides.includes(s)),
    )
    const slot = b ? closed(body, a.wall, b.wall, a.sides, beside) : open(body, a.wall, a.sides, beside)
    if (!slot) continue
    used.add(a.wall)
    if (b) used.add(b.wall)
    found.push(slot)
  }
  return found
}

/** The two planes that the round end runs into smoothly, facing each other. */
function sidesOf(body: Body, wall: Wall, beside: ReadonlyMap<number, readonly Neighbour[]>): number[] {
  const near = wall.faces.flatMap((f) => beside.get(f) ?? []).filter((n) => n.smooth)
  const planes = [...new Set(near.map((n) => n.face))].filter((id) => body.faces[id]!.surface.kind === 'plane')
  if (planes.length !== 2) return []
  const [n, m] = planes.map((id) => outwardOfPlane(body.faces[id]!)!)
  return dot(n!, m!) < -1 + 1e-9 ? planes : []
}

function closed(
  body: Body,
  a: Wall,
  b: Wall,
  sides: readonly number[],
  beside: ReadonlyMap<number, readonly Neighbour[]>,
): FoundSlot | undefined {
  const apart = sub(b.line.point, a.line.point)
  if (norm(apart) < SAME) return undefined
  const run = vertical(body, [...a.faces, ...b.faces], [a, b], beside)
  if (!run) return undefined
  const ends = [a, b].map((w) => add(w.line.point, scale(w.line.direction, run.level)))
  return {
    mouth: scale(add(ends[0]!, ends[1]!), 0.5),
    outward: run.outward,
    way: unit(apart),
    ends,
    faces: [...a.faces, ...b.faces, ...sides, ...run.floors],
    width: 2 * a.radii[0],
    length: norm(apart) + 2 * a.radii[0],
    ...(run.depth === undefined ? {} : { depth: run.depth }),
    open: false,
  }
}

function open(
  body: Body,
  wall: Wall,
  sides: readonly number[],
  beside: ReadonlyMap<number, readonly Neighbour[]>,
): FoundSlot | undefined {
  const run = vertical(body, wall.faces, [wall], beside)
  if (!run) return undefined
  const { direction } = wall.line
  const end = add(wall.line.point, scale(direction, run.level))
  const points = sides.flatMap((id) => pointsOfFace(body, body.faces[id]!))
  const middle = scale(
    points.reduce((p, q) => add(p, q)),
    1 / points.length,
  )
  const normal = outwardOfPlane(body.faces[sides[0]!]!)!
  const off = sub(middle, end)
  const flat = along(along(off, direction, -dot(off, direction)), normal, -dot(off, normal))
  if (norm(flat) < SAME) return undefined
  const way = unit(flat)
  const reach = Math.max(...points.map((p) => dot(sub(p, end), way)))
  return {
    mouth: along(end, way, (reach - wall.radii[0]) / 2),
    outward: run.outward,
    way,
    ends: [end],
    faces: [...wall.faces, ...sides, ...run.floors],
    width: 2 * wall.radii[0],
    length: reach + wall.radii[0],
    ...(run.depth === undefined ? {} : { depth: run.depth }),
    open: true,
  }
}

const FIRST: Vec3 = [1, -2, 3]

/** How the slot goes down: where it opens and how deep. Undefined where both ends are closed. */
function vertical(
  body: Body,
  faces: readonly number[],
  walls: readonly Wall[],
  beside: ReadonlyMap<number, readonly Neighbour[]>,
) {
  const { direction } = walls[0]!.line
  const low = Math.min(...walls.map((w) => w.from))
  const high = Math.max(...walls.map((w) => w.to))
  const planes = [...new Set(faces.flatMap((f) => (beside.get(f) ?? []).map((n) => n.face)))]
  const floorAt = (at: number, side: 1 | -1) =>
    planes.filter((id) => {
      const face = body.faces[id]!
      const normal = outwardOfPlane(face)
      return (
        normal !== undefined &&
        face.surface.kind === 'plane' &&
        dot(normal, direction) * side < -1 + 1e-9 &&
        Math.abs(dot(face.surface.axes.origin, direction) - at) < SAME
      )
    })
  const [below, above] = [floorAt(low, -1), floorAt(high, 1)]
  if (below.length > 0 && above.length > 0) return undefined
  const through = below.length === 0 && above.length === 0
  const upward = through ? dot(direction, FIRST) > 0 : above.length === 0
  return {
    outward: upward ? direction : opposite(direction),
    level: upward ? high : low,
    floors: [...below, ...above],
    ...(through ? {} : { depth: high - low }),
  }
}
