import type { Lie } from './side.ts'
import type { Count, Size } from './size.ts'
import type { Span } from './span.ts'
import type { Name } from './words.ts'

/** `lowest 1.38 from bottom`, `centred`, `centres 1.12 from heel`. */
export interface Anchor {
  /**
   * Which of the run's members the distance reaches; `all`: a single row or hole's own centre(s). Of a notch, groove,
   * keyseat or flat the outer words mean its wall or end on that side (`left end .50 from …`), `all` its middle.
   */
  readonly which: 'lowest' | 'highest' | 'leftmost' | 'rightmost' | 'frontmost' | 'rearmost' | 'all'
  /** `left end`, `lower side`: it is the wall of that member that the distance reaches. */
  readonly wall?: { readonly word: string; readonly span: Span }
  readonly distance: Size
  readonly from: Name
}

/** Members along one direction of the face. */
export interface Run {
  /** `2 across`, `3 up`; 1 when not said. */
  readonly count: Count
  /** As written. Across is left-right (front-rear on left/right faces); up is up-down (front-rear on top/bottom faces). */
  readonly way?: 'across' | 'up'
  /** `1.250 apart`: between neighbours. */
  readonly pitch?: Size
  readonly anchor:
    | { readonly kind: 'centred'; readonly span: Span }
    | ({ readonly kind: 'from'; readonly span: Span } & Anchor)
  readonly span: Span
}

export type Placement =
  /** One, row or grid: one or two runs. */
  | {
      readonly kind: 'runs'
      readonly runs: readonly Run[]
      /** `equally spaced`, of members round a turned surface: the first is placed, the others stand about the axis. */
      readonly around?: { readonly span: Span }
      readonly span: Span
    }
  /** `on ⌀100 bolt circle, equal, one at 12 o'clock`. */
  | {
      readonly kind: 'bolt circle'
      readonly diameter: Size
      /** First hole, counter-clockwise from 3 o'clock as seen facing the worked face; from `12 o'clock`, `first at 30°`, `astride`. */
      readonly first: { readonly degrees: number; readonly text: string; readonly span: Span } | undefined
      /** Centre other than the face's own axis. */
      readonly about?: Name
      readonly span: Span
    }
  /** `at 10, 20; 40, 20 from left, bottom`: list of points from two faces. */
  | {
      readonly kind: 'points'
      readonly points: readonly { readonly a: Size; readonly b: Size; readonly span: Span }[]
      readonly fromA: Name
      readonly fromB: Name
      readonly span: Span
    }
  /** On the axis of the face or of another feature. */
  | { readonly kind: 'axis'; readonly of?: Name; readonly span: Span }

/**
 * `mirrored left-right`: the same again on the other side of the part's middle. The feature's count is of all that
 * are made, so the placement holds half of it.
 */
export interface Mirror {
  readonly across: Lie
  readonly span: Span
}
