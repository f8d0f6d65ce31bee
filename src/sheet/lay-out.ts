import type { Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Part } from '../part/part.ts'
import type { SizeSet } from '../sizes/dimension.ts'
import type { ViewSet } from '../views/view.ts'
import type { SheetChoice } from './arrange/choose-sheet.ts'
import { choicesFor, type Desk } from './choices.ts'
import { type Drawn, draw } from './draw-sheet.ts'
import { mustChange } from './must-change.ts'
import { possible } from './requested-format.ts'
import type { Sheet } from './sheet.ts'
import { signMarks } from './sign-marks.ts'
import { untoleranced } from './untoleranced.ts'

/**
 * Lays a part out on a sheet: format and scale chosen (or as the brief states), views aligned by projection, sizes
 * placed, border, title block and notes drawn. A sheet of which any phase says that something must change, that the
 * checker sends back, or on which no tolerance is stated, is stamped preliminary. Pure; the same input gives the same
 * sheet.
 */
export function layOut(
  part: Part,
  views: ViewSet,
  sizes: SizeSet | undefined,
  sentBack = false,
): { readonly sheet: Sheet; readonly marks: readonly Mark[] } {
  const { brief } = part
  const { header } = brief
  const { formats, scales, marks: requestMarks } = possible(header)
  const unproven = !sizes || sizes.dimensions.length === 0 || !sizes.proof.complete || untoleranced(header, sizes)
  const own = [...requestMarks, ...signMarks(header)]
  const earlier = [...brief.marks, ...part.marks, ...(views.marks ?? []), ...(sizes?.marks ?? []), ...own]
  let desk: Desk = {
    part,
    views,
    sizes,
    header,
    brief,
    preliminary: unproven,
    unsound: sentBack || mustChange(earlier),
  }
  let { choices, marks: choiceMarks } = choicesFor(desk, formats, scales)
  if (!desk.preliminary && mustChange(choiceMarks)) {
    desk = { ...desk, preliminary: true }
    ;({ choices, marks: choiceMarks } = choicesFor(desk, formats, scales))
  }
  let best = cheapest(desk, choices)
  // So full that no corner is left for the stamp: laid out anew with room kept for it, before the sizes take it.
  if (!best.honest && !desk.preliminary) {
    const kept = { ...desk, preliminary: true }
    const again = cheapest(kept, choicesFor(kept, formats, scales).choices)
    if (again.honest) best = again
  }
  const { sheet, marks } = best
  return {
    sheet,
    marks: [...own, ...choiceMarks.map((mark) => instead(mark, sheet)), ...marks, ...(best.honest ? [] : [STAMPLESS])],
  }
}

function cheapest(desk: Desk, choices: Iterable<SheetChoice>): Drawn {
  let best: Drawn | undefined
  const tried: string[] = []
  const wanting = (drawn: Drawn) => drawn.left + drawn.broken + (drawn.honest ? 0 : 1)
  for (const choice of choices) {
    const drawn = draw(desk, choice)
    tried.push(`${choice.format.name} ${choice.scaleText}`)
    if (!best || wanting(drawn) < wanting(best)) best = drawn
    if (wanting(drawn) === 0) break
  }
  return { ...best!, marks: best!.marks.map((mark) => told(mark, tried, desk.header)) }
}

/** Of a sheet or scale that could not be kept: what was taken instead. */
function instead(mark: Mark, { format, scale }: Sheet): Mark {
  return mark.span ? { ...mark, text: `${mark.text} Sheet ${format} at ${scale} was taken.` } : mark
}

/** Of a size left off: on what sheets and scales it was tried, and what the brief itself stands in the way of. */
function told(mark: Mark, tried: readonly string[], { sheet, scale }: Header): Mark {
  if (mark.rule !== 'no-room-for-size') return mark
  const stated = [...(sheet ? ['sheet'] : []), ...(scale ? ['scale'] : [])]
  const other = [...(scale ? ['another scale'] : []), ...(sheet ? ['a larger sheet'] : [])].join(' or ')
  return {
    ...mark,
    text: `${mark.text} Tried: ${tried.join(', ')}${stated.length > 0 ? `, by the brief’s ${stated.join(' and ')}` : ''}.`,
    expected: stated.length > 0 ? `${mark.expected}; or ${other}` : mark.expected!,
  }
}

const STAMPLESS: Mark = {
  rule: 'stamp-left-out',
  weight: 'must change',
  text: 'The sheet is preliminary, and too full to say so: there is no room for the stamp.',
  expected: 'a larger sheet or a smaller scale',
  source: 'common practice, no source',
}
