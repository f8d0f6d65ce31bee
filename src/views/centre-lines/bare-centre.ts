import type { Vec2 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { projectPoint } from '../project.ts'
import type { Frame, ViewLine } from '../view.ts'
import type { RoundFeature } from './round-features.ts'

/** Half length of a bare centre's cross as a share of the bolt circle's radius; its overruns come on top. */
const SHARE = 0.06

/**
 * The crossed lines at the centre of a bolt circle, for each direction in which no other centre line passes there: the
 * place that the circle is located from must be seen (common practice, no source).
 */
export function bareCentre(
  feature: RoundFeature,
  frame: Frame,
  drawn: readonly ViewLine[],
  overrun: number,
): ViewLine[] {
  const { pattern } = feature
  if (pattern.kind !== 'bolt circle' || Math.abs(dot(pattern.normal, frame.toViewer)) < 1 - 1e-9) return []
  if (!drawn.some((l) => l.features?.includes(feature.feature))) return []
  const crossed = crossAt(projectPoint(pattern.centre, frame), pattern.radius, drawn, overrun)
  return crossed.map((l) => ({ ...l, features: [feature.feature] }))
}

/** Short crossed lines at the centre of a circle of radius `r` mm, each where no other centre line passes. */
export function crossAt(c: Vec2, r: number, drawn: readonly ViewLine[], overrun: number): ViewLine[] {
  const half = SHARE * r
  const ways: readonly Vec2[] = [
    [1, 0],
    [0, 1],
  ]
  return ways
    .filter((u) => !drawn.some((l) => passes(l, c, u)))
    .map((u) => ({
      curve: { kind: 'line', a: [c[0] - half * u[0], c[1] - half * u[1]], b: [c[0] + half * u[0], c[1] + half * u[1]] },
      kind: 'centre',
      sources: [],
      cross: [c],
      overrun: [overrun, overrun],
    }))
}

/** Whether the centre line runs along `u` through the point. */
export function passes({ kind, curve }: ViewLine, c: Vec2, u: Vec2): boolean {
  if (kind !== 'centre' || curve.kind !== 'line') return false
  const along = (p: Vec2) => (p[0] - c[0]) * u[0] + (p[1] - c[1]) * u[1]
  const off = (p: Vec2) => Math.abs((p[0] - c[0]) * u[1] - (p[1] - c[1]) * u[0])
  return off(curve.a) < 1e-6 && off(curve.b) < 1e-6 && along(curve.a) * along(curve.b) < 0
}
