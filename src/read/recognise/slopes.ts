import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, norm, scale, sub } from '../../geometry/vec3.ts'
import type { Body, BodyFace } from '../../kernel/body.ts'
import { axisAlong, type Neighbour, outwardOfPlane, SAME } from './borders.ts'
import type { Wall } from './walls.ts'

/** A narrow sloping face or cone along an edge. Legs in mm, the angle in degrees from the leg's own face. */
export interface FoundChamfer {
  readonly faces: readonly number[]
  readonly leg: number
  /** The other leg, where the two differ and the face is a plane. */
  readonly otherLeg?: number
  readonly angle: number
}

/** A sloping plane that runs along one axis of the part, by the two corners between which it slopes. */
export interface FoundSlope {
  readonly face: number
  /** The axis of the part that it runs along. */
  readonly along: 0 | 1 | 2
  readonly corners: readonly {
    readonly at: Vec3
    /** Directions in which a plane face that meets it there fixes the corner already. */
    readonly known: readonly number[]
  }[]
}

/** Share of the part's smaller extent across it up to which a slope along an edge is a chamfer (common practice, no source). */
const NARROW = 0.25

/** Plane slopes, told apart as chamfers and as slopes with corners. */
export function slopesOf(body: Body, beside: ReadonlyMap<number, readonly Neighbour[]>, taken: ReadonlySet<number>) {
  const chamfers: FoundChamfer[] = []
  const slopes: FoundSlope[] = []
  for (const face of body.faces) {
    if (taken.has(face.id)) continue
    const normal = outwardOfPlane(face)
    if (!normal || axisAlong(normal) !== undefined) continue
    const along = ([0, 1, 2] as const).find((k) => Math.abs(normal[k]) < 1e-9)
    if (along === undefined) continue
    const chamfer = planeChamfer(body, face, normal, along, beside)
    if (chamfer) chamfers.push(chamfer)
    else slopes.push({ face: face.id, along, corners: cornersOf(body, face, along) })
  }
  return { chamfers, slopes }
}

/** Edges of the face that run along the axis, with the plane faces across them. */
function rimsOf(body: Body, face: BodyFace, along: 0 | 1 | 2) {
  return face.loops.flat().flatMap(({ edge }) => {
    const { curve, faces } = body.edges[edge]!
    if (curve.kind !== 'line' || axisAlong(sub(curve.b, curve.a)) !== along) return []
    const other = faces.find((f) => f !== undefined && f !== face.id)
    const normal = other === undefined ? undefined : outwardOfPlane(body.faces[other]!)
    return [{ at: scale(add(curve.a, curve.b), 0.5), normal }]
  })
}

function planeChamfer(
  body: Body,
  face: BodyFace,
  normal: Vec3,
  along: 0 | 1 | 2,
  beside: ReadonlyMap<number, readonly Neighbour[]>,
): FoundChamfer | undefined {
  const { min, max } = body.box
  const least = Math.min(...[0, 1, 2].flatMap((k) => (k === along ? [] : [max[k]! - min[k]!])))
  const rims = rimsOf(body, face, along)
  const [a, b] = rims
  if (rims.length !== 2 || !a?.normal || !b?.normal) return undefined
  const [ka, kb] = [axisAlong(a.normal), axisAlong(b.normal)]
  if (ka === undefined || kb === undefined || ka === kb) return undefined
  // a chamfer takes off an outside corner: it looks the way that both of its faces look
  if (dot(normal, a.normal) <= 0 || dot(normal, b.normal) <= 0) return undefined
  const [p, q] = [Math.abs(a.at[ka] - b.at[ka]), Math.abs(a.at[kb] - b.at[kb])]
  if (Math.max(p, q) > NARROW * least) return undefined
  if (beside.get(face.id)?.some((n) => n.smooth)) return undefined
  if (Math.abs(p - q) < SAME) return { faces: [face.id], leg: p, angle: 45 }
  return { faces: [face.id], leg: p, otherLeg: q, angle: (Math.atan2(Math.min(p, q), Math.max(p, q)) * 180) / Math.PI }
}

function cornersOf(body: Body, face: BodyFace, along: 0 | 1 | 2): FoundSlope['corners'] {
  const seen: { at: Vec3; known: number[] }[] = []
  for (const { at, normal } of rimsOf(body, face, along)) {
    const k = normal && axisAlong(normal)
    const own = seen.find((c) => [0, 1, 2].every((i) => i === along || Math.abs(c.at[i]! - at[i]!) < SAME))
    const known = k === undefined ? [] : [k]
    if (own) own.known.push(...known)
    else seen.push({ at, known })
  }
  return seen
}

/** Cones about an axis that break an edge between a plane end and a cylinder. */
export function coneChamfer(
  body: Body,
  wall: Wall,
  beside: ReadonlyMap<number, readonly Neighbour[]>,
): FoundChamfer | undefined {
  if (wall.kind !== 'cone' || wall.halfAngle === undefined || Math.min(...wall.radii) < SAME) return undefined
  const leg = wall.to - wall.from
  if (leg > NARROW * Math.max(...wall.radii)) return undefined
  const near = wall.faces.flatMap((f) => beside.get(f) ?? []).map((n) => body.faces[n.face]!)
  const ended = near.some((f) => {
    const normal = outwardOfPlane(f)
    return normal !== undefined && norm(cross(normal, wall.line.direction)) < 1e-6
  })
  return ended ? { faces: wall.faces, leg, angle: wall.halfAngle } : undefined
}
