import type { Side } from '../../../brief/brief.ts'
import type { Vec2 } from '../../../geometry/vec.ts'
import type { PlacedView } from '../../../sheet/sheet.ts'
import type { Dimension } from '../../../sizes/dimension.ts'
import { withStatement } from '../bench/statements.ts'
import type { Drawn } from '../engine/messages.ts'
import { plainDigits } from './touch.ts'

/** First row from the outline and rows from each other, paper mm (ASME Y14.5: at least 10 and 6). */
const ROWS = { first: 10, next: 8 }
const SIDES: readonly string[] = ['left', 'right', 'front', 'rear', 'top', 'bottom']

/** A new statement for the brief, and the older one that it takes the place of. */
export interface Placing {
  readonly statement: string
  /** Start of the text that statements about the same thing begin with. */
  readonly replaces: string
}

/** How far a view has been moved already, paper mm. */
const movedBefore = (drawn: Drawn, view: string): Vec2 => {
  const last = drawn.brief.places.findLast((p) => p.kind === 'view' && p.view === view)
  return last?.kind === 'view' ? [last.across.value, last.up.value] : [0, 0]
}

/** A view as the brief names it: `top view`, `section A-A`, `pictorial`. */
export const viewWords = (view: string): string => (SIDES.includes(view) ? `${view} view` : view)

/** The statement that holds a view where it was put. */
export function viewPlacing(drawn: Drawn, view: string, by: Vec2): Placing {
  const [x, y] = movedBefore(drawn, view)
  const [across, up] = [Math.round(x + by[0]), Math.round(y + by[1])]
  const words = viewWords(view)
  return { statement: `place     ${words} ${across} across, ${up} up`, replaces: words }
}

/** The statement that holds a size beside the view it was dropped at: its view, side and row. */
export function sizePlacing(drawn: Drawn, dimension: string, at: Vec2): Placing | undefined {
  const found = drawn.dimensions.find((d) => d.id === dimension)
  const { sheet } = drawn
  if (!found?.span || !sheet) return undefined
  const view = nearestView(sheet.views, at, found.view)
  if (!view) return undefined
  const { row, side } = rowOf(view, at, found.measured.kind === 'linear' ? found.measured.along : undefined)
  return statementFor(drawn, found, { view: view.id, side, row })
}

/** Where a size stands: beside which view, on which side of it, in which row from its outline. */
export interface Standing {
  readonly view: string
  readonly side?: Side
  readonly row?: number
}

/** The statement that holds a size there. */
export function statementFor(drawn: Drawn, dimension: Dimension, { view, side, row }: Standing): Placing {
  const words = wordsFor(drawn, dimension)
  const rows = row !== undefined && dimension.measured.kind === 'linear' ? `, row ${row}` : ''
  const where = side === undefined ? '' : side === 'top' ? ', above' : side === 'bottom' ? ', below' : `, at ${side}`
  return { statement: `place     ${words} in ${viewWords(view)}${rows}${where}`, replaces: words }
}

/** The size's own digits, or its name where another size on the sheet reads the same. */
function wordsFor(drawn: Drawn, dimension: Dimension): string {
  const digits = (d: Dimension) => (d.span ? plainDigits(drawn.brief.text.slice(d.span.from, d.span.to)) : undefined)
  const own = digits(dimension)
  const alike = drawn.dimensions.filter((d) => digits(d) === own)
  return alike.length > 1 ? dimension.id : drawn.brief.text.slice(dimension.span!.from, dimension.span!.to)
}

/** A size stays with its view unless it is carried well over to another, mm. */
const LOYALTY = 25

function nearestView(views: readonly PlacedView[], at: Vec2, own: string): PlacedView | undefined {
  const far = ({ box, id }: PlacedView) =>
    (id === own ? -LOYALTY : 0) +
    Math.hypot(Math.max(box.min[0] - at[0], at[0] - box.max[0], 0), Math.max(box.min[1] - at[1], at[1] - box.max[1], 0))
  return views.filter((v) => v.id !== 'pictorial').sort((a, b) => far(a) - far(b))[0]
}

/** Side of the view and row counted from its outline. A size across stands above or below, one up stands left or right. */
export function rowOf({ box }: PlacedView, at: Vec2, along: Vec2 | undefined): { row: number; side: Side } {
  const out: [Side, number][] = [
    ['left', box.min[0] - at[0]],
    ['right', at[0] - box.max[0]],
    ['bottom', box.min[1] - at[1]],
    ['top', at[1] - box.max[1]],
  ]
  const level = along && Math.abs(along[0]) > Math.abs(along[1])
  const allowed = along
    ? out.filter(([side]) => (level ? side === 'top' || side === 'bottom' : side === 'left' || side === 'right'))
    : out
  const [side, away] = allowed.sort((a, b) => b[1] - a[1])[0]!
  return { side, row: Math.max(1, Math.round((away - ROWS.first) / ROWS.next) + 1) }
}

/** The brief with the placing written into it: in the place of an older one for the same thing, else at its end. */
export function withPlacing(text: string, placing: Placing): string {
  const lines = text.split('\n')
  const older = lines.findIndex((line) => {
    const rest = /^place\s+(.*)$/i.exec(line)?.[1]
    return rest?.startsWith(placing.replaces) && !/[\d.]/.test(rest[placing.replaces.length] ?? ' ')
  })
  if (older >= 0) {
    lines[older] = placing.statement
    return lines.join('\n')
  }
  return withStatement(text, placing.statement)
}
