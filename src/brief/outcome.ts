import type { Span } from './span.ts'

/** What is wrong with something that was written, and what to write instead. */
export interface Problem {
  /** One sentence, as a drafter would say it. */
  readonly text: string
  /** What may stand here. */
  readonly expected?: string
  /** The nearest right spelling or value, ready to be written in place of `span`. */
  readonly instead?: string
  /** Place inside the text that was read; absent when the whole text is meant. */
  readonly span?: Span
}

/** A value, or the reason why there is none. Nothing in this room throws on what a user wrote. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem }

export function good<T>(value: T): Outcome<T> {
  return { ok: true, value }
}

export function bad(problem: Problem): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem }
}
