import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Context, Mooring } from './context.ts'

interface Level {
  readonly at: number
  readonly mooring: Mooring
  readonly form: 'plane' | 'axis' | 'extreme'
}

/** Everything of these faces that a size along the direction can reach. */
function levelsOf(context: Context, faces: readonly number[], direction: Vec3, name: string): Level[] {
  const levels: Level[] = []
  for (const id of faces) {
    const face = context.part.body.faces.find((f) => f.id === id)
    if (!face || face.surface.kind === 'spline') continue
    const { surface } = face
    const { origin, z } = surface.axes
    const along = Math.abs(dot(z, direction))
    if (surface.kind === 'plane') {
      if (along > 1 - 1e-9)
        levels.push({
          at: dot(origin, direction),
          form: 'plane',
          mooring: { at: origin, name, faces: [id], normal: z },
        })
      continue
    }
    if (along > 1e-9) continue
    // A hole's own axis, seen from beside: put at the middle of the body, where the view will look for it.
    levels.push({ at: dot(origin, direction), form: 'axis', mooring: { at: origin, name, faces: [id], axis: z } })
    if (surface.kind !== 'cylinder') continue
    for (const side of [1, -1]) {
      const at: Vec3 = [
        origin[0] + side * surface.r * direction[0],
        origin[1] + side * surface.r * direction[1],
        origin[2] + side * surface.r * direction[2],
      ]
      levels.push({ at: dot(at, direction), form: 'extreme', mooring: { at, name, faces: [id] } })
    }
  }
  return levels
}

const FORMS = { overall: ['plane', 'extreme'], centres: ['axis', 'plane'] } as const

/** The two things of a feature's member that stand the stated distance apart along the direction. */
export function pairApart(
  context: Context,
  faces: readonly number[],
  direction: Vec3,
  mm: number,
  name: string,
  measured: 'overall' | 'centres' = 'overall',
): readonly [Mooring, Mooring] | undefined {
  const levels = levelsOf(context, faces, direction, name)
  const wanted: readonly string[] = FORMS[measured]
  const rank = (level: Level) => {
    const i = wanted.indexOf(level.form)
    return i < 0 ? 5 : i
  }
  let best: { cost: number; pair: readonly [Mooring, Mooring] } | undefined
  for (const a of levels) {
    for (const b of levels) {
      if (Math.abs(b.at - a.at - mm) > 1e-5 * Math.max(1, mm)) continue
      const cost = rank(a) + rank(b)
      if (!best || cost < best.cost) best = { cost, pair: [a.mooring, b.mooring] }
    }
  }
  return best?.pair
}

/** Faces of the part's outer planes, for sizes that run from an edge (open slots, depths from a worked face). */
export function facesSquareTo(context: Context, direction: Vec3): number[] {
  return context.part.body.faces.flatMap((f) =>
    f.surface.kind === 'plane' && Math.abs(dot(f.surface.axes.z, direction)) > 1 - 1e-9 ? [f.id] : [],
  )
}
