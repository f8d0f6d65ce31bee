import type { Vec3 } from '../../geometry/vec.ts'
import { add, along, dot, scale, sub } from '../../geometry/vec3.ts'
import type { BodyFace } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import type { Hole } from './cuts.ts'
import { firstHit, samples } from './faces.ts'

/** Height of the drill's point below the stated depth, mm; 0 of a flat bottom. */
export function pointOf({ callout, r }: Hole): number {
  const angle = callout.point?.value ?? 118
  return angle === 180 ? 0 : r / Math.tan((angle * Math.PI) / 360)
}

/** From the mouth to where the middle of the hole meets a round wall that runs across it, mm; undefined of any other face. */
export function crossWall(part: Part, { at, inward, faces }: Hole, face: BodyFace): number | undefined {
  if (face.surface.kind !== 'cylinder' || faces.includes(face.id)) return undefined
  const { axes, r } = face.surface
  const across = (v: Vec3): Vec3 => add(v, scale(axes.z, -dot(v, axes.z)))
  const [u, v] = [across(sub(at, axes.origin)), across(inward)]
  const a = dot(v, v)
  if (a < 1e-6) return undefined
  const [b, c] = [dot(u, v), dot(u, u) - r * r]
  const root = b * b - a * c
  if (root <= 0) return undefined
  const far = (-b - Math.sqrt(root)) / a
  const high = dot(sub(along(at, inward, far), axes.origin), axes.z)
  const reach = part.body.edges
    .filter((e) => e.faces.includes(face.id))
    .flatMap((e) => samples(e).map((p) => dot(sub(p, axes.origin), axes.z)))
  return far > 1e-6 && high > Math.min(...reach) && high < Math.max(...reach) ? far : undefined
}

/** Material that lies ahead of the mouth on the middle line up to the next open space, mm. */
export function roomAhead(part: Part, hole: Hole): number {
  const rounds = part.body.faces.flatMap((f) => crossWall(part, hole, f) ?? [])
  const flat = firstHit(part.body, along(hole.at, hole.inward, hole.deep + 1e-4), hole.inward)
  return Math.min(...rounds, flat ? hole.deep + 1e-4 + flat.far : Infinity)
}
