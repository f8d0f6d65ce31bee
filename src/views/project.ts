import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { dot } from '../geometry/vec3.ts'
import type { Curve3 } from '../kernel/body.ts'
import type { Frame } from './view.ts'

/** The view's coordinates of a point of the part. */
export const projectPoint = (p: Vec3, frame: Frame): Vec2 => [dot(p, frame.right), dot(p, frame.up)]

/** Ratio of half axes below which an ellipse is a line seen edge-on, and within which of 1 it is a circle. */
const FLAT = 1e-9

/**
 * The curve as seen in the view: circles become arcs, ellipses or, edge-on, lines. Undefined where it is seen end-on as
 * a point. An arc seen edge-on gives the line it covers, once.
 */
export function projectCurve(curve: Curve3, frame: Frame): Curve2 | undefined {
  switch (curve.kind) {
    case 'line': {
      const a = projectPoint(curve.a, frame)
      const b = projectPoint(curve.b, frame)
      const size = Math.hypot(curve.a[0] - curve.b[0], curve.a[1] - curve.b[1], curve.a[2] - curve.b[2])
      return Math.hypot(a[0] - b[0], a[1] - b[1]) <= FLAT * size ? undefined : { kind: 'line', a, b }
    }
    case 'circle':
    case 'ellipse': {
      const [p, q] = curve.kind === 'circle' ? [curve.r, curve.r] : [curve.major, curve.minor]
      const x = projectPoint(curve.axes.x, frame)
      const y = projectPoint(curve.axes.y, frame)
      return swept(
        projectPoint(curve.axes.origin, frame),
        [p * x[0], p * x[1]],
        [q * y[0], q * y[1]],
        curve.from,
        curve.sweep,
      )
    }
    case 'spline':
      return {
        kind: 'spline',
        degree: curve.degree,
        knots: curve.knots,
        poles: curve.poles.map((p) => projectPoint(p, frame)),
        ...(curve.weights ? { weights: curve.weights } : {}),
      }
  }
}

/** c + u cos θ + v sin θ brought to its principal axes (Rytz's problem). */
function swept(c: Vec2, u: Vec2, v: Vec2, from: number, sweep: number): Curve2 | undefined {
  let turn = 0.5 * Math.atan2(2 * (u[0] * v[0] + u[1] * v[1]), u[0] ** 2 + u[1] ** 2 - v[0] ** 2 - v[1] ** 2)
  // Equal conjugate half axes square to each other: already principal, and atan2(0, 0) says nothing.
  if (!Number.isFinite(turn)) turn = 0
  const at = (a: number): Vec2 => [u[0] * Math.cos(a) + v[0] * Math.sin(a), u[1] * Math.cos(a) + v[1] * Math.sin(a)]
  const major = at(turn)
  const minor = at(turn + Math.PI / 2)
  const square = major[0] ** 2 + major[1] ** 2
  if (square === 0) return undefined
  const ratio = (minor[1] * major[0] - minor[0] * major[1]) / square
  if (Math.abs(ratio) <= FLAT) return edgeOn(c, major, from - turn, sweep)
  if (Math.abs(Math.abs(ratio) - 1) <= FLAT) {
    const way = Math.sign(ratio)
    // Angles as they are where the axes allow it, so that a whole circle keeps its start.
    return {
      kind: 'arc',
      c,
      r: Math.sqrt(square),
      from: Math.atan2(major[1], major[0]) + way * (from - turn),
      sweep: way * sweep,
    }
  }
  return { kind: 'ellipse', c, major, ratio, from: from - turn, sweep }
}

function edgeOn(c: Vec2, major: Vec2, from: number, sweep: number): Curve2 {
  const passes = (angle: number) => {
    const d = (angle - from) * Math.sign(sweep)
    return d - Math.floor(d / (2 * Math.PI)) * 2 * Math.PI <= Math.abs(sweep)
  }
  const ends = [Math.cos(from), Math.cos(from + sweep)]
  const lo = passes(Math.PI) ? -1 : Math.min(...ends)
  const hi = passes(0) ? 1 : Math.max(...ends)
  const at = (k: number): Vec2 => [c[0] + k * major[0], c[1] + k * major[1]]
  return { kind: 'line', a: at(lo), b: at(hi) }
}
