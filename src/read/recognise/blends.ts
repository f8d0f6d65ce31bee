import { type Line3, type Neighbour, SAME } from './borders.ts'
import { isRound, type Wall } from './walls.ts'

/** Rounds (outside) or fillets (inside) of one radius that run the same way. */
export interface FoundBlend {
  readonly kind: 'round' | 'fillet'
  readonly radius: number
  readonly places: readonly FoundArc[]
}

export interface FoundArc {
  readonly faces: readonly number[]
  readonly line: Line3
  /** Its neighbours do not hold its axis: a round end, or an arc that meets a face at a corner. */
  readonly loose: boolean
}

/** An arc that covers this much of a turn is a round end (radians). */
const ROUND_END = 0.9 * Math.PI

/**
 * Arcs of less than a whole turn: corners rounded off or filled out, round ends, bends. `taken` faces belong to slots and
 * holes already. Tori count by the radius of their section.
 */
export function blendsOf(
  walls: readonly Wall[],
  beside: ReadonlyMap<number, readonly Neighbour[]>,
  taken: ReadonlySet<number>,
): FoundBlend[] {
  const groups: { key: string; kind: FoundBlend['kind']; radius: number; places: FoundArc[] }[] = []
  for (const wall of walls) {
    if (wall.faces.some((f) => taken.has(f))) continue
    const smooth = wall.faces
      .flatMap((f) => beside.get(f) ?? [])
      .filter((n) => n.smooth && !wall.faces.includes(n.face))
    const isArc = wall.kind === 'cylinder' && !isRound(wall)
    const isBlend = (wall.kind === 'torus' || wall.kind === 'sphere') && smooth.length > 0
    if (!isArc && !isBlend) continue
    const kind = wall.inside ? 'fillet' : 'round'
    const radius = wall.radii[0]
    const way = wall.kind === 'cylinder' ? wall.line.direction.map((c) => Math.abs(c).toFixed(4)).join() : 'any'
    const key = `${kind}/${Math.round(radius / SAME)}/${way}`
    const tangent = new Set(smooth.map((n) => n.face)).size
    const arc = { faces: wall.faces, line: wall.line, loose: isArc && (tangent < 2 || wall.sweep > ROUND_END) }
    const home = groups.find((g) => g.key === key)
    if (home) home.places.push(arc)
    else groups.push({ key, kind, radius, places: [arc] })
  }
  return groups.map(({ kind, radius, places }) => ({ kind, radius, places }))
}

/** Every round wall with the material inside: shafts, bosses, rims. */
export const bossesOf = (walls: readonly Wall[]): Wall[] => walls.filter((w) => !w.inside && isRound(w))
