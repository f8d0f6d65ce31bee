import type { Box2 } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import { findSpot, grownBy } from './arrange/boxes.ts'
import { STAMP_LETTERS, stamp, stampShapes } from './furniture/stamp.ts'
import type { SheetItem } from './sheet.ts'

/** Kept about the stamp where there is room, mm. */
const CLEAR = 3

/** What already stands on the sheet. */
interface Field {
  readonly frame: Box2
  readonly title: Box2
  /** Title block, notes, tables, labels. */
  readonly obstacles: readonly Box2[]
  /** Outlines of the views, and with the room kept for their sizes. */
  readonly views: readonly Box2[]
  readonly rooms: readonly Box2[]
  readonly sizes: readonly Box2[]
}

/**
 * The stamp on a sheet that was laid out without one: clear of everything, if need be in the views' rooms and smaller.
 * Undefined on a sheet so full that not even that is found; it is never printed over something else.
 */
export function lateStamp(field: Field, words: readonly [string, string]): SheetItem[] | undefined {
  const { frame, title, obstacles, sizes } = field
  const rooms = [...obstacles, ...field.rooms, ...sizes]
  const printed = [...obstacles, ...field.views.map((v) => grownBy(v, 2)), ...sizes]
  const clear = (boxes: readonly Box2[]) => boxes.map((b) => grownBy(b, CLEAR))
  for (const taken of [clear(rooms), rooms, clear(printed), printed]) {
    for (const letters of STAMP_LETTERS) {
      for (const { lines, width, height } of stampShapes(words, letters)) {
        const wish: Vec2 = [title.max[0] - 4 - width / 2, title.max[1] + 4 + height / 2]
        const spot = findSpot(width, height, taken, grownBy(frame, -2), wish)
        if (spot) return stamp(lines, spot, letters)
      }
    }
  }
  return undefined
}
