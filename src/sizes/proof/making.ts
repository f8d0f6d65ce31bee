import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Surface3 } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import type { Making } from './clans.ts'
import { SAME } from './elements.ts'
import { fullRounds, pocketEnds } from './full-round.ts'

/** The round walls among a slot's faces, which stand along its direction of work. */
export function endsOf(part: Part, faces: readonly number[], outward: Vec3): number[] {
  return faces.filter((id) => {
    const surface = part.body.faces.find((f) => f.id === id)?.surface
    return surface?.kind === 'cylinder' && Math.abs(dot(surface.axes.z, outward)) > 1 - 1e-9
  })
}

/** The plane faces of a cut across its direction of work: floors of counterbores, slots and pockets, flat bottoms. */
function floorsOf(part: Part, faces: readonly number[], outward: Vec3): number[] {
  return faces.filter((id) => {
    const surface = part.body.faces.find((f) => f.id === id)?.surface
    return surface?.kind === 'plane' && Math.abs(dot(surface.axes.z, outward)) > 1 - 1e-9
  })
}

/** Cuts whose own numbers give all their planes. A groove is not among them: its side may be the shoulder's own face. */
const OF_THEIR_OWN: readonly string[] = ['hole', 'slot', 'pocket', 'notch', 'step', 'keyseat', 'flat-cut']

/** Of a cut other than a hole its walls too: how wide and long it is its own numbers say, wherever another's walls stand. */
function ownPlanes(part: Part, { feature, members, outward }: Part['features'][number]): number[] {
  const faces = members.flatMap((m) => m.faces)
  if (feature?.kind === 'hole') return members.flatMap((m) => floorsOf(part, m.faces, m.outward ?? outward))
  const planes = faces.filter((id) => part.body.faces.find((f) => f.id === id)?.surface.kind === 'plane')
  // Steps at one level are one line of the outline, and a flat may end at a shoulder's own face, but for two that look
  // opposite ways.
  if (feature?.kind === 'step') return planes.filter((id) => isBackToBack(part, id))
  return feature?.kind === 'flat-cut' ? planes.filter((id) => !isAcross(part, id) || isBackToBack(part, id)) : planes
}

/** Whether a plane face stands square to the part's axis. */
function isAcross({ axis, body }: Part, id: number): boolean {
  const surface = body.faces.find((f) => f.id === id)?.surface
  return axis !== undefined && surface?.kind === 'plane' && Math.abs(dot(surface.axes.z, axis.direction)) > 1 - 1e-9
}

/** Whether another face in the same plane looks the other way. */
function isBackToBack({ body }: Part, id: number): boolean {
  const face = body.faces.find((f) => f.id === id)!
  if (face.surface.kind !== 'plane') return false
  const { origin, z } = face.surface.axes
  return body.faces.some(({ surface, reversed }) => {
    if (surface.kind !== 'plane') return false
    const turned = reversed === face.reversed ? 1 : -1
    const off = Math.abs(dot(sub(surface.axes.origin, origin), z))
    return off < SAME && turned * dot(surface.axes.z, z) < -1 + 1e-9
  })
}

/**
 * Round walls that stand by themselves, with what runs on round them: of corners worked round or filled, of stock that has no
 * axis of its own, ends of keyseats, and holes and slots that meet on one line from different sides.
 */
function arcsOf(part: Part): { id: string; faces: readonly number[] }[] {
  const { body, features } = part
  const owned = new Set(features.flatMap((f) => (f.feature ? f.members.flatMap((m) => m.faces) : [])))
  const surfaces = new Map(body.faces.map((f) => [f.id, f.surface]))
  const isWall = (face: number) => surfaces.get(face)?.kind === 'cylinder'
  const corners = features.flatMap((f) =>
    f.kind === 'round' || f.kind === 'fillet' ? [{ id: f.id, faces: f.members.flatMap((m) => m.faces) }] : [],
  )
  // an arc whose axis a hole is said to stand on shares it
  const shared = new Set(part.implied.flatMap((i) => (i.kind === 'coaxial' ? i.between : [])))
  const placed = opposed(part, shared)
  const edged = new Set(features.flatMap((f) => (isEdge(f.kind) ? f.members.flatMap((m) => m.faces) : [])))
  const free = body.faces.flatMap((f) => (owned.has(f.id) || shared.has(`${f.name} axis`) ? [] : [f.id]))
  const outline = part.axis ? [] : [{ id: 'outline', faces: free }]
  return [...corners, ...placed, ...outline].flatMap(({ id, faces }) => {
    const walls = new Set(faces.filter(isWall))
    const runOn = body.edges.flatMap(({ faces: [a, b] }) => {
      if (b === undefined || walls.has(a) === walls.has(b)) return []
      const [wall, other] = walls.has(a) ? [a, b] : [b, a]
      // another's own walls are not this one's
      if (placed.some((p) => p.id === id) && owned.has(other) && !edged.has(other) && !faces.includes(other)) return []
      return isOnOneLine(surfaces.get(wall)!, surfaces.get(other)!) ? [other] : []
    })
    return walls.size > 0 ? [{ id, faces: [...new Set([...walls, ...runOn])] }] : []
  })
}

/**
 * Features with round walls that meet another's on one line, worked from a different side or one of them a slot or
 * keyseat with its own length: each has its own place.
 */
function opposed(part: Part, shared: ReadonlySet<string>): { id: string; faces: readonly number[] }[] {
  const surfaces = new Map(part.body.faces.map((f) => [f.id, f.surface]))
  const cuts = part.features.filter(
    (f) =>
      f.feature &&
      ['hole', 'slot', 'keyseat'].includes(f.feature.kind) &&
      f.pattern?.kind !== 'bolt circle' &&
      !f.members.some((m) => m.axes.some((axis) => shared.has(axis) || axis === 'axis')),
  )
  const facesOf = (f: Part['features'][number]) => f.members.flatMap((m) => m.faces)
  const isOpposed = (f: Part['features'][number]) =>
    cuts.some(
      (g) =>
        g !== f &&
        (dot(f.outward, g.outward) < 1 - 1e-9 || f.kind !== 'hole' || g.kind !== 'hole') &&
        facesOf(f).some((a) => facesOf(g).some((b) => isOnOneLine(surfaces.get(a)!, surfaces.get(b)!))),
    )
  return cuts.filter(isOpposed).map((f) => ({ id: f.id, faces: facesOf(f) }))
}

function isOnOneLine(a: Surface3, b: Surface3): boolean {
  if (a.kind === 'plane' || b.kind === 'plane' || a.kind === 'spline' || b.kind === 'spline') return false
  const { origin, z } = a.axes
  const off = norm(cross(sub(b.axes.origin, origin), z))
  return off < SAME && (b.kind === 'sphere' || norm(cross(b.axes.z, z)) < 1e-7)
}

const isEdge = (kind: string): boolean => ['round', 'fillet', 'chamfer'].includes(kind)

/** What the part's features tell the proof: faces made as one, and bolt circles. */
export function makingOf(part: Part): Making {
  const ends = fullRounds(part)
  return {
    // Turned steps and bends are the stock's own; a round end's centre follows from its sides, not from other corners'.
    owners: [
      ...part.features.flatMap((f) => (f.feature ? [{ id: f.id, faces: f.members.flatMap((m) => m.faces) }] : [])),
      ...ends.map((e, i) => ({ id: `round end ${i + 1}`, faces: e.faces })),
    ],
    together: part.features.flatMap((f) => f.members.map((m) => m.faces)),
    floors: part.features.flatMap((f) =>
      f.feature && OF_THEIR_OWN.includes(f.feature.kind) ? [ownPlanes(part, f)] : [],
    ),
    roundEnds: [
      ...part.features.flatMap((f) =>
        f.feature?.kind === 'slot' ? f.members.flatMap((m) => endsOf(part, m.faces, f.outward)) : [],
      ),
      ...[...ends, ...pocketEnds(part)].flatMap((e) => e.faces),
    ],
    placed: part.features.flatMap((f) =>
      f.feature && !isEdge(f.feature.kind) ? [{ id: f.id, faces: f.members.flatMap((m) => m.faces) }] : [],
    ),
    edged: part.features.flatMap((f) => (f.feature && isEdge(f.feature.kind) ? f.members.flatMap((m) => m.faces) : [])),
    arcs: arcsOf(part),
    circles: part.features.flatMap((f) =>
      f.pattern?.kind === 'bolt circle'
        ? [{ id: f.id, centre: f.pattern.centre, normal: f.pattern.normal, members: f.members }]
        : [],
    ),
  }
}
