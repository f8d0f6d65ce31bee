import type { Side } from '../../../brief/brief.ts'
import type { Dimension } from '../../../sizes/dimension.ts'
import type { Drawn } from '../engine/messages.ts'
import { type Placing, rowOf, type Standing, statementFor } from './drag.ts'
import { groundOf, union } from './ground.ts'

/** The side of the paper that an arrow key points to. */
export type Way = 'left' | 'right' | 'top' | 'bottom'

export const WAYS: Readonly<Record<string, Way>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'top',
  ArrowDown: 'bottom',
}

const AGAINST: Readonly<Record<string, Side>> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' }

/** Where the size stands now: as the brief has it, else as its figures stand on the sheet. */
function standingOf(drawn: Drawn, dimension: Dimension): Standing | undefined {
  const { sheet } = drawn
  const view = sheet?.views.find((v) => v.id === dimension.view)
  if (!sheet || !view) return undefined
  const ground = groundOf(sheet)
  const figures = ground.boxes.filter((_, i) => {
    const item = sheet.items[i]!
    return item.tie?.dimension === dimension.id && (item.item === 'text' || item.item === 'glyph')
  })
  if (figures.length === 0) return undefined
  const { min, max } = union(figures)
  const along = dimension.measured.kind === 'linear' ? dimension.measured.along : undefined
  const seen = rowOf(view, [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2], along)
  return { view: view.id, side: dimension.wish?.side ?? seen.side, row: dimension.wish?.row ?? seen.row }
}

/**
 * The statement that puts a size one row further the way of an arrow: away from its view, towards it, and past the
 * first row to the view's other side. A leader's figures go to that side. Undefined where it cannot go that way.
 */
export function rowStep(drawn: Drawn, id: string, way: Way): Placing | undefined {
  const dimension = drawn.dimensions.find((d) => d.id === id)
  const now = dimension?.span && standingOf(drawn, dimension)
  if (!dimension || !now?.side || now.row === undefined) return undefined
  const { view, side, row } = now
  if (dimension.measured.kind !== 'linear') return statementFor(drawn, dimension, { view, side: way })
  if (way === side) return statementFor(drawn, dimension, { view, side, row: row + 1 })
  if (way !== AGAINST[side]) return undefined
  return statementFor(drawn, dimension, row > 1 ? { view, side, row: row - 1 } : { view, side: way, row: 1 })
}

/** The world's axis, less its sign, that a way across or up the paper is in a principal view; as the views are laid. */
const AXES: Readonly<Record<string, readonly [string, string]>> = {
  front: ['x', 'z'],
  rear: ['x', 'z'],
  top: ['x', 'y'],
  bottom: ['x', 'y'],
  left: ['y', 'z'],
  right: ['y', 'z'],
}

/** The statement that puts a linear size beside the next view that shows its length true; undefined where none does. */
export function viewStep(drawn: Drawn, id: string): Placing | undefined {
  const dimension = drawn.dimensions.find((d) => d.id === id)
  if (!dimension?.span || dimension.measured.kind !== 'linear') return undefined
  const { along } = dimension.measured
  const slanted = Math.min(Math.abs(along[0]), Math.abs(along[1])) > 1e-6
  const axis = AXES[dimension.view]?.[Math.abs(along[0]) > Math.abs(along[1]) ? 0 : 1]
  if (slanted || !axis) return undefined
  const views = (drawn.sheet?.views ?? []).map((v) => v.id).filter((v) => AXES[v]?.includes(axis))
  const next = views[(views.indexOf(dimension.view) + 1) % views.length]
  return next === undefined || next === dimension.view ? undefined : statementFor(drawn, dimension, { view: next })
}
