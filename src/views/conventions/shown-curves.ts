import type { ExactCurve, ExactView, ViewLine } from '../view.ts'

/** Which truth of the solid a kind of view shows. */
export interface Shown {
  /** Hidden lines are drawn in a plain view, left out of sections and pictorials (ASME Y14.3, ISO 128-3; from memory). */
  readonly hidden: boolean
}

/** Smooth (tangent) edges are not lines of a drawing; the rest become visible or hidden lines. */
export function shownCurves(view: ExactView, shown: Shown): ViewLine[] {
  return view.curves.filter((c) => c.kind !== 'smooth' && (c.visible || shown.hidden)).map(asLine)
}

const asLine = (c: ExactCurve): ViewLine => ({
  curve: c.curve,
  kind: c.visible ? 'visible' : 'hidden',
  sources: c.sources,
})
