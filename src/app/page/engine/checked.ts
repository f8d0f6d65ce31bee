import type { Mark } from '../../../brief/mark.ts'
import { acceptanceOf } from '../../../check/acceptances.ts'
import { checkPrint } from '../../../check/print/check-print.ts'
import type { Sheet } from '../../../sheet/sheet.ts'
import { checked } from '../../checked.ts'
import type { Drawing } from '../../compile.ts'
import { byWeight } from '../bench/by-weight.ts'
import { withBeginning } from './beginnings.ts'
import type { Checked, PageMark } from './messages.ts'
import { REASON } from './reason.ts'

/** The marks of all phases and rules, each with the statement that would accept it; with `print` the check print. */
export function checkedOf(drawing: Drawing, print: boolean): Checked {
  const marks = byWeight(checked(drawing).map((m) => (m.accepted ? m : withBeginning(m, drawing.brief))))
  const early = new Set(drawing.marks.map((m) => `${m.rule} ${m.span?.from}`))
  const sheet = print ? printOf(drawing, marks) : undefined
  return {
    text: drawing.brief.text,
    marks: marks.map((mark): PageMark => {
      const accept = mark.accepted === undefined ? acceptanceOf(mark, drawing.brief, REASON) : undefined
      return {
        ...mark,
        ...(accept ? { accept } : {}),
        ...(early.has(`${mark.rule} ${mark.span?.from}`) ? {} : { checker: true }),
      }
    }),
    ...(sheet ? { print: sheet } : {}),
  }
}

/** The check print, its numbers those of the marks in the margin; undefined where there is no sheet. */
export function printOf(drawing: Drawing, marks: readonly Mark[] = byWeight(checked(drawing))): Sheet | undefined {
  const { brief, part, sheet, sizes } = drawing
  return part && sheet && sizes ? checkPrint({ brief, part, sheet, sizes }, marks) : undefined
}
