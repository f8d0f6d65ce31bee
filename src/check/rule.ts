import type { Brief } from '../brief/brief.ts'
import type { Mark, Weight } from '../brief/mark.ts'
import type { Part } from '../part/part.ts'
import type { Sheet } from '../sheet/sheet.ts'
import type { SizeSet } from '../sizes/dimension.ts'
import type { ViewSet } from '../views/view.ts'

/** A finished drawing, as a checker looks at it. */
export interface Subject {
  readonly brief: Brief
  readonly part: Part
  readonly views: ViewSet
  readonly sizes: SizeSet
  readonly sheet: Sheet
}

/** A drawing before it is laid out on a sheet. */
export type Sized = Omit<Subject, 'sheet'>

/** A drawing as far as it could be derived. */
export type PartialSubject = Pick<Subject, 'brief'> & Partial<Subject>

/** One thing that a rule found: a mark without the rule's own name and source. Weight: the rule's, where not said. */
export type Finding = Omit<Mark, 'rule' | 'weight' | 'source'> & { readonly weight?: Weight }

interface About {
  /** Lower case with hyphens, unique, and what `accept` names. */
  readonly name: string
  readonly weight: Weight
  /** Standard clause, handbook, or `common practice, no source`. */
  readonly source: string
  /** What the rule asks and why, in a drafter's words: one or two sentences. */
  readonly about: string
}

/** A rule that needs the brief's own statements only; it is asked even where nothing could be built. */
export interface BriefRule extends About {
  readonly reads: 'brief'
  check(subject: Pick<Subject, 'brief'>): readonly Finding[]
}

/** A rule that looks at the drawn part. Pure. */
export interface DrawingRule extends About {
  readonly reads: 'drawing'
  check(subject: Sized): readonly Finding[]
}

/** A rule that looks at the finished sheet. It may ask for another look, but not send back: the stamp is printed by then. */
export interface SheetRule extends About {
  readonly reads: 'sheet'
  readonly weight: Exclude<Weight, 'must change'>
  check(subject: Subject): readonly Finding[]
}

export type Rule = BriefRule | DrawingRule | SheetRule
