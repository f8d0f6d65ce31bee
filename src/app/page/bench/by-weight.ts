import type { Mark } from '../../../brief/mark.ts'

const WEIGHTS: readonly Mark['weight'][] = ['must change', 'look again', 'remark']

/** What must change first; those of one weight in the order of the brief. */
export const byWeight = (marks: readonly Mark[]): Mark[] =>
  WEIGHTS.flatMap((weight) => marks.filter((m) => m.weight === weight))

/** One empty list for all, so that nothing takes it for news. */
export const NO_MARKS: readonly Mark[] = []
