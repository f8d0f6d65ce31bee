/** A stretch of the brief's text, in UTF-16 code units; `to` is exclusive. */
export interface Span {
  readonly from: number
  readonly to: number
}
