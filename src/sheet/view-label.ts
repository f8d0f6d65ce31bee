import type { Header } from '../brief/brief.ts'
import type { Box2 } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import type { View } from '../views/view.ts'
import type { GridPlacement } from './arrange/grid.ts'
import { lettering, letteringBox } from './lettering/lettering.ts'
import type { PlacedView, SheetItem } from './sheet.ts'
import { labelPlace, labelStrips } from './view-rooms.ts'

/** Round a thickness note, mm: it must not read on from a size beside it (common practice, no source). */
const NOTE_CLEAR = [6, 2] as const

/** The view's label and its thickness note, with the boxes they take. */
export function labelItems(
  view: View,
  at: PlacedView,
  grid: GridPlacement,
  thickness: string | undefined,
  header: Header,
  figures: PracticeFigures,
): { items: readonly SheetItem[]; taken: readonly Box2[] } {
  const room = grid.rooms.get(view.id)
  const outline = grid.outlines.get(view.id)
  if (!room || !outline) return { items: [], taken: [] }
  const over = labelPlace(header.practice) === 'over'
  const x = (at.box.min[0] + at.box.max[0]) / 2
  const shift = at.box.min[1] - outline.min[1]
  const items: SheetItem[] = []
  const taken: Box2[] = []
  const put = (
    text: string,
    height: number,
    middle: number,
    fractions: 'inline' | 'stacked',
    clear: readonly [across: number, up: number],
  ) => {
    const set = {
      fractions,
      at: [x, shift + middle - height / 2] as Vec2,
      height,
      anchor: 'middle' as const,
      role: 'label' as const,
      tie: { view: view.id },
    }
    items.push(...lettering(text, set))
    const { min, max } = letteringBox(text, set)
    taken.push({ min: [min[0] - clear[0], min[1] - clear[1]], max: [max[0] + clear[0], max[1] + clear[1]] })
  }
  const { label, note } = labelStrips(view, thickness, figures)
  if (view.label)
    put(
      view.label,
      figures.lettering.viewLabel,
      over ? room.max[1] - label / 2 : room.min[1] + label / 2,
      'inline',
      [1, 1],
    )
  if (thickness)
    put(thickness, figures.lettering.note, room.min[1] + (over ? 0 : label) + note / 2, 'stacked', NOTE_CLEAR)
  return { items, taken }
}
