import type { Span } from './span.ts'

/** A piece of text with its place. */
export interface Words {
  readonly text: string
  readonly span: Span
}

/** A name of a face, edge, heel, axis or feature, in the drafter's words; part/ resolves it. */
export type Name = Words
