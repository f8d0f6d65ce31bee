import type { Vec3 } from '../../geometry/vec.ts'
import { add, dot, scale, sub, unit } from '../../geometry/vec3.ts'
import type { Context, Mooring } from './context.ts'

interface Level {
  readonly at: number
  readonly mooring: Mooring
  readonly form: 'plane' | 'axis' | 'extreme' | 'corner'
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
    const rounds = surface.kind === 'cylinder' ? [{ origin, r: surface.r }] : rimsOf(context, id)
    for (const round of rounds)
      for (const side of [1, -1]) {
        const at = add(round.origin, scale(direction, side * round.r))
        levels.push({ at: dot(at, direction), form: 'extreme', mooring: { at, name, faces: [id] } })
      }
  }
  for (const { curve, faces: sides, smooth } of context.part.body.edges) {
    if (curve.kind !== 'line' || smooth || !sides.some((f) => f !== undefined && faces.includes(f))) continue
    const run = sub(curve.b, curve.a)
    if (Math.abs(dot(run, direction)) > 1e-9) continue
    const at: Vec3 = [(curve.a[0] + curve.b[0]) / 2, (curve.a[1] + curve.b[1]) / 2, (curve.a[2] + curve.b[2]) / 2]
    levels.push({ at: dot(at, direction), form: 'corner', mooring: { at, name, faces: [...faces], axis: unit(run) } })
  }
  return levels
}

/** The whole circles in which a cone ends. */
function rimsOf({ part: { body } }: Context, cone: number): { origin: Vec3; r: number }[] {
  return body.edges.flatMap(({ curve, faces }) =>
    curve.kind === 'circle' && faces.includes(cone) ? [{ origin: curve.axes.origin, r: curve.r }] : [],
  )
}

const FORMS = { overall: ['plane', 'extreme'], centres: ['axis', 'plane'] } as const

/**
 * The two things the stated distance apart along the direction, at least one of them the feature member's own; the
 * other may be among `outer`.
 */
export function pairApart(
  context: Context,
  faces: readonly number[],
  direction: Vec3,
  mm: number,
  name: string,
  measured: 'overall' | 'centres' = 'overall',
  outer: readonly number[] = [],
): readonly [Mooring, Mooring] | undefined {
  const own = levelsOf(context, faces, direction, name)
  const others = outer.length > 0 ? levelsOf(context, outer, direction, name) : []
  const wanted: readonly string[] = FORMS[measured]
  const rank = (level: Level) => {
    const i = wanted.indexOf(level.form)
    return i < 0 ? 5 : i
  }
  let best: { cost: number; pair: readonly [Mooring, Mooring] } | undefined
  for (const a of own) {
    for (const b of [...own, ...others]) {
      if (Math.abs(Math.abs(b.at - a.at) - mm) > 1e-5 * Math.max(1, mm)) continue
      // its own two ends before one of them and a face that is as far off by chance
      const cost = rank(a) + rank(b) + (others.includes(b) ? 12 : 0)
      if (!best || cost < best.cost)
        best = { cost, pair: a.at < b.at ? [a.mooring, b.mooring] : [b.mooring, a.mooring] }
    }
  }
  return best?.pair
}

/** Faces of the part's outer planes, for sizes that run from an edge (open slots, depths from a worked face). */
export function facesSquareTo(context: Context, direction: Vec3): number[] {
  return context.part.body.faces.flatMap(({ id, surface, reversed }) => {
    if (surface.kind === 'plane') return Math.abs(dot(surface.axes.z, direction)) > 1 - 1e-9 ? [id] : []
    // The outside of a round bar stands for its edge.
    const isRound = surface.kind === 'cylinder' || surface.kind === 'cone'
    return isRound && !reversed && Math.abs(dot(surface.axes.z, direction)) < 1e-9 ? [id] : []
  })
}
