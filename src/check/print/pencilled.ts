import type { Mark } from '../../brief/mark.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { Pencil } from '../../sheet/sheet.ts'
import type { Change } from './strokes.ts'

/** A mark as it is pencilled: its number on the print, its colour, and what it asks for. */
export interface Pencilled {
  readonly number: number
  readonly mark: Mark
  readonly pencil: Exclude<Pencil, 'yellow'>
  readonly change: Change
  readonly box?: Box2
}
