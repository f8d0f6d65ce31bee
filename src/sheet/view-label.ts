import type { Header } from '../brief/brief.ts'
import type { Box2 } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import type { View } from '../views/view.ts'
import { inside, overlap } from './arrange/boxes.ts'
import type { GridPlacement } from './arrange/grid.ts'
import { lettering, letteringBox } from './lettering/lettering.ts'
import type { PlacedView, SheetItem } from './sheet.ts'
import { labelPlace, labelStrips } from './view-rooms.ts'

/** Round a thickness note, mm: it must not read on from a size beside it (common practice, no source). */
const NOTE_CLEAR = [6, 2] as const

/** A note under its view, with the box that it takes, moved down by some mm. */
export interface LowNote {
  at(down: number): { readonly items: readonly SheetItem[]; readonly taken: Box2 }
}

/** The view's label and its thickness note, with the boxes they take. */
export function labelItems(
  view: View,
  at: PlacedView,
  grid: GridPlacement,
  thickness: string | undefined,
  header: Header,
  figures: PracticeFigures,
): { readonly items: readonly SheetItem[]; readonly taken: readonly Box2[]; readonly note?: LowNote } {
  const room = grid.rooms.get(view.id)
  const outline = grid.outlines.get(view.id)
  if (!room || !outline) return { items: [], taken: [] }
  const over = labelPlace(header.practice) === 'over'
  const x = (at.box.min[0] + at.box.max[0]) / 2
  const shift = at.box.min[1] - outline.min[1]
  const items: SheetItem[] = []
  const taken: Box2[] = []
  const set = (
    text: string,
    height: number,
    middle: number,
    fractions: 'inline' | 'stacked',
    clear: readonly [across: number, up: number],
  ): { items: SheetItem[]; taken: Box2 } => {
    const as = {
      fractions,
      at: [x, shift + middle - height / 2] as Vec2,
      height,
      anchor: 'middle' as const,
      role: 'label' as const,
      tie: { view: view.id },
    }
    const { min, max } = letteringBox(text, as)
    return {
      items: [...lettering(text, as)],
      taken: { min: [min[0] - clear[0], min[1] - clear[1]], max: [max[0] + clear[0], max[1] + clear[1]] },
    }
  }
  const { label, note } = labelStrips(view, thickness, figures)
  if (view.label) {
    const middle = over ? room.max[1] - label / 2 : room.min[1] + label / 2
    const put = set(view.label, figures.lettering.viewLabel, middle, 'inline', [1, 1])
    items.push(...put.items)
    taken.push(put.taken)
  }
  if (!thickness) return { items, taken }
  const middle = room.min[1] + (over ? 0 : label) + note / 2
  return {
    items,
    taken,
    note: { at: (down) => set(thickness, figures.lettering.note, middle - down, 'stacked', NOTE_CLEAR) },
  }
}

/** The note under the lowest size of its view that stands over it; undefined where something else stands there. */
export function belowSizes(
  note: LowNote,
  view: Box2,
  sizes: readonly Box2[],
  others: readonly Box2[],
  field: Box2,
): ReturnType<LowNote['at']> | undefined {
  const own = note.at(0).taken
  const over = sizes.filter((s) => s.max[0] > own.min[0] && s.min[0] < own.max[0])
  const lowest = Math.min(...over.filter((s) => s.max[1] > view.min[1] - BELONGS).map((s) => s.min[1]), own.max[1])
  const moved = note.at(own.max[1] - lowest)
  const free = inside(moved.taken, field) && ![...over, ...others].some((b) => overlap(b, moved.taken))
  return free ? moved : undefined
}

/** A size that reaches so far up towards the outline is one of the view's own, mm. */
const BELONGS = 12
