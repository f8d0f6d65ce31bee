import type { Practice } from '../../brief/brief.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { SizeSet } from '../../sizes/dimension.ts'
import { practiceFigures } from '../../standards/practice-figures.ts'
import type { ViewSet } from '../../views/view.ts'
import { cuttingPlaneLine, edgesOf } from '../cutting-plane-line.ts'
import { onPaper, standing } from './ink.ts'
import { arrange } from './place-dimensions.ts'

/** Paper mm needed outside a view's outline on each side. */
export interface Room {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Half-width of the field on which a view is tried out, mm: larger than any sheet. */
const FIELD = 4000

/**
 * The room that the sizes of each view take outside its outline at `scale` (paper mm per part mm): each view is sized by
 * itself on a boundless sheet with the lettering of `format`, without the rounds of improvement.
 */
export function roomFor(
  sizes: SizeSet,
  views: ViewSet,
  scale: number,
  practice: Practice,
  format?: string,
): Record<string, Room> {
  const out: Record<string, Room> = {}
  for (const view of views.views) {
    const placed = { id: view.id, origin: [0, 0] as const, scale, box: view.box }
    const at = standing(view, placed)
    const own: SizeSet = {
      ...sizes,
      dimensions: sizes.dimensions.filter((d) => d.view === view.id),
      tables: sizes.tables.filter((t) => t.view === view.id),
      annotations: (sizes.annotations ?? []).filter((a) => a.view === view.id),
    }
    const bounds = { min: [-FIELD, -FIELD] as const, max: [FIELD, FIELD] as const }
    const figures = practiceFigures(practice, format)
    const toPaper = (q: Vec2) => onPaper(placed, q)
    const edges = view.cuttingPlanes.length > 0 ? edgesOf(view, toPaper) : undefined
    const planes = view.cuttingPlanes.map((p) => cuttingPlaneLine(p, toPaper, at.box, figures, {}, edges))
    const obstacles = planes.flatMap((p) => p.taken)
    const passable = planes.flatMap((p) => p.arrows)
    const { stands } = arrange(
      [at],
      { sizes: own, practice, obstacles, passable, bounds, ...(format ? { format } : {}) },
      0,
    )
    const room = { left: 0, right: 0, top: 0, bottom: 0 }
    for (const { box } of stands) {
      room.left = Math.max(room.left, at.box.min[0] - box.x0)
      room.right = Math.max(room.right, box.x1 - at.box.max[0])
      room.bottom = Math.max(room.bottom, at.box.min[1] - box.y0)
      room.top = Math.max(room.top, box.y1 - at.box.max[1])
    }
    out[view.id] = room
  }
  return out
}
