import type { Span } from './span.ts'

/** How heavily a mark weighs: red pencil, a second look, or a remark. */
export type Weight = 'must change' | 'look again' | 'remark'

/** A change of the brief's text that would answer a mark. */
export interface Mend {
  /** What the mend does, as a drafter would say it. */
  readonly label: string
  readonly span: Span
  /** Text that replaces `span`. */
  readonly text: string
}

/** Something a checker would pencil on the sheet: a place, a sentence, the rule behind it and its source. */
export interface Mark {
  /** Rule name, lower case with hyphens: `hole-off-part`, `unknown-word`. */
  readonly rule: string
  readonly weight: Weight
  readonly text: string
  /** Place in the brief; absent when the mark is about the whole part. */
  readonly span?: Span
  /** What was expected at `span`, and what to write instead. */
  readonly expected?: string
  readonly mends?: readonly Mend[]
  /** Standard clause, handbook, or `common practice, no source`. */
  readonly source?: string
  /** Id of the feature it is about, for its place on the sheet. */
  readonly feature?: string
  /** The figures that it stands on, as text: an acceptance holds while they stay. Absent: the figures at `span`. */
  readonly numbers?: readonly string[]
  /** Why it was accepted as it is; such a mark is a remark. */
  readonly accepted?: string
}
