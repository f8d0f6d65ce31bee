import type { Mark } from '../../brief/mark.ts'
import type { Span } from '../../brief/span.ts'
import { type Box2, boxOfCurves } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { textExtent } from '../../sheet/lettering/lettering.ts'
import type { SheetItem } from '../../sheet/sheet.ts'
import type { Subject } from '../rule.ts'

/**
 * Where a mark is on the sheet, paper mm: the figures of the size that it points at, else the words that carry its place
 * in the brief, else the first size of its feature. Undefined for marks about the whole part.
 */
export function placeOnSheet(
  mark: Mark,
  { part, sheet, sizes }: Pick<Subject, 'part' | 'sheet' | 'sizes'>,
): Box2 | undefined {
  const texts = sheet.items.filter((i) => i.item === 'text' || i.item === 'glyph')
  const ofSize = (ids: ReadonlySet<string>) => {
    const first = texts.find((i) => i.tie?.dimension !== undefined && ids.has(i.tie.dimension))
    return first && union(texts.filter((i) => i.tie?.dimension === first.tie?.dimension).map(boxOfItem))
  }
  const { span } = mark
  const within = span && part.features.find((f) => f.feature && covers(f.feature.span, span))
  const feature = mark.feature ?? within?.id
  if (span) {
    const pointed = sizes.dimensions.filter((d) => d.span && touches(d.span, span))
    // Of several, the one whose own figure begins where the mark does.
    const exact = pointed.filter((d) => d.span!.from === span.from)
    const found = ofSize(new Set((exact.length > 0 ? exact : pointed).map((d) => d.id)))
    if (found) return found
    const worded = texts.filter((i) => i.tie?.span && touches(i.tie.span, span))
    if (worded.length > 0) return union(worded.map(boxOfItem))
  }
  if (!feature) return undefined
  // The callout of the feature before the sizes that place it.
  const named = sizes.dimensions.filter((d) => d.feature === feature)
  const callout = named.filter((d) => d.measured.kind === 'leader' || d.measured.kind === 'diameter')
  const own = ofSize(new Set((callout.length > 0 ? callout : named).map((d) => d.id)))
  if (own) return own
  const lines = sheet.items.filter((i) => i.tie?.features?.includes(feature))
  const view = lines[0]?.tie?.view
  return lines.length > 0 ? union(lines.filter((i) => i.tie?.view === view).map(boxOfItem)) : undefined
}

const covers = (a: Span, b: Span) => a.from <= b.from && b.to <= a.to
const touches = (a: Span, b: Span) => a.from < b.to && b.from < a.to

/** Bounds of what an item prints, paper mm. */
export function boxOfItem(item: SheetItem): Box2 {
  if (item.item === 'stroke') return boxOfCurves([item.curve])
  if (item.item === 'fill') return boxOfCurves(item.outline)
  if (item.item === 'glyph') return boxOfCurves(item.strokes)
  const { width, above, below } = textExtent(item.text, item.height, item.bold ? { bold: true } : {})
  const long = width * (item.stretch ?? 1)
  const start = item.anchor === 'middle' ? -long / 2 : item.anchor === 'end' ? -long : 0
  const turn = (item.angle * Math.PI) / 180
  const corners = [start, start + long].flatMap((u) => [-below, above].map((v): Vec2 => [u, v]))
  const on = corners.map(
    ([u, v]): Vec2 => [
      item.at[0] + u * Math.cos(turn) - v * Math.sin(turn),
      item.at[1] + u * Math.sin(turn) + v * Math.cos(turn),
    ],
  )
  return {
    min: [Math.min(...on.map((p) => p[0])), Math.min(...on.map((p) => p[1]))],
    max: [Math.max(...on.map((p) => p[0])), Math.max(...on.map((p) => p[1]))],
  }
}

function union(boxes: readonly Box2[]): Box2 {
  return {
    min: [Math.min(...boxes.map((b) => b.min[0])), Math.min(...boxes.map((b) => b.min[1]))],
    max: [Math.max(...boxes.map((b) => b.max[0])), Math.max(...boxes.map((b) => b.max[1]))],
  }
}
