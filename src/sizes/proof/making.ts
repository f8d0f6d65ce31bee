import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Surface3 } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import type { Making } from './clans.ts'
import { SAME } from './elements.ts'

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

/** Of a slot or pocket its walls too: how wide and long it is its own numbers say, wherever another's walls stand. */
function ownPlanes(part: Part, { feature, members, outward }: Part['features'][number]): number[] {
  const faces = members.flatMap((m) => m.faces)
  if (feature?.kind === 'hole') return floorsOf(part, faces, outward)
  return faces.filter((id) => part.body.faces.find((f) => f.id === id)?.surface.kind === 'plane')
}

/** Round walls of corners worked round or filled, and of stock that has no axis of its own, with what runs on round them. */
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
  const free = body.faces.flatMap((f) => (owned.has(f.id) || shared.has(`${f.name} axis`) ? [] : [f.id]))
  const outline = part.axis ? [] : [{ id: 'outline', faces: free }]
  return [...corners, ...outline].flatMap(({ id, faces }) => {
    const walls = new Set(faces.filter(isWall))
    const runOn = body.edges.flatMap(({ faces: [a, b] }) => {
      if (b === undefined || walls.has(a) === walls.has(b)) return []
      const [wall, other] = walls.has(a) ? [a, b] : [b, a]
      return isOnOneLine(surfaces.get(wall)!, surfaces.get(other)!) ? [other] : []
    })
    return walls.size > 0 ? [{ id, faces: [...walls, ...runOn] }] : []
  })
}

function isOnOneLine(a: Surface3, b: Surface3): boolean {
  if (a.kind === 'plane' || b.kind === 'plane' || a.kind === 'spline' || b.kind === 'spline') return false
  const { origin, z } = a.axes
  const off = norm(cross(sub(b.axes.origin, origin), z))
  return off < SAME && (b.kind === 'sphere' || norm(cross(b.axes.z, z)) < 1e-7)
}

/** What the part's features tell the proof: faces made as one, and bolt circles. */
export function makingOf(part: Part): Making {
  return {
    // Turned steps and bends are the stock's own.
    owners: part.features.flatMap((f) => (f.feature ? [{ id: f.id, faces: f.members.flatMap((m) => m.faces) }] : [])),
    together: part.features.flatMap((f) => f.members.map((m) => m.faces)),
    floors: part.features.flatMap((f) =>
      f.feature && ['hole', 'slot', 'pocket'].includes(f.feature.kind) ? [ownPlanes(part, f)] : [],
    ),
    roundEnds: part.features.flatMap((f) =>
      f.feature?.kind === 'slot' ? f.members.flatMap((m) => endsOf(part, m.faces, f.outward)) : [],
    ),
    placed: part.features.flatMap((f) =>
      f.feature && !['round', 'fillet', 'chamfer'].includes(f.feature.kind)
        ? [{ id: f.id, faces: f.members.flatMap((m) => m.faces) }]
        : [],
    ),
    edged: part.features.flatMap((f) =>
      f.feature && ['round', 'fillet', 'chamfer'].includes(f.feature.kind) ? f.members.flatMap((m) => m.faces) : [],
    ),
    arcs: arcsOf(part),
    circles: part.features.flatMap((f) =>
      f.pattern?.kind === 'bolt circle'
        ? [{ id: f.id, centre: f.pattern.centre, normal: f.pattern.normal, members: f.members }]
        : [],
    ),
  }
}
