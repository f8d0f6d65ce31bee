import type { Mark } from '../../../brief/mark.ts'

const WEIGHTS: readonly Mark['weight'][] = ['must change', 'look again', 'remark']

/** What must change first, what is accepted last; those of one weight in the order of the brief. */
export const byWeight = <M extends Mark>(marks: readonly M[]): M[] => [
  ...WEIGHTS.flatMap((weight) => marks.filter((m) => m.weight === weight && m.accepted === undefined)),
  ...marks.filter((m) => m.accepted !== undefined),
]

/** One empty list for all, so that nothing takes it for news. */
export const NO_MARKS: readonly Mark[] = []
