import type { Source, ViewLine } from '../view.ts'
import { isShownFromBehind } from './from-behind.ts'
import type { Showing, ShownView } from './showing.ts'
import { roundsToldBySection } from './told-rounds.ts'
import { worksToldBySection } from './told-works.ts'

/**
 * Leaves out of a principal view the hidden lines that add nothing. ISO 128-3 and ASME Y14.3 want hidden lines only
 * where the drawing is not clear without them (from memory); when that is, is common practice, no source. One goes when
 * every edge and face it stands for
 *
 * 1. is round about an axis that lies in the plane of a section which cuts it, or which cuts its like in the same
 *    pattern, and a full circle on the sheet tells where that axis is; or
 * 2. belongs to a hole, slot or pocket whose shape one view shows in full lines and whose depth a section shows;
 *
 * or when
 *
 * 3. the view from the opposite side shows the same faces in full lines in the same place.
 *
 * Everything else stays: without a section, hidden lines are what tells a hole's depth, and that it goes through.
 */
export function withoutNeedlessHidden(view: ShownView, showing: Showing, tolerance: number): ViewLine[] {
  const rounds = roundsToldBySection(view, showing, tolerance)
  const works = worksToldBySection(view, showing)
  const isTold = (source: Source) => rounds(source) || works(source)
  const opposite = showing.principals.find((p) =>
    p.frame.toViewer.every((x, i) => Math.abs(x + view.frame.toViewer[i]!) < 1e-9),
  )
  return view.lines.filter((line) => {
    if (line.kind !== 'hidden' || line.sources.length === 0) return true
    if (line.sources.every(isTold)) return false
    return !(opposite && isShownFromBehind(line, view.frame, opposite, tolerance))
  })
}
