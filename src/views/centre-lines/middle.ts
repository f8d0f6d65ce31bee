import { type Box2, boxOf, pointAt } from '../../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, norm, scale, sub } from '../../geometry/vec3.ts'
import type { Datum, Part } from '../../part/part.ts'
import { nearest } from '../conventions/nearest.ts'
import { projectPoint } from '../project.ts'
import type { Frame, View, ViewLine } from '../view.ts'

export interface Middle {
  readonly point: Vec3
  readonly normal: Vec3
}

/** The middle planes that the brief speaks of: named ones, and those between the two planes that something is centred between. */
export function middlesOf(part: Pick<Part, 'data' | 'implied'>): Middle[] {
  const planes = new Map(part.data.flatMap((d) => (d.kind === 'plane' ? [[d.id, d] as const] : [])))
  const found = part.data.filter((d): d is Extract<Datum, { kind: 'middle' }> => d.kind === 'middle').map(asMiddle)
  for (const condition of part.implied) {
    if (condition.kind !== 'centred') continue
    const [a, b] = condition.between.slice(-2).map((id) => planes.get(id))
    if (!a || !b || norm(cross(a.normal, b.normal)) > 1e-9) continue
    found.push({ point: scale(add(a.point, b.point), 0.5), normal: a.normal })
  }
  return found.filter((m, i) => !found.slice(0, i).some((k) => isSamePlane(k, m)))
}

const asMiddle = ({ point, normal }: Middle): Middle => ({ point, normal })

const isSamePlane = (a: Middle, b: Middle) =>
  norm(cross(a.normal, b.normal)) < 1e-9 && Math.abs(dot(sub(a.point, b.point), a.normal)) < 1e-6

/**
 * The line of symmetry where a middle plane that the brief speaks of is seen edge-on and the view's outline really is
 * the same on both sides of it: a centre line must not claim a symmetry that is not there.
 */
export function middleLine(
  middle: Middle,
  outline: readonly ViewLine[],
  box: View['box'],
  frame: Frame,
  overrun: number,
  tolerance: number,
): ViewLine | undefined {
  if (Math.abs(dot(middle.normal, frame.toViewer)) > 1e-9) return undefined
  const n: Vec2 = [dot(middle.normal, frame.right), dot(middle.normal, frame.up)]
  const c = projectPoint(middle.point, frame)
  if (!isSymmetric(outline, c, n, tolerance)) return undefined
  const u: Vec2 = [-n[1], n[0]]
  const corners: Vec2[] = [box.min, box.max, [box.min[0], box.max[1]], [box.max[0], box.min[1]]]
  const along = corners.map((p) => (p[0] - c[0]) * u[0] + (p[1] - c[1]) * u[1])
  const at = (s: number): Vec2 => [c[0] + s * u[0], c[1] + s * u[1]]
  return {
    curve: { kind: 'line', a: at(Math.min(...along)), b: at(Math.max(...along)) },
    kind: 'centre',
    sources: [],
    overrun: [overrun, overrun],
  }
}

/** True where the mirror image of every visible and hidden line lies on lines of the same kind. */
export function isSymmetric(lines: readonly ViewLine[], c: Vec2, n: Vec2, tolerance: number): boolean {
  const drawn = lines
    .filter((l) => l.kind === 'visible' || l.kind === 'hidden')
    .map((l) => ({ kind: l.kind, curve: l.curve, box: boxOf(l.curve) }))
  const reach = 10 * tolerance
  return drawn.every((line) =>
    [0, 0.29, 0.61, 1].every((t) => {
      const p = pointAt(line.curve, t)
      const off = 2 * ((p[0] - c[0]) * n[0] + (p[1] - c[1]) * n[1])
      const image: Vec2 = [p[0] - off * n[0], p[1] - off * n[1]]
      return drawn.some(
        (l) => l.kind === line.kind && isWithin(l.box, image, reach) && nearest(l.curve, image).distance <= reach,
      )
    }),
  )
}

const isWithin = ({ min, max }: Box2, p: Vec2, by: number) =>
  p[0] >= min[0] - by && p[0] <= max[0] + by && p[1] >= min[1] - by && p[1] <= max[1] + by
