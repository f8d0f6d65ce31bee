import type { Vec2 } from './vec.ts'

/** Angles in radians, counter-clockwise positive. All curves are parametrised over t in [0, 1]. */
export interface Line2 {
  readonly kind: 'line'
  readonly a: Vec2
  readonly b: Vec2
}

/** Circular arc; a full circle has |sweep| = 2π. */
export interface Arc2 {
  readonly kind: 'arc'
  readonly c: Vec2
  readonly r: number
  readonly from: number
  readonly sweep: number
}

/** Elliptical arc: point(θ) = c + major·cos θ + minor·sin θ, minor = perpendicular of major (ccw) × ratio. */
export interface Ellipse2 {
  readonly kind: 'ellipse'
  readonly c: Vec2
  /** Half the major axis as a vector. */
  readonly major: Vec2
  /** Minor to major half axis, in (0, 1]; negative when the minor axis lies clockwise of the major. */
  readonly ratio: number
  readonly from: number
  readonly sweep: number
}

/** Rational B-spline, clamped; `weights` absent means all 1. */
export interface Spline2 {
  readonly kind: 'spline'
  readonly degree: number
  readonly knots: readonly number[]
  readonly poles: readonly Vec2[]
  readonly weights?: readonly number[]
}

/** An exact plane curve. Never a polyline. */
export type Curve2 = Line2 | Arc2 | Ellipse2 | Spline2
