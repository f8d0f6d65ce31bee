import type { Mark } from '../brief/mark.ts'
import { withAcceptances } from '../check/acceptances.ts'
import { checkDrawing } from '../check/check-drawing.ts'
import { type Drawing, inOrder } from './compile.ts'

/** Marks of all phases and of the checker's rules, what the brief accepts taken into account, in the order of the text. */
export function checked(drawing: Drawing): Mark[] {
  return inOrder(withAcceptances(drawing.brief, [...drawing.marks, ...checkDrawing(drawing)]))
}
