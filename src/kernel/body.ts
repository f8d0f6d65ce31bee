import type { Vec3 } from '../geometry/vec.ts'

/** Position and right-handed axes. */
export interface Axes3 {
  readonly origin: Vec3
  readonly x: Vec3
  readonly y: Vec3
  readonly z: Vec3
}

export type Curve3 =
  | { readonly kind: 'line'; readonly a: Vec3; readonly b: Vec3 }
  /** point(θ) = origin + r (x cos θ + y sin θ), θ from `from` to `from + sweep`. */
  | { readonly kind: 'circle'; readonly axes: Axes3; readonly r: number; readonly from: number; readonly sweep: number }
  | {
      readonly kind: 'ellipse'
      readonly axes: Axes3
      readonly major: number
      readonly minor: number
      readonly from: number
      readonly sweep: number
    }
  | {
      readonly kind: 'spline'
      readonly degree: number
      readonly knots: readonly number[]
      readonly poles: readonly Vec3[]
      readonly weights?: readonly number[]
    }

export type Surface3 =
  /** Normal is axes.z. */
  | { readonly kind: 'plane'; readonly axes: Axes3 }
  | { readonly kind: 'cylinder'; readonly axes: Axes3; readonly r: number }
  /** Radius r at axes.origin, growing by tan(halfAngle) along axes.z. */
  | { readonly kind: 'cone'; readonly axes: Axes3; readonly r: number; readonly halfAngle: number }
  | { readonly kind: 'sphere'; readonly axes: Axes3; readonly r: number }
  | { readonly kind: 'torus'; readonly axes: Axes3; readonly major: number; readonly minor: number }
  | {
      readonly kind: 'spline'
      readonly degreeU: number
      readonly degreeV: number
      readonly knotsU: readonly number[]
      readonly knotsV: readonly number[]
      /** Row after row in U, each of V poles. */
      readonly poles: readonly (readonly Vec3[])[]
      readonly weights?: readonly (readonly number[])[]
    }

/** An edge with the faces on its two sides. Directed along its curve. */
export interface BodyEdge {
  readonly id: number
  readonly curve: Curve3
  /** Face ids; the second is absent on a free border, equal to the first on a seam. */
  readonly faces: readonly [number, number?]
  readonly seam: boolean
  /** Both faces share the tangent plane along the edge: a smooth edge, not drawn. */
  readonly smooth: boolean
  readonly name?: string
}

export interface BodyFace {
  readonly id: number
  readonly surface: Surface3
  /** True when the outward normal is opposite to the surface's own (plane: axes.z; round: away from the axis or centre). */
  readonly reversed: boolean
  /** Loops of edge uses; for each, whether the edge runs along (true) the loop with the material on its left seen from outside. */
  readonly loops: readonly (readonly { readonly edge: number; readonly forward: boolean }[])[]
  /** Name from the brief: `upright front`, `hole 1 wall`. */
  readonly name?: string
  /** Made by a cutting plane: hatched in a section. */
  readonly cut?: boolean
}

/** A solid's boundary as plain numbers in millimetres, read once from the kernel. x right, y to the rear, z up. */
export interface Body {
  readonly faces: readonly BodyFace[]
  readonly edges: readonly BodyEdge[]
  readonly box: { readonly min: Vec3; readonly max: Vec3 }
}
