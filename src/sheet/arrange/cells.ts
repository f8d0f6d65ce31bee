import type { Projection, Side } from '../../brief/brief.ts'
import type { View } from '../../views/view.ts'

/** Place of a view in the grid of projection: columns to the right, rows upward, the front view at (0, 0). */
export interface Cell {
  readonly view: View
  readonly column: number
  readonly row: number
}

/** ISO 5456-2 §5 and ASME Y14.3: where the view of each side stands about the front view. */
const thirdAngle: Readonly<Record<Side, readonly [number, number]>> = {
  front: [0, 0],
  top: [0, 1],
  bottom: [0, -1],
  right: [1, 0],
  left: [-1, 0],
  rear: [2, 0],
}
const firstAngle: Readonly<Record<Side, readonly [number, number]>> = {
  front: [0, 0],
  top: [0, -1],
  bottom: [0, 1],
  right: [-1, 0],
  left: [1, 0],
  rear: [2, 0],
}

/**
 * Views in their projected places; the pictorial is left out. A view whose place is taken (a section beside the view
 * of the same side) moves on to the next free place to the right. Views of one column share their horizontal axis,
 * views of one row their vertical one.
 */
export function cellsOf(views: readonly View[], projection: Projection): Cell[] {
  const places = projection === 'first angle' ? firstAngle : thirdAngle
  const cells: Cell[] = []
  const taken = (column: number, row: number) => cells.some((c) => c.column === column && c.row === row)
  for (const view of views) {
    if (view.kind === 'pictorial') continue
    let [column, row] = places[view.side ?? 'front']
    const step = column < 0 ? -1 : 1
    while (taken(column, row)) column += step
    cells.push({ view, column, row })
  }
  return cells
}
