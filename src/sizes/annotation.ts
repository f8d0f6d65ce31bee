import type { Lay } from '../brief/geometric.ts'
import type { Span } from '../brief/span.ts'
import type { Vec2 } from '../geometry/vec.ts'

/** One row of a tolerance frame: the characteristic's symbol, where the row has its own, and the compartments after it. */
export interface FrameRowCells {
  readonly symbol?: string
  readonly cells: readonly string[]
}

/** What stands at a feature beside its sizes. */
export type Sign =
  | {
      readonly kind: 'frame'
      /** Stable between edits of other statements. */
      readonly id: string
      /** A first row's symbol that the rows below lack stands for all of them. */
      readonly rows: readonly FrameRowCells[]
      readonly allAround: boolean
      readonly span: Span
    }
  /** Item number of a part in an assembly's parts list. */
  | { readonly kind: 'item'; readonly id: string; readonly number: string; readonly span: Span }
  | { readonly kind: 'datum'; readonly id: string; readonly letter: string; readonly span: Span }
  | {
      readonly kind: 'texture'
      readonly id: string
      /** `Ra 0.8`, digits as the sheet writes them. */
      readonly value: string
      readonly removal: 'any' | 'required' | 'prohibited'
      readonly lay?: Lay
      readonly process?: string
      readonly span: Span
    }

/** Where in a view a surface shows, part mm: a straight line with the direction out of the material, or a circle. */
export type SurfacePlace =
  | { readonly kind: 'line'; readonly a: Vec2; readonly b: Vec2; readonly out: Vec2 }
  | { readonly kind: 'circle'; readonly centre: Vec2; readonly radius: number }

/** Signs of one surface, together, at any of its places in a view. Signs of a feature of size stand with its size instead. */
export interface Annotation {
  readonly id: string
  readonly view: string
  readonly signs: readonly Sign[]
  readonly places: readonly SurfacePlace[]
  /** `8X`: the signs hold for so many places of the feature. Absent: for the one. */
  readonly count?: string
  readonly feature?: string
  readonly span: Span
}
