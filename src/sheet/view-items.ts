import { placed } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import { paperLines } from '../views/dashes/paper-lines.ts'
import { ofTheWhole } from '../views/kin.ts'
import type { LineKind, View } from '../views/view.ts'
import { type HatchStyle, hatchLines } from './hatching.ts'
import type { PlacedView, SheetItem } from './sheet.ts'

/** Width of a line kind: ASME Y14.2-2014 Fig. 1; ISO 128-2:2022 Annex A. */
function widthOf(kind: LineKind, figures: PracticeFigures): number {
  return kind === 'visible' || (kind === 'cutting plane' && figures.practice === 'ASME')
    ? figures.widths.thick
    : figures.widths.thin
}

/** The line-work and hatching of a view where it stands; heavier lines last, so that they lie on top. */
export function viewItems(
  view: View,
  at: PlacedView,
  figures: PracticeFigures,
  hatch: HatchStyle | undefined,
): SheetItem[] {
  const items: SheetItem[] = []
  if (hatch) {
    for (const region of view.hatched) {
      const onPaper = region.map((loop) => loop.map((c) => placed(c, at.scale, at.origin)))
      for (const curve of hatchLines(onPaper, hatch)) {
        items.push({ item: 'stroke', kind: 'hatching', curve, width: figures.widths.thin, tie: { view: view.id } })
      }
    }
  }
  const lines = paperLines(view.lines, at.scale, figures)
  const order = [...lines].sort((a, b) => rank(a.kind) - rank(b.kind))
  for (const l of order) {
    const sources = view.kin ? ofTheWhole(l.sources, view.kin) : l.sources
    items.push({
      item: 'stroke',
      kind: l.kind,
      curve: placed(l.curve, 1, at.origin),
      width: view.kind === 'pictorial' && l.kind === 'visible' ? pictorialWidth(figures) : widthOf(l.kind, figures),
      ...(l.dashes ? { dashes: l.dashes } : {}),
      tie: {
        view: view.id,
        ...(sources.length > 0 ? { sources } : {}),
        ...(l.features ? { features: l.features } : {}),
      },
    })
  }
  return items
}

/** The pictorial is an aid, drawn quieter than the views (common practice, no source). */
function pictorialWidth(figures: PracticeFigures): number {
  return (figures.widths.thick + figures.widths.thin) / 2
}

const ORDER: readonly LineKind[] = [
  'hatching',
  'centre',
  'phantom',
  'intersection',
  'thread',
  'hidden',
  'cutting plane',
  'visible',
]
const rank = (kind: LineKind) => ORDER.indexOf(kind)

/** Part mm of a view to paper mm. */
export function toPaper(at: PlacedView): (p: Vec2) => Vec2 {
  return (p) => [at.origin[0] + p[0] * at.scale, at.origin[1] + p[1] * at.scale]
}
