import { boxOfCurves } from '../geometry/evaluate.ts'
import type { Body } from '../kernel/body.ts'
import { withEnds } from './conventions/line-ends.ts'
import { byPrecedence } from './conventions/precedence.ts'
import { shownCurves } from './conventions/shown-curves.ts'
import { isBlank, theoreticalIntersections } from './conventions/theoretical-intersections.ts'
import { toleranceOf } from './tolerance.ts'
import type { ExactView, View, ViewLine } from './view.ts'

/** The outline of a view by the conventions, before centre and cutting-plane lines. */
export interface Outline {
  readonly lines: readonly ViewLine[]
  readonly box: View['box']
  readonly tolerance: number
}

export function outlineOf(exact: ExactView, body: Body, hidden: boolean): Outline {
  const tolerance = toleranceOf(exact.curves.map((c) => c.curve))
  const shown = byPrecedence(shownCurves(exact, { hidden }), tolerance)
  const box = boxOfCurves(shown.map((l) => l.curve))
  const lines = isBlank(shown, box, tolerance) ? [...shown, ...theoreticalIntersections(body, exact)] : shown
  return { lines, box, tolerance }
}

/**
 * All lines of a view together: each place drawn once by precedence, hidden ends classified. Cutting-plane lines take
 * their place from centre lines but are not handed on: `View.cuttingPlanes` tells them, arrows and letters with them.
 */
export function finished(outline: readonly ViewLine[], added: readonly ViewLine[], tolerance: number): ViewLine[] {
  const once = byPrecedence([...outline, ...added], tolerance)
  return withEnds(
    once.filter((l) => l.kind !== 'cutting plane'),
    tolerance,
  )
}
