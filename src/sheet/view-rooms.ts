import type { PlaceRequest, Practice, ViewName } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { SizeSet } from '../sizes/dimension.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import type { View, ViewSet } from '../views/view.ts'
import type { Room } from './arrange/grid.ts'
import { cuttingPlaneReach } from './cutting-plane-line.ts'
import { textWidth } from './lettering/lettering.ts'
import { roomFor } from './placement/room-for.ts'

/** Room kept for sizes that are yet to come, mm a side. */
const UNSIZED: Room = { left: 25, right: 25, top: 25, bottom: 25 }
/** Least room, so that views never crowd. */
const LEAST = 10
/** Beyond the outermost size. */
const BESIDE_SIZES = 3

/** Where a view's label stands: under it (ASME Y14.3) or over it (ISO 128-3). */
export function labelPlace(practice: Practice): 'under' | 'over' {
  return practice === 'ASME' ? 'under' : 'over'
}

/** Heights of the strips that a view's label and its thickness note take, mm; 0 without one. */
export function labelStrips(
  view: View,
  thickness: string | undefined,
  figures: PracticeFigures,
): { readonly label: number; readonly note: number } {
  return {
    label: view.label ? figures.lettering.viewLabel + 5 : 0,
    note: thickness ? figures.lettering.note + 4 : 0,
  }
}

/** Paper mm round each view at a scale: for sizes, cutting-plane ends and labels. */
export function viewRooms(
  views: ViewSet,
  sizes: SizeSet | undefined,
  scale: number,
  practice: Practice,
  figures: PracticeFigures,
  format: string,
): ReadonlyMap<string, Room> {
  const sized = sizes && sizes.dimensions.length > 0 ? roomFor(sizes, views, scale, practice, format) : undefined
  return roomsWith(
    (id, k) => (sized?.[id] ? Math.max(LEAST, sized[id][k] + BESIDE_SIZES) : UNSIZED[k]),
    views,
    scale,
    practice,
    figures,
  )
}

/** What is left of a room where sizes must share: a third less, never under the least. */
export function tightened(room: Room): Room {
  const less = (mm: number) => Math.max(LEAST, (mm * 2) / 3)
  return { left: less(room.left), right: less(room.right), top: less(room.top), bottom: less(room.bottom) }
}

/** The room without which no view can stand. */
export function leastRooms(
  views: ViewSet,
  scale: number,
  practice: Practice,
  figures: PracticeFigures,
): ReadonlyMap<string, Room> {
  return roomsWith(() => LEAST, views, scale, practice, figures)
}

function roomsWith(
  sideOf: (id: string, side: keyof Room) => number,
  views: ViewSet,
  scale: number,
  practice: Practice,
  figures: PracticeFigures,
): ReadonlyMap<string, Room> {
  const rooms = new Map<string, Room>()
  const main = mainView(views)
  for (const view of views.views) {
    if (view.kind === 'pictorial') continue
    const side = (k: keyof Room) => sideOf(view.id, k)
    const room = { left: side('left'), right: side('right'), top: side('top'), bottom: side('bottom') }
    for (const plane of view.cuttingPlanes) {
      const reach = cuttingPlaneReach(figures)
      const [first, last] = [plane.path[0], plane.path.at(-1)]
      if (!first || !last) continue
      const level = Math.abs(last[0] - first[0]) >= Math.abs(last[1] - first[1])
      for (const k of level ? (['left', 'right'] as const) : (['top', 'bottom'] as const)) {
        room[k] = Math.max(room[k], reach)
      }
    }
    const strips = labelStrips(view, view === main ? views.thicknessNote : undefined, figures)
    // A label wider than its view needs its own width.
    const words = view.label ? textWidth(view.label, figures.lettering.viewLabel) : 0
    const wanting = (words - (view.box.max[0] - view.box.min[0]) * scale) / 2 + BESIDE_SIZES
    room.left = Math.max(room.left, wanting)
    room.right = Math.max(room.right, wanting)
    // The thickness note always stands under its view.
    room.bottom += strips.note
    room[labelPlace(practice) === 'over' ? 'top' : 'bottom'] += strips.label
    rooms.set(view.id, room)
  }
  return rooms
}

/** The view that carries the thickness note. */
export function mainView(views: ViewSet): View | undefined {
  return views.views.find((v) => v.kind !== 'pictorial')
}

/** The view that a brief calls so: a section by its letter, the pictorial, else the view of that side. */
const viewCalled = (name: ViewName, { views }: ViewSet): View | undefined =>
  views.find((v) => v.id === name) ?? views.find((v) => v.kind !== 'pictorial' && v.side === name)

/** Moves asked for in the brief, paper mm, by view id. */
export function viewMoves(
  places: readonly PlaceRequest[],
  views: ViewSet,
): ReadonlyMap<string, readonly [number, number]> {
  const moves = new Map<string, readonly [number, number]>()
  for (const place of places) {
    if (place.kind !== 'view') continue
    const view = viewCalled(place.view, views)
    if (view) moves.set(view.id, [place.across.value, place.up.value])
  }
  return moves
}

/** Marks for places asked of views that are not drawn. */
export function movesOfNoView(places: readonly PlaceRequest[], views: ViewSet): Mark[] {
  return places.flatMap((place): Mark[] =>
    place.kind === 'size' || viewCalled(place.view, views)
      ? []
      : [
          {
            rule: 'view-not-found',
            weight: 'must change',
            text: `There is no ${/^(?:section|pictorial)/.test(place.view) ? place.view : `${place.view} view`} to place.`,
            span: place.span,
            expected: views.views.map((v) => v.id).join(', '),
            source: 'common practice, no source',
          },
        ],
  )
}
