import type { Side } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import type { Annotation, Sign } from './annotation.ts'

/** Text of a callout. Symbols stand as their Unicode characters (⌀ ⌴ ⌵ ↧ □ ° ±); a stack prints two tolerances one over the other. */
export type CalloutPart = string | { readonly stack: readonly [upper: string, lower: string] }

export interface Callout {
  readonly lines: readonly (readonly CalloutPart[])[]
}

/** What a dimension measures, in its view's coordinates (part mm). Points are where extension lines and leaders reach the feature. */
export type Measured =
  /**
   * Distance from a to b along the unit vector `along`. `open`: a lies on the axis and the size is twice the distance, a
   * diameter of which a half section shows one side.
   */
  | { readonly kind: 'linear'; readonly a: Vec2; readonly b: Vec2; readonly along: Vec2; readonly open?: true }
  /** Running size from the datum point, arrowless. */
  | { readonly kind: 'ordinate'; readonly datum: Vec2; readonly point: Vec2; readonly along: Vec2 }
  | { readonly kind: 'diameter'; readonly centre: Vec2; readonly radius: number }
  /** `from` and `sweep` bound the arc that can be touched. */
  | {
      readonly kind: 'radius'
      readonly centre: Vec2
      readonly radius: number
      readonly from: number
      readonly sweep: number
    }
  | {
      readonly kind: 'angle'
      readonly vertex: Vec2
      readonly from: number
      readonly sweep: number
      readonly reach: readonly [number, number]
      /**
       * The size is the length of the arc of this radius about the vertex, mm; `side` 1: the open is beyond it, -1: within.
       * Absent: it is the angle.
       */
      readonly arc?: { readonly radius: number; readonly side: 1 | -1 }
      /** Nearer to the vertex than this one of the legs is not drawn, mm. Absent: they are drawn from there. */
      readonly legsFrom?: number
    }
  /** A note with a leader to a circle (radial) or to a point of an edge. Any of `targets` will do. */
  | { readonly kind: 'leader'; readonly targets: readonly LeaderTarget[] }

export type LeaderTarget =
  | {
      readonly kind: 'circle'
      readonly centre: Vec2
      readonly radius: number
      readonly from?: number
      readonly sweep?: number
    }
  /** `within`: a place of a face, on which the leader ends with a dot. */
  | { readonly kind: 'point'; readonly at: Vec2; readonly normal?: Vec2; readonly within?: true }

/** A point of the plane, axis or corner that a size reaches, in the part's own coordinates (mm). */
export interface Reach {
  readonly at: Vec3
  /** In a drafter's words: `left face`, `hole 1`. */
  readonly name: string
  /** The reach is the middle between these two places: a slot's or notch's centre line. */
  readonly middle?: readonly [Vec3, Vec3]
  /** Faces it lies on, where known: they decide between two things at one level. */
  readonly faces?: readonly number[]
  /** It is a corner of an outline, and not what else stands level with it. */
  readonly corner?: true
  /** It is where a hole with these faces, `r` mm in radius at its widest, begins. */
  readonly mouth?: { readonly faces: readonly number[]; readonly r: number }
}

/** A distance along a unit vector. */
export interface Stretch {
  readonly direction: Vec3
  readonly from: Reach
  readonly to: Reach
}

/**
 * What a size, or a word beside it, states about the solid. The proof reads these and nothing else of a dimension.
 * Faces are ids of the part's body.
 */
export type Statement =
  /** Distance between two reaches along a unit vector; `also` lists other places said to have the same one (`2X`). */
  | ({ readonly kind: 'distance'; readonly also?: readonly Stretch[] } & Stretch)
  /** Equal steps between neighbours: one value, `members - 2` conditions of equal spacing; `also` lists rows with the same steps. */
  | {
      readonly kind: 'pitch'
      readonly direction: Vec3
      readonly members: readonly Reach[]
      readonly also?: readonly (readonly Reach[])[]
    }
  /** One radius (or diameter) for all these cylinders, spheres or fillets (minor radius of a torus). */
  | { readonly kind: 'radius'; readonly faces: readonly number[] }
  /** `R` without a value: these ends of slots are round from side to side, tangent to both. No number. */
  | { readonly kind: 'full round'; readonly faces: readonly number[] }
  /** Length along the round wall of these faces, between the walls beside it. */
  | { readonly kind: 'arc length'; readonly faces: readonly number[] }
  /**
   * Diameter of the circle in which a cone meets a plane: countersinks, ends of tapers; `like`: it is that of these round
   * faces, whose number it shares.
   */
  | {
      readonly kind: 'cone diameter'
      readonly faces: readonly number[]
      readonly diameter: number
      readonly like?: readonly number[]
    }
  /** Cone angle by a number, or by custom (drill point) without one. */
  | { readonly kind: 'cone angle'; readonly faces: readonly number[]; readonly custom?: true }
  /** Chamfers, planes or cones alike: a leg and an angle, or two legs. */
  | {
      readonly kind: 'chamfer'
      readonly faces: readonly number[]
      readonly by: 'leg and angle' | 'two legs'
      readonly leg: number
    }
  /** Two sloping faces lean alike to the direction, as the sides of a vee said to be centred. No number. */
  | { readonly kind: 'equal slopes'; readonly faces: readonly [number, number]; readonly direction: Vec3 }
  /** Flats given across two of them, by those words: all as far from the axis, evenly turned about it. No number. */
  | { readonly kind: 'flats alike'; readonly faces: readonly number[]; readonly axis: Vec3; readonly at: Vec3 }
  /** Holes round an axis, by `equally spaced`: all square to it at one place along it, evenly turned from the first. No number. */
  | {
      readonly kind: 'ring'
      readonly axis: Vec3
      readonly at: Vec3
      readonly members: readonly { readonly faces: readonly number[]; readonly outward: Vec3 }[]
    }
  /** Angle between two plane faces; `also` lists other pairs said to have the same one (`2X`). */
  | {
      readonly kind: 'angle'
      readonly faces: readonly [number, number]
      readonly also?: readonly (readonly [number, number])[]
    }
  /** Axes at one distance from a centre, by the circle's diameter. */
  | { readonly kind: 'bolt circle'; readonly centre: Vec3; readonly axis: Vec3; readonly members: readonly Vec3[] }
  /** Axes evenly spread about a centre, said in words or plain from the drawing. No number. */
  | { readonly kind: 'equally spaced'; readonly centre: Vec3; readonly axis: Vec3; readonly members: readonly Vec3[] }
  /** Angle of one axis of a bolt circle about its centre. One that stands on a centre line needs none. */
  | { readonly kind: 'polar'; readonly centre: Vec3; readonly axis: Vec3; readonly member: Vec3 }
  /** Axes of two features stand in line where one size is shown for both. No number. */
  | { readonly kind: 'aligned'; readonly direction: Vec3; readonly reaches: readonly [Reach, Reach] }
  /** `centred`, said on the sheet in words: the first and last reach stand evenly between the two others. No number. */
  | {
      readonly kind: 'centred'
      readonly direction: Vec3
      readonly first: Reach
      readonly last: Reach
      readonly between: readonly [Reach, Reach]
    }

/** One size as it will stand on the sheet, not yet placed. */
export interface Dimension {
  /** Stable between edits of other statements. */
  readonly id: string
  /** View it stands in, and others that would serve, best first. */
  readonly view: string
  readonly measured: Measured
  readonly callout: Callout
  /** mm or degrees. */
  readonly value: number
  readonly tolerance?: {
    readonly upper: number
    readonly lower: number
    readonly from: 'brief' | 'general' | 'fit' | 'stock' | 'none'
  }
  readonly reference: boolean
  readonly basic: boolean
  /** Direction in words for reports: `left-right`, `up-down`, `front-rear`, `diameter`, `radius`, `angle`. */
  readonly direction: string
  /** What the size states about the solid; the proof's only reading of it. Absent: it states nothing the proof can use. */
  readonly states?: readonly Statement[]
  /** Derived from the solid because the shape needs it; no number of the brief stands behind it. */
  readonly derived?: boolean
  /** `?` in the brief: still to be measured. */
  readonly unknown?: boolean
  /** Feature the size belongs to; sizes of one feature stand together. */
  readonly feature?: string
  /** Sizes of one chain, baseline set or ordinate set share a group. */
  readonly group?: { readonly id: string; readonly scheme: 'baseline' | 'chain' | 'ordinate' }
  readonly span?: Span
  /** Other places of the brief that say the same and show as this one size (`2X ⌀`): a change is meant for all of them. */
  readonly alike?: readonly Span[]
  /** Tolerance frames and datum letter of the feature whose size this is. Absent: none. */
  readonly signs?: readonly Sign[]
  /** Drafter's override. */
  readonly wish?: { readonly side?: Side; readonly row?: number }
}

/** Complete and not over-stated, with the count behind the statement. */
export interface Proof {
  readonly complete: boolean
  readonly sizes: number
  readonly implied: number
  readonly freedoms: number
  /** The implied conditions by kind, for an open count. */
  readonly conditions?: readonly { readonly kind: string; readonly count: number }[]
  /** Features that share one size because they are drawn in line: `hole A level with slot B, left-right`. */
  readonly levels?: readonly string[]
  /** Elements left free, in words, with the view and the brief line that would mend it. */
  readonly missing: readonly {
    readonly text: string
    readonly view?: string
    readonly span?: Span
    readonly write?: string
    /** Feature or datum the free element belongs to. */
    readonly element?: string
  }[]
  readonly repeated: readonly {
    readonly text: string
    readonly dimensions: readonly string[]
    readonly span?: Span
    /** The size says nothing, because what it reaches is not on the part. */
    readonly astray?: true
  }[]
  /** `complete: 23 sizes and 9 implied conditions fix 32 freedoms`. */
  readonly sentence: string
}

export interface HoleTable {
  readonly view: string
  readonly origin: Vec2
  /** Which way X and Y grow in the view; absent: to the right and up. */
  readonly ways?: readonly [1 | -1, 1 | -1]
  readonly rows: readonly {
    readonly tag: string
    readonly x: string
    readonly y: string
    readonly size: Callout
    readonly at: Vec2
    readonly feature: string
    /** What the row states about the solid, for the proof. */
    readonly states?: readonly Statement[]
    readonly span?: Span
  }[]
}

/** A size that stands in a note beside its view instead of at a dimension line: `10 THK`. */
export interface NotedSize {
  readonly text: string
  /** mm */
  readonly value: number
  readonly tolerance: NonNullable<Dimension['tolerance']>
  readonly direction: string
  readonly view: string
  readonly span: Span
}

export interface SizeSet {
  readonly dimensions: readonly Dimension[]
  readonly tables: readonly HoleTable[]
  /** Frames, datum letters and textures at surfaces. Absent: none. */
  readonly annotations?: readonly Annotation[]
  /** Conditions to print as notes: `ALL FILLETS R3`. */
  readonly notes: readonly string[]
  /** Sizes that stand in a note. Absent: none. */
  readonly noted?: readonly NotedSize[]
  readonly proof: Proof
  readonly marks: readonly Mark[]
}
