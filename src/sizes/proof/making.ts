import type { Part } from '../../part/part.ts'
import type { Making } from './model.ts'

/** What the part's features tell the proof: faces made as one, and bolt circles. */
export function makingOf(part: Part): Making {
  return {
    // Turned steps and bends are the stock's own.
    owners: part.features.flatMap((f) => (f.feature ? [{ id: f.id, faces: f.members.flatMap((m) => m.faces) }] : [])),
    together: part.features.flatMap((f) => f.members.map((m) => m.faces)),
    circles: part.features.flatMap((f) =>
      f.pattern?.kind === 'bolt circle'
        ? [{ id: f.id, centre: f.pattern.centre, normal: f.pattern.normal, members: f.members }]
        : [],
    ),
  }
}
