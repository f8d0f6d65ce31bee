import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { boxOf, heightOf, inside, overlap, widthOf } from './boxes.ts'
import type { Cell } from './cells.ts'

/** Paper mm kept free round a view's outline, for sizes, labels and cutting-plane lines. */
export interface Room {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Views standing on the sheet. */
export interface GridPlacement {
  /** Paper point of each view's (0, 0), by view id. */
  readonly origins: ReadonlyMap<string, Vec2>
  /** Outline and room of each view, by view id. */
  readonly outlines: ReadonlyMap<string, Box2>
  readonly rooms: ReadonlyMap<string, Box2>
  /** All rooms together, and what share of the region they take. */
  readonly extent: Box2
  readonly fill: number
}

/** More white than this between two rooms pulls the views of one drawing apart (common practice, no source). */
const WIDEST_GAP = 25

/**
 * Stands the views in a region with even gaps, aligned by projection: one x for all of a column, one y for all of a
 * row, to the last digit. Undefined where they do not fit, or would cover `taken`.
 *
 * @param lean share of the outer spare space that lies before the views
 * @param spread share of the even gap that is left between them
 * @param reserve width kept at the right of the region for something that stands beside the views
 */
export function placeGrid(
  cells: readonly Cell[],
  rooms: ReadonlyMap<string, Room>,
  scale: number,
  region: Box2,
  taken: readonly Box2[],
  lean: readonly [x: number, y: number] = [0.5, 0.5],
  reserve = 0,
  spread = 1,
): GridPlacement | undefined {
  const across = tracks(cells, (c) => c.column, 0, rooms, scale)
  const up = tracks(cells, (c) => c.row, 1, rooms, scale)
  const spareX = widthOf(region) - reserve - across.total
  const spareY = heightOf(region) - up.total
  if (spareX < -1e-9 || spareY < -1e-9) return undefined
  const columns = stand(across, region.min[0], spareX, lean[0], spread)
  const rows = stand(up, region.min[1], spareY, lean[1], spread)
  const origins = new Map<string, Vec2>()
  const outlines = new Map<string, Box2>()
  const standing = new Map<string, Box2>()
  for (const { view, column, row } of cells) {
    const origin: Vec2 = [columns.get(column)!, rows.get(row)!]
    const room = rooms.get(view.id)!
    const at = (p: Vec2): Vec2 => [origin[0] + p[0] * scale, origin[1] + p[1] * scale]
    const outline: Box2 = { min: at(view.box.min), max: at(view.box.max) }
    origins.set(view.id, origin)
    outlines.set(view.id, outline)
    standing.set(
      view.id,
      boxOf(
        outline.min[0] - room.left,
        outline.min[1] - room.bottom,
        outline.max[0] + room.right,
        outline.max[1] + room.top,
      ),
    )
  }
  const all = [...standing.values()]
  if (all.some((r) => taken.some((t) => overlap(r, t)) || !inside(r, grow(region)))) return undefined
  const extent = boxOf(
    Math.min(...all.map((b) => b.min[0])),
    Math.min(...all.map((b) => b.min[1])),
    Math.max(...all.map((b) => b.max[0])),
    Math.max(...all.map((b) => b.max[1])),
  )
  const fill = ((across.total + reserve) * up.total) / (widthOf(region) * heightOf(region))
  return { origins, outlines, rooms: standing, extent, fill }
}

/** Origins are rounded to a thousandth of a millimetre, rooms with them. */
const grow = (b: Box2): Box2 => boxOf(b.min[0] - 2e-3, b.min[1] - 2e-3, b.max[0] + 2e-3, b.max[1] + 2e-3)

interface Tracks {
  readonly list: readonly { readonly key: number; readonly before: number; readonly after: number }[]
  readonly total: number
}

/** Columns (axis 0) or rows (axis 1): how far each reaches before and after its common axis. */
function tracks(
  cells: readonly Cell[],
  keyOf: (c: Cell) => number,
  axis: 0 | 1,
  rooms: ReadonlyMap<string, Room>,
  scale: number,
): Tracks {
  const keys = [...new Set(cells.map(keyOf))].sort((a, b) => a - b)
  const list = keys.map((key) => {
    let before = -Infinity
    let after = -Infinity
    for (const c of cells) {
      if (keyOf(c) !== key) continue
      const room = rooms.get(c.view.id)!
      const [lo, hi] = axis === 0 ? [room.left, room.right] : [room.bottom, room.top]
      before = Math.max(before, lo - c.view.box.min[axis] * scale)
      after = Math.max(after, hi + c.view.box.max[axis] * scale)
    }
    return { key, before, after }
  })
  return { list, total: list.reduce((sum, t) => sum + t.before + t.after, 0) }
}

/** Even gaps before, between and after; gaps between grow no wider than `WIDEST_GAP`, what is left goes outside. */
function stand(t: Tracks, start: number, spare: number, lean: number, spread: number): Map<number, number> {
  const even = Math.max(0, spare) / (t.list.length + 1)
  const between = Math.min(even, WIDEST_GAP) * spread
  const outside = Math.max(0, spare) - between * (t.list.length - 1)
  let at = start + outside * lean
  const origins = new Map<number, number>()
  for (const { key, before, after } of t.list) {
    origins.set(key, Math.round((at + before) * 1000) / 1000)
    at += before + after + between
  }
  return origins
}
