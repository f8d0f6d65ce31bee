import type { Vec2 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { projectPoint } from '../project.ts'
import type { Frame, ViewLine } from '../view.ts'
import type { RoundAxis, RoundFeature } from './round-features.ts'

interface Spot {
  readonly at: Vec2
  readonly radius: number
}

/**
 * Centre lines of round features seen end-on. Each centre gets a pair of crossed lines past its circle by `overrun`
 * paper mm; within one row, grid or slot, lines through several centres run on as one. A bolt circle gets its circular
 * centre line and a radial tick at each hole (ASME Y14.2 §2.7, ISO 128-2; common practice for the tick).
 */
export function endOnCentreLines(feature: RoundFeature, frame: Frame, overrun: number): ViewLine[] {
  const { pattern } = feature
  const seen = feature.members
    .map((m) => ({ spots: m.axes.filter((a) => isEndOn(a, frame)).map((a) => spotOf(a, frame)), middle: m.middle }))
    .filter((m) => m.spots.length > 0)
  const members = seen.map((m) => m.spots)
  if (members.length === 0) return []
  if (pattern.kind === 'bolt circle' && Math.abs(dot(pattern.normal, frame.toViewer)) > 1 - 1e-9) {
    return boltCircle(feature.feature, projectPoint(pattern.centre, frame), pattern.radius, members.flat(), overrun)
  }
  const together = pattern.kind === 'row' || pattern.kind === 'grid'
  // Across a slot, lines stand where sizes go: at its middle, and at its ends where their distance is stated.
  const across = seen.map(({ spots, middle }) => {
    if (!middle) return spots
    const at: Spot = { at: projectPoint(middle.point, frame), radius: spots[0]!.radius }
    return middle.alone ? [at] : [...spots, at]
  })
  const u = longWay(members[0]!)
  const v: Vec2 = [-u[1], u[0]]
  const grouped = (of: readonly Spot[][]) => (together ? [of.flat()] : of)
  return [
    ...grouped(members).flatMap((spots) => runs(feature.feature, spots, u, v, overrun)),
    ...grouped(across).flatMap((spots) => runs(feature.feature, spots, v, [-u[0], -u[1]], overrun)),
  ]
}

export const isEndOn = (axis: RoundAxis, frame: Frame) => Math.abs(dot(axis.direction, frame.toViewer)) > 1 - 1e-9

const spotOf = (axis: RoundAxis, frame: Frame): Spot => ({ at: projectPoint(axis.point, frame), radius: axis.radius })

/** The direction of a slot's long way, or the view's own horizontal. */
function longWay(spots: readonly Spot[]): Vec2 {
  const [a, b] = spots
  if (!a || !b) return [1, 0]
  const d: Vec2 = [b.at[0] - a.at[0], b.at[1] - a.at[1]]
  const length = Math.hypot(...d)
  return [d[0] / length, d[1] / length]
}

/** One line along `u` for each different height across it, through all centres at that height. */
function runs(feature: string, spots: readonly Spot[], u: Vec2, v: Vec2, overrun: number): ViewLine[] {
  const rows: { height: number; spots: Spot[] }[] = []
  for (const spot of spots) {
    const height = spot.at[0] * v[0] + spot.at[1] * v[1]
    const row = rows.find((r) => Math.abs(r.height - height) < 1e-6)
    if (row) row.spots.push(spot)
    else rows.push({ height, spots: [spot] })
  }
  return rows.map(({ height, spots: row }): ViewLine => {
    const on = row.map((s) => ({ at: s.at[0] * u[0] + s.at[1] * u[1], radius: s.radius }))
    const from = Math.min(...on.map((s) => s.at - s.radius))
    const to = Math.max(...on.map((s) => s.at + s.radius))
    const point = (s: number): Vec2 => [s * u[0] + height * v[0], s * u[1] + height * v[1]]
    return {
      curve: { kind: 'line', a: point(from), b: point(to) },
      kind: 'centre',
      sources: [],
      features: [feature],
      cross: row.map((s) => s.at),
      overrun: [overrun, overrun],
    }
  })
}

function boltCircle(feature: string, c: Vec2, r: number, spots: readonly Spot[], overrun: number): ViewLine[] {
  const circle: ViewLine = {
    curve: { kind: 'arc', c, r, from: 0, sweep: 2 * Math.PI },
    kind: 'centre',
    sources: [],
    features: [feature],
    cross: spots.map((s) => s.at),
  }
  const ticks = spots.map((s): ViewLine => {
    const u: Vec2 = [(s.at[0] - c[0]) / r, (s.at[1] - c[1]) / r]
    const point = (d: number): Vec2 => [c[0] + d * u[0], c[1] + d * u[1]]
    return {
      curve: { kind: 'line', a: point(r - s.radius), b: point(r + s.radius) },
      kind: 'centre',
      sources: [],
      features: [feature],
      cross: [s.at],
      overrun: [overrun, overrun],
    }
  })
  return [circle, ...ticks]
}
