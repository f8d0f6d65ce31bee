import type { Brief } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'

/** A brief as far as it became a part: its marks, and what each feature made. */
export interface Made {
  readonly brief: Brief
  readonly marks: readonly Mark[]
  readonly features: readonly { readonly span?: Span; readonly faces: readonly number[] }[]
}

/** How many statements are not drawn as meant: the reader sends them back, or they were to make faces and made none. */
export function notDrawn({ brief, marks, features }: Made): number {
  const must = (mark: Mark) => mark.weight === 'must change' && mark.accepted === undefined
  const starts = statementStarts(brief.text)
  const startOf = (mark: Mark): number | undefined => starts.findLast((at) => mark.span && at <= mark.span.from)
  const made = new Set(features.filter((f) => f.span && f.faces.length > 0).map((f) => f.span!.from))
  const stock = brief.stock?.span.from ?? 0
  const read = brief.marks.filter((m) => m.weight === 'must change').map(startOf)
  const notMade = marks
    .filter(must)
    .map(startOf)
    .filter((at) => at !== undefined && at > stock && !made.has(at))
  return new Set([...read, ...notMade].filter((at) => at !== undefined)).size
}

/** In words; empty where all is drawn. */
export const notDrawnWords = (statements: number): string =>
  statements === 0 ? '' : statements === 1 ? '1 statement not drawn' : `${statements} statements not drawn`

/** Where statements begin: at each line that is neither set in nor empty nor a comment. */
const statementStarts = (text: string): number[] => [...text.matchAll(/^[^\s#]/gm)].map((m) => m.index)
