import type { Practice, Projection } from './side.ts'
import type { Num, Unit } from './size.ts'
import type { Span } from './span.ts'
import type { Words } from './words.ts'

/** One class of the title block's general tolerances: `.XX ±.01`, `fractions ±1/64`, `angles ±1/2°`, `ISO 2768-mK`. */
export type GeneralTolerance =
  | { readonly kind: 'decimals'; readonly decimals: number; readonly plusMinus: Num; readonly span: Span }
  | { readonly kind: 'fractions' | 'whole' | 'angles'; readonly plusMinus: Num; readonly span: Span }
  | { readonly kind: 'standard'; readonly text: string; readonly span: Span }

export interface Signature {
  readonly name: Words
  /** As typed; never from the clock. */
  readonly date?: Words
}

export interface Header {
  readonly part?: Words
  readonly number?: Words
  readonly revision?: Words
  readonly units: Unit
  readonly practice: Practice
  readonly projection: Projection
  readonly material?: Words
  readonly general: readonly GeneralTolerance[]
  readonly coating?: Words
  /** General surface texture: `Ra 3.2`, `125 µin`. */
  readonly texture?: Words
  readonly notes: readonly Words[]
  readonly drawn?: Signature
  readonly checked?: Signature
  readonly approved?: Signature
  readonly firm?: Words
  readonly documentType?: Words
  readonly edgeBreak?: Words
  readonly standard?: Words
  /** `sheet A3`, `sheet B`; absent: the program chooses. */
  readonly sheet?: Words
  /** `scale 1:2`; absent: the program chooses. */
  readonly scale?: { readonly paper: number; readonly part: number; readonly span: Span }
  /** Where a decimal comma is asked for on an ISO sheet. */
  readonly decimalSign?: '.' | ','
  /** Where the choices above were stated; absent where they were taken from each other. */
  readonly said?: { readonly units?: Span; readonly practice?: Span; readonly decimal?: Span }
}
