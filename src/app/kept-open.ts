import { withAcceptances } from '../check/acceptances.ts'
import { judged } from './checked.ts'
import type { Drawing } from './compile.ts'
import { notDrawn, notDrawnWords } from './not-drawn.ts'

/** What keeps the files from being finished ones: how much must change and is not drawn; empty where nothing does. */
export function keptOpen(drawing: Drawing): string[] {
  const must = judged(drawing).filter((m) => m.weight === 'must change' && m.accepted === undefined).length
  if (must === 0) return []
  const features = (drawing.part?.features ?? []).map(({ feature, members }) => ({
    ...(feature ? { span: feature.span } : {}),
    faces: members.flatMap((m) => m.faces),
  }))
  const marks = withAcceptances(drawing.brief, drawing.marks)
  const left = notDrawnWords(notDrawn({ brief: drawing.brief, marks, features }))
  return [`${must} ${must === 1 ? 'mark' : 'marks'} must change`, ...(left === '' ? [] : [left])]
}
