import type { Side } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import type { Vec2 } from '../geometry/vec.ts'

/** Text of a callout. Symbols stand as their Unicode characters (⌀ ⌴ ⌵ ↧ □ ° ±); a stack prints two tolerances one over the other. */
export type CalloutPart = string | { readonly stack: readonly [upper: string, lower: string] }

export interface Callout {
  readonly lines: readonly (readonly CalloutPart[])[]
}

/** What a dimension measures, in its view's coordinates (part mm). Points are where extension lines and leaders reach the feature. */
export type Measured =
  /** Distance from a to b along the unit vector `along`. */
  | { readonly kind: 'linear'; readonly a: Vec2; readonly b: Vec2; readonly along: Vec2 }
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
  | { readonly kind: 'point'; readonly at: Vec2; readonly normal?: Vec2 }

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
  /** Feature the size belongs to; sizes of one feature stand together. */
  readonly feature?: string
  /** Sizes of one chain, baseline set or ordinate set share a group. */
  readonly group?: { readonly id: string; readonly scheme: 'baseline' | 'chain' | 'ordinate' }
  readonly span?: Span
  /** Drafter's override. */
  readonly wish?: { readonly side?: Side; readonly row?: number }
}

/** Complete and not over-stated, with the count behind the statement. */
export interface Proof {
  readonly complete: boolean
  readonly sizes: number
  readonly implied: number
  readonly freedoms: number
  /** Elements left free, in words, with the view and the brief line that would mend it. */
  readonly missing: readonly {
    readonly text: string
    readonly view?: string
    readonly span?: Span
    readonly write?: string
  }[]
  readonly repeated: readonly { readonly text: string; readonly dimensions: readonly string[]; readonly span?: Span }[]
  /** `complete: 23 sizes and 9 implied conditions fix 32 freedoms`. */
  readonly sentence: string
}

export interface HoleTable {
  readonly view: string
  readonly origin: Vec2
  readonly rows: readonly {
    readonly tag: string
    readonly x: string
    readonly y: string
    readonly size: Callout
    readonly at: Vec2
    readonly feature: string
  }[]
}

export interface SizeSet {
  readonly dimensions: readonly Dimension[]
  readonly tables: readonly HoleTable[]
  /** Conditions to print as notes: `ALL FILLETS R3`. */
  readonly notes: readonly string[]
  readonly proof: Proof
  readonly marks: readonly Mark[]
}
