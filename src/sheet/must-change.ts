import type { Mark } from '../brief/mark.ts'

/** Whether a checker would send it back: a sheet with such a mark is not for manufacture. */
export const mustChange = (marks: readonly Mark[]): boolean => marks.some((mark) => mark.weight === 'must change')
