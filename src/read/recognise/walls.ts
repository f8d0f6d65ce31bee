import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, sub } from '../../geometry/vec3.ts'
import type { Body, BodyFace, Surface3 } from '../../kernel/body.ts'
import { squareTo } from '../../kernel/evaluate3.ts'
import { type Line3, lineOf, offLine, pointsOfFace, SAME, sameLine } from './borders.ts'

/**
 * One surface of revolution's wall: all faces that lie on it and follow one another along the axis. Places along the
 * axis are counted as point · direction.
 */
export interface Wall {
  readonly kind: 'cylinder' | 'cone' | 'torus' | 'sphere'
  readonly line: Line3
  readonly faces: readonly number[]
  /** Material outside: the wall of a hole, not of a shaft. */
  readonly inside: boolean
  readonly from: number
  readonly to: number
  /** Radius at `from` and at `to`, mm; the same for a cylinder. */
  readonly radii: readonly [number, number]
  /** Degrees between a cone's axis and its side. */
  readonly halfAngle?: number
  /** How far round it reaches, radians. */
  readonly sweep: number
}

/** More than this of a turn is a whole round, though a keyway or a flat may cut into it; less is an arc. */
const ROUND = 1.15 * Math.PI

export const isRound = (wall: Wall): boolean => wall.sweep > ROUND

/** All cylinders, cones, tori and spheres of the body as walls, in the order of their first faces. */
export function wallsOf(body: Body): Wall[] {
  const groups = new Map<number, Draft[]>()
  const all: Draft[] = []
  for (const face of body.faces) {
    const draft = draftOf(body, face)
    if (!draft) continue
    const cell = cellOf(draft.line)
    const near = [cell - 1, cell, cell + 1].flatMap((c) => groups.get(c) ?? [])
    const home = near.find((g) => goTogether(g, draft))
    if (home) join(home, draft)
    else {
      all.push(draft)
      groups.set(cell, [...(groups.get(cell) ?? []), draft])
    }
  }
  return joined(all).map(({ arcs, surface: _, ...wall }) => ({ ...wall, sweep: covered(arcs) }))
}

interface Draft {
  kind: Wall['kind']
  line: Line3
  surface: Surface3
  faces: number[]
  inside: boolean
  from: number
  to: number
  radii: [number, number]
  halfAngle?: number
  arcs: (readonly [from: number, sweep: number])[]
}

const ODD: Vec3 = [1, Math.SQRT2, Math.PI]
const cellOf = ({ point }: Line3): number => Math.floor(dot(point, ODD) / 0.01)

function draftOf(body: Body, face: BodyFace): Draft | undefined {
  const { surface } = face
  if (surface.kind === 'plane' || surface.kind === 'spline') return undefined
  const line = lineOf(surface.axes.origin, surface.axes.z)
  const points = pointsOfFace(body, face)
  const along = points.map((p) => dot(p, line.direction))
  const middle = dot(surface.axes.origin, line.direction)
  let [from, to] = [Math.min(...along), Math.max(...along)]
  if (points.length === 0) [from, to] = [middle - reachOf(surface), middle + reachOf(surface)]
  if (surface.kind === 'cone') [from, to] = withApex(body, face, surface, line, from, to)
  return {
    kind: surface.kind,
    line,
    surface,
    faces: [face.id],
    inside: face.reversed,
    from,
    to,
    radii: [radiusAt(surface, line, from), radiusAt(surface, line, to)],
    ...(surface.kind === 'cone' ? { halfAngle: (surface.halfAngle * 180) / Math.PI } : {}),
    arcs: [arcOf(body, face, points, line)],
  }
}

const reachOf = (surface: Surface3): number =>
  surface.kind === 'sphere' ? surface.r : surface.kind === 'torus' ? surface.minor : 0

/** A whole cone runs to its point, which has no border of its own. */
function withApex(
  body: Body,
  face: BodyFace,
  cone: Extract<Surface3, { kind: 'cone' }>,
  line: Line3,
  from: number,
  to: number,
): [number, number] {
  const circles = new Set(
    face.loops
      .flat()
      .map((use) => body.edges[use.edge]!)
      .filter((e) => !e.seam && e.curve.kind === 'circle')
      .map((e) => (e.curve.kind === 'circle' ? dot(e.curve.axes.origin, line.direction).toFixed(4) : '')),
  )
  if (circles.size !== 1) return [from, to]
  const sign = Math.sign(dot(cone.axes.z, line.direction))
  const apex = dot(cone.axes.origin, line.direction) - (sign * cone.r) / Math.tan(cone.halfAngle)
  // the border may hold the point already, as the end of the seam
  return [Math.min(from, apex), Math.max(to, apex)]
}

function radiusAt(surface: Surface3, line: Line3, at: number): number {
  switch (surface.kind) {
    case 'cylinder':
      return surface.r
    case 'cone': {
      const sign = Math.sign(dot(surface.axes.z, line.direction))
      const up = sign * (at - dot(surface.axes.origin, line.direction))
      return Math.abs(surface.r + up * Math.tan(surface.halfAngle))
    }
    case 'sphere':
      return surface.r
    case 'torus':
      return surface.minor
    default:
      return 0
  }
}

/** The stretch of a full turn that a face's border leaves no larger gap in. */
function arcOf(body: Body, face: BodyFace, points: readonly Vec3[], line: Line3): readonly [number, number] {
  const closed = face.loops.flat().some((use) => body.edges[use.edge]!.seam)
  if (closed || points.length === 0) return [0, 2 * Math.PI]
  const x = squareTo(line.direction)
  const y = cross(line.direction, x)
  const angles = points
    .filter((p) => offLine(p, line) > SAME)
    .map((p) => {
      const d = sub(p, line.point)
      return Math.atan2(dot(d, y), dot(d, x))
    })
    .sort((a, b) => a - b)
  let [gap, start] = [0, 0]
  angles.forEach((angle, i) => {
    const next = i + 1 < angles.length ? angles[i + 1]! : angles[0]! + 2 * Math.PI
    if (next - angle > gap) [gap, start] = [next - angle, next]
  })
  return gap < Math.PI / 7 ? [0, 2 * Math.PI] : [start, 2 * Math.PI - gap]
}

function goTogether(a: Draft, b: Draft): boolean {
  if (a.kind !== b.kind || a.inside !== b.inside || !sameLine(a.line, b.line)) return false
  const [s, t] = [a.surface, b.surface]
  if (s.kind === 'cylinder' && t.kind === 'cylinder') {
    if (Math.abs(s.r - t.r) > SAME) return false
  } else if (s.kind === 'cone' && t.kind === 'cone') {
    if (Math.abs(s.halfAngle - t.halfAngle) > 1e-6) return false
    if (Math.abs(radiusAt(s, a.line, b.from) - b.radii[0]) > SAME) return false
  } else if (s.kind === 'torus' && t.kind === 'torus') {
    if (Math.abs(s.major - t.major) > SAME || Math.abs(s.minor - t.minor) > SAME) return false
  } else if (s.kind === 'sphere' && t.kind === 'sphere') {
    if (Math.abs(s.r - t.r) > SAME) return false
  } else return false
  return b.from <= a.to + SAME && b.to >= a.from - SAME
}

function join(home: Draft, other: Draft): void {
  home.faces.push(...other.faces)
  home.arcs.push(...other.arcs)
  if (other.from < home.from) [home.from, home.radii[0]] = [other.from, other.radii[0]]
  if (other.to > home.to) [home.to, home.radii[1]] = [other.to, other.radii[1]]
}

/** A face in the middle may bring two walls together that did not touch when they were met. */
function joined(drafts: readonly Draft[]): Draft[] {
  const out: Draft[] = []
  const byCell = new Map<number, Draft[]>()
  for (const draft of drafts) {
    const cell = cellOf(draft.line)
    const near = [cell - 1, cell, cell + 1].flatMap((c) => byCell.get(c) ?? [])
    const home = near.find((g) => goTogether(g, draft))
    if (home) join(home, draft)
    else {
      out.push(draft)
      byCell.set(cell, [...(byCell.get(cell) ?? []), draft])
    }
  }
  return out
}

/** Angle that arcs cover together. */
function covered(arcs: Draft['arcs']): number {
  const turn = 2 * Math.PI
  const pieces = arcs.flatMap(([from, sweep]): [number, number][] => {
    if (sweep >= turn - 1e-9) return [[0, turn]]
    const a = ((from % turn) + turn) % turn
    return a + sweep > turn
      ? [
          [a, turn],
          [0, a + sweep - turn],
        ]
      : [[a, a + sweep]]
  })
  pieces.sort((p, q) => p[0] - q[0])
  let [total, reached] = [0, 0]
  for (const [a, b] of pieces) {
    total += Math.max(0, b - Math.max(a, reached))
    reached = Math.max(reached, b)
  }
  return total
}
