import type { Mark } from '../brief/mark.ts'
import { withAcceptances } from '../check/acceptances.ts'
import { checkDrawing, checkSheet } from '../check/check-drawing.ts'
import { once } from '../check/measure/once.ts'
import { rules } from '../check/rules/rules.ts'
import { type Drawing, inOrder } from './compile.ts'

/** Marks of all phases and of the checker's rules, what the brief accepts taken into account, in the order of the text. */
export function checked(drawing: Drawing): Mark[] {
  const { brief, marks, found } = drawing
  const all = found ? [...found, ...checkSheet(drawing)] : checkDrawing(drawing)
  // Said once for the whole sheet, it need not be said at every size.
  const once = all.some((m) => m.rule === 'general-tolerance-missing')
  const early = once ? marks.filter((m) => m.rule !== 'no-tolerance-class') : marks
  return inOrder(withAcceptances(brief, [...early, ...all]))
}

const ruleNames: ReadonlySet<string> = new Set(rules.map((r) => r.name))

/**
 * What goes with a drawing as it is made: every mark that must change or wants another look, the accepted ones with
 * their reasons, and the phases' own remarks. The rules' remarks are for `check`. A solid model, read or not
 * readable, has no brief to be held to.
 */
export const judged = once((drawing: Drawing): readonly Mark[] => {
  if (!drawing.brief.stock && (drawing.part || drawing.brief.text === '')) return drawing.marks
  return checked(drawing).filter((m) => m.weight !== 'remark' || m.accepted !== undefined || !ruleNames.has(m.rule))
})
