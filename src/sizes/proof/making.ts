import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import type { Making } from './clans.ts'

/** The round walls among a slot's faces, which stand along its direction of work. */
export function endsOf(part: Part, faces: readonly number[], outward: Vec3): number[] {
  return faces.filter((id) => {
    const surface = part.body.faces.find((f) => f.id === id)?.surface
    return surface?.kind === 'cylinder' && Math.abs(dot(surface.axes.z, outward)) > 1 - 1e-9
  })
}

/** The plane faces among a hole's: floors of counterbores and spotfaces, flat bottoms. */
function floorsOf(part: Part, faces: readonly number[]): number[] {
  return faces.filter((id) => part.body.faces.find((f) => f.id === id)?.surface.kind === 'plane')
}

/** What the part's features tell the proof: faces made as one, and bolt circles. */
export function makingOf(part: Part): Making {
  return {
    // Turned steps and bends are the stock's own.
    owners: part.features.flatMap((f) => (f.feature ? [{ id: f.id, faces: f.members.flatMap((m) => m.faces) }] : [])),
    together: part.features.flatMap((f) => f.members.map((m) => m.faces)),
    floors: part.features.flatMap((f) =>
      f.feature?.kind === 'hole' ? [f.members.flatMap((m) => floorsOf(part, m.faces))] : [],
    ),
    roundEnds: part.features.flatMap((f) =>
      f.feature?.kind === 'slot' ? f.members.flatMap((m) => endsOf(part, m.faces, f.outward)) : [],
    ),
    circles: part.features.flatMap((f) =>
      f.pattern?.kind === 'bolt circle'
        ? [{ id: f.id, centre: f.pattern.centre, normal: f.pattern.normal, members: f.members }]
        : [],
    ),
  }
}
