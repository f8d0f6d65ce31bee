import type { Side, ViewName } from './side.ts'
import type { Num, Size } from './size.ts'
import type { Span } from './span.ts'
import type { Name, Words } from './words.ts'

/** `views front, top; section A-A; pictorial`, or absent: the program proposes. */
export type ViewRequest =
  | { readonly kind: 'view'; readonly side: Side; readonly span: Span }
  | {
      readonly kind: 'section'
      readonly letter: string
      readonly extent: 'full' | 'half'
      /** Cutting plane's place where not through the middle: `through holes`, `through bore`. */
      readonly through?: Name
      /** The view that the section stands in for; absent: chosen. */
      readonly as?: Side
      readonly span: Span
    }
  | { readonly kind: 'pictorial' | 'no pictorial'; readonly span: Span }

/** `show overall (120)`: a reference size asked for. */
export interface ShowRequest {
  readonly what: Name
  readonly size?: Size
  readonly span: Span
}

/** `place 2.50 in top view row 2`, `place section A-A 0 across, -10 up`: the drafter's override of a size's or a view's place. */
export type PlaceRequest =
  | {
      readonly kind: 'size'
      readonly size: Words
      readonly view?: ViewName
      readonly row?: Num
      readonly side?: Side
      readonly span: Span
    }
  | { readonly kind: 'view'; readonly view: ViewName; readonly across: Num; readonly up: Num; readonly span: Span }

/** `sizes baseline`, `sizes chain`, `sizes ordinate`, `hole table`. */
export interface SchemeRequest {
  readonly scheme: 'baseline' | 'chain' | 'ordinate' | 'hole table'
  /** The feature statement it is for; absent: the whole part. */
  readonly of?: Name
  readonly span: Span
}

/** `accept hole-near-edge at hole 1 with 1.2 mm because …`: a mark that stands as it is, and why. */
export interface Acceptance {
  /** The mark's rule. */
  readonly rule: Words
  /** The feature or statement that it is at; absent: wherever the rule speaks. */
  readonly at?: Words
  /** The figures it was accepted with, as typed; with others the mark stands again. */
  readonly numbers?: readonly string[]
  readonly because: Words
  readonly span: Span
}
