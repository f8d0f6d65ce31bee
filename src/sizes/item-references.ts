import { boxOf, lengthOf, pointAt } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { AssemblyItem } from '../part/part.ts'
import type { View, ViewLine, ViewSet } from '../views/view.ts'
import type { Annotation, SurfacePlace } from './annotation.ts'

/** How many places of an item are offered, the longest lines first. */
const MOST_PLACES = 8
/** Shorter lines are no place to point at, part mm. */
const LEAST = 2

/**
 * The item numbers of an assembly's parts list, each once, in the view that shows most items; what does not show there
 * stands in the next (ISO 6433:2012, from memory: all in one view where it can be).
 */
export function itemReferences(items: readonly AssemblyItem[], { views }: ViewSet): Annotation[] {
  const shown = views
    .filter((view) => view.kind === 'principal')
    .map((view) => ({ view, places: items.map((item) => placesOf(item, view)) }))
    .map((one) => ({ ...one, count: one.places.filter((p) => p.length > 0).length }))
    .sort((a, b) => b.count - a.count)
  return items.flatMap((_, i): Annotation[] => {
    const home = shown.find(({ places }) => places[i]!.length > 0)
    if (!home) return []
    const id = `item ${i + 1}`
    const span = { from: 0, to: 0 }
    return [
      {
        id,
        view: home.view.id,
        signs: [{ kind: 'item', id, number: String(i + 1), span }],
        places: home.places[i]!,
        span,
      },
    ]
  })
}

/** Visible lines of the item, straight ones and whole circles, longest first. */
function placesOf(item: AssemblyItem, view: View): SurfacePlace[] {
  const found: { place: SurfacePlace; length: number }[] = []
  for (const faces of item.instances) {
    const own = new Set(faces)
    // a line that two parts share points at neither
    const lines = view.lines.filter(
      (l) => l.kind === 'visible' && l.sources.length > 0 && l.sources.every((s) => s.faces.every((f) => own.has(f))),
    )
    if (lines.length === 0) continue
    const middle = middleOf(lines)
    for (const line of lines) {
      const length = lengthOf(line.curve)
      const place = length < LEAST ? undefined : placeOn(line, middle)
      if (place) found.push({ place, length })
    }
  }
  return found
    .sort((a, b) => b.length - a.length)
    .slice(0, MOST_PLACES)
    .map(({ place }) => place)
}

function placeOn({ curve }: ViewLine, middle: Vec2): SurfacePlace | undefined {
  if (curve.kind === 'arc')
    return Math.abs(curve.sweep) > 2 * Math.PI - 1e-6 ? { kind: 'circle', centre: curve.c, radius: curve.r } : undefined
  if (curve.kind !== 'line') return undefined
  const { a, b } = curve
  const length = lengthOf(curve)
  const across: Vec2 = [(b[1] - a[1]) / length, (a[0] - b[0]) / length]
  const [x, y] = pointAt(curve, 0.5)
  const away = (x - middle[0]) * across[0] + (y - middle[1]) * across[1] >= 0
  return { kind: 'line', a, b, out: away ? across : [-across[0], -across[1]] }
}

function middleOf(lines: readonly ViewLine[]): Vec2 {
  const boxes = lines.map((l) => boxOf(l.curve))
  const mid = (k: 0 | 1) => (Math.min(...boxes.map((b) => b.min[k])) + Math.max(...boxes.map((b) => b.max[k]))) / 2
  return [mid(0), mid(1)]
}
