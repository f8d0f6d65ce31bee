import { lengthOf } from '../geometry/evaluate.ts'
import type { LineKind, View, ViewSet } from './view.ts'

export interface LineCount {
  readonly count: number
  /** mm on the part, overruns of centre lines not counted. */
  readonly length: number
}

/** What a view holds, for the report. */
export interface ViewDescription {
  readonly id: string
  readonly visible: LineCount
  readonly hidden: LineCount
  readonly centre: LineCount
}

/** Counts and lengths of visible, hidden and centre lines by view. */
export function describeViews(set: ViewSet): ViewDescription[] {
  return set.views.map((view) => ({
    id: view.id,
    visible: counted(view, 'visible'),
    hidden: counted(view, 'hidden'),
    centre: counted(view, 'centre'),
  }))
}

function counted(view: View, kind: LineKind): LineCount {
  const lines = view.lines.filter((l) => l.kind === kind && !l.covered)
  return { count: lines.length, length: lines.reduce((sum, l) => sum + lengthOf(l.curve), 0) }
}
