import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import { projectPoint } from '../project.ts'
import type { Frame, ViewLine } from '../view.ts'
import { passes } from './bare-centre.ts'

/**
 * The crossed centre lines of pockets that are located by their middle, seen from the side they are worked from: past the
 * walls by `overrun` paper mm, each where no other centre line runs (common practice, no source).
 */
export function pocketMiddles(part: Part, frame: Frame, drawn: readonly ViewLine[], overrun: number): ViewLine[] {
  const pockets = part.features.filter((f) => f.kind === 'pocket' && dot(f.outward, frame.toViewer) > 1 - 1e-9)
  return pockets.flatMap((f) =>
    f.members.flatMap((m) =>
      (isLocated(part, `${m.id} axis`) ? WAYS : []).flatMap((u): ViewLine[] => {
        const c = projectPoint(m.point, frame)
        if (drawn.some((l) => passes(l, c, u))) return []
        const along = borders(part, m.faces).map((p) => {
          const q = projectPoint(p, frame)
          return (q[0] - c[0]) * u[0] + (q[1] - c[1]) * u[1]
        })
        const at = (s: number): Vec2 => [c[0] + s * u[0], c[1] + s * u[1]]
        return [
          {
            curve: { kind: 'line', a: at(Math.min(...along)), b: at(Math.max(...along)) },
            kind: 'centre',
            sources: [],
            features: [f.id],
            cross: [c],
            overrun: [overrun, overrun],
          },
        ]
      }),
    ),
  )
}

const WAYS: readonly Vec2[] = [
  [1, 0],
  [0, 1],
]

/** A number or the word `centred` reaches the pocket's middle; else it is located by its sides. */
function isLocated(part: Part, middle: string): boolean {
  return (
    part.implied.some((i) => i.kind === 'centred' && i.between.includes(middle)) ||
    part.chosen.some((c) =>
      c.kind === 'distance' ? c.from === middle || c.to === middle : c.kind === 'pitch' && c.members.includes(middle),
    )
  )
}

function borders(part: Part, faces: readonly number[]): Vec3[] {
  return part.body.edges.flatMap(({ curve, faces: own }): Vec3[] =>
    curve.kind === 'line' && own.some((f) => f !== undefined && faces.includes(f)) ? [curve.a, curve.b] : [],
  )
}
