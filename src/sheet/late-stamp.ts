import type { Box2 } from '../geometry/evaluate.ts'
import { findSpotNear, grownBy } from './arrange/boxes.ts'
import { STAMP_LETTERS, stamp, stampShapes, stampWishes } from './furniture/stamp.ts'
import type { SheetItem } from './sheet.ts'

/** Kept about the stamp where there is room, and where there is less, mm. */
const FAR = 8
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
  const clear = (boxes: readonly Box2[], by: number) => boxes.map((b) => grownBy(b, by))
  const far = [...clear(obstacles, CLEAR), ...clear([...field.rooms, ...sizes], FAR)]
  for (const taken of [far, clear(rooms, CLEAR), rooms, clear(printed, CLEAR), printed]) {
    for (const letters of STAMP_LETTERS) {
      for (const shape of stampShapes(words, letters)) {
        const { lines, width, height } = shape
        const spot = findSpotNear(width, height, taken, grownBy(frame, -2), stampWishes(title, shape))
        if (spot) return stamp(lines, spot, letters)
      }
    }
  }
  return undefined
}
