import type { Span } from '../brief/span.ts'
import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { LineKind, Source } from '../views/view.ts'

/** What a stroke is on paper; the writers carry it out as class names. */
export type StrokeKind =
  | LineKind
  | 'dimension'
  | 'extension'
  | 'leader'
  | 'border'
  | 'frame'
  | 'table'
  | 'symbol'
  | 'lettering'

/** Ties an item to the brief and the solid, for picking. */
export interface Tie {
  readonly view?: string
  readonly sources?: readonly Source[]
  readonly features?: readonly string[]
  readonly span?: Span
  /** Id of the dimension the item belongs to. */
  readonly dimension?: string
}

/** A coloured pencil of the check print. Items without one are ink. */
export type Pencil = 'red' | 'blue' | 'yellow'

/** All positions in paper millimetres, origin at the sheet's lower left corner, y up. */
export type SheetItem =
  | {
      readonly item: 'stroke'
      readonly kind: StrokeKind
      readonly curve: Curve2
      /** mm */
      readonly width: number
      /** Alternating on/off lengths in mm that exactly fill the curve, starting with on; absent: unbroken. */
      readonly dashes?: readonly number[]
      readonly tie?: Tie
      readonly pencil?: Pencil
    }
  | {
      readonly item: 'fill'
      readonly kind: 'arrowhead' | 'dot' | 'symbol'
      readonly outline: readonly Curve2[]
      readonly tie?: Tie
      readonly pencil?: Pencil
    }
  | {
      readonly item: 'text'
      readonly role: 'dimension' | 'label' | 'note' | 'title block' | 'zone' | 'stamp' | 'table'
      readonly text: string
      /** Baseline point at `anchor`. */
      readonly at: Vec2
      /** Capital height in mm. */
      readonly height: number
      readonly anchor: 'start' | 'middle' | 'end'
      /** Degrees, counter-clockwise. */
      readonly angle: number
      readonly bold?: boolean
      /** Letters narrowed to this share of their width; absent: 1. */
      readonly stretch?: number
      readonly tie?: Tie
      readonly pencil?: Pencil
    }
  /** Symbols drawn as strokes that stand for text (⌴, ⌵, ↧): `text` is what a search finds; `strokes` are in paper mm. */
  | {
      readonly item: 'glyph'
      readonly text: string
      readonly at: Vec2
      readonly height: number
      readonly angle: number
      readonly strokes: readonly Curve2[]
      readonly width: number
      readonly tie?: Tie
      readonly pencil?: Pencil
    }

export interface PlacedView {
  readonly id: string
  /** Paper point of the view's (0, 0), and the scale paper mm per part mm. */
  readonly origin: Vec2
  readonly scale: number
  /** Bounds of the outline, paper mm. */
  readonly box: { readonly min: Vec2; readonly max: Vec2 }
}

/** A finished sheet: everything a writer needs, in paper millimetres. */
export interface Sheet {
  /** `A3`, `B`. */
  readonly format: string
  readonly width: number
  readonly height: number
  /** As printed: `1:2`, `2:1`. */
  readonly scale: string
  readonly items: readonly SheetItem[]
  readonly views: readonly PlacedView[]
  readonly title: string
  /** Lines for the document's metadata. */
  readonly about: {
    readonly number?: string
    readonly revision?: string
    readonly firm?: string
    readonly author?: string
    readonly date?: string
  }
}
