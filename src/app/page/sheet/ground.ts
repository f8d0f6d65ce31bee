import type { Curve2 } from '../../../geometry/curve2.ts'
import { type Box2, boxOfCurves, pointAt } from '../../../geometry/evaluate.ts'
import type { Vec2 } from '../../../geometry/vec.ts'
import { textExtent } from '../../../sheet/lettering/lettering.ts'
import type { Sheet, SheetItem } from '../../../sheet/sheet.ts'

/** What lies where on a sheet, for finding the item under a point. */
export interface Ground {
  readonly sheet: Sheet
  readonly boxes: readonly Box2[]
}

/** Box in paper mm of each item. */
export function groundOf(sheet: Sheet): Ground {
  return { sheet, boxes: sheet.items.map(boxOfItem) }
}

function boxOfItem(item: SheetItem): Box2 {
  switch (item.item) {
    case 'stroke':
      return boxOfCurves([item.curve])
    case 'fill':
      return boxOfCurves(item.outline)
    case 'glyph':
      return boxOfCurves(item.strokes)
    case 'text':
      return boxOfText(item)
  }
}

export function boxOfText(item: Extract<SheetItem, { item: 'text' }>): Box2 {
  const { width, above, below } = textExtent(item.text, item.height, item.bold ? { bold: true } : {})
  const wide = width * (item.stretch ?? 1)
  const from = item.anchor === 'middle' ? -wide / 2 : item.anchor === 'end' ? -wide : 0
  const [cos, sin] = [Math.cos((item.angle * Math.PI) / 180), Math.sin((item.angle * Math.PI) / 180)]
  const corners = [
    [from, -below],
    [from + wide, -below],
    [from, above],
    [from + wide, above],
  ].map(([u, v]): Vec2 => [item.at[0] + u! * cos - v! * sin, item.at[1] + u! * sin + v! * cos])
  const xs = corners.map((c) => c[0])
  const ys = corners.map((c) => c[1])
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] }
}

export const union = (boxes: readonly Box2[]): Box2 => ({
  min: [Math.min(...boxes.map((b) => b.min[0])), Math.min(...boxes.map((b) => b.min[1]))],
  max: [Math.max(...boxes.map((b) => b.max[0])), Math.max(...boxes.map((b) => b.max[1]))],
})

/** Which of two things at the same distance the hand means: lettering, then the part's own lines, then lines about it. */
function preference(item: SheetItem): number {
  if (item.item === 'text' || item.item === 'glyph') return item.tie?.dimension ? 0 : 0.25
  if (item.item === 'fill') return 0.2
  switch (item.kind) {
    case 'visible':
    case 'cutting plane':
      return 0.1
    case 'hidden':
    case 'intersection':
      return 0.3
    case 'centre':
    case 'dimension':
    case 'leader':
      return 0.4
    case 'extension':
      return 0.6
    default:
      return 0.8
  }
}

/** Index of the tied item nearest to the paper point within `reach` mm, or undefined. */
export function itemAt(ground: Ground, point: Vec2, reach: number): number | undefined {
  let best: number | undefined
  let least = reach
  ground.sheet.items.forEach((item, i) => {
    if (!item.tie) return
    const box = ground.boxes[i]!
    const outside = Math.max(
      box.min[0] - point[0],
      point[0] - box.max[0],
      box.min[1] - point[1],
      point[1] - box.max[1],
      0,
    )
    if (outside > reach) return
    const away = item.item === 'stroke' ? distanceTo(item.curve, point) : outside
    if (away > reach) return
    const cost = away + preference(item) * reach * 0.5
    if (cost < least || best === undefined) {
      least = cost
      best = i
    }
  })
  return best
}

/** Distance in mm from a point to a curve, found on chords; near enough for a hand. */
function distanceTo(curve: Curve2, point: Vec2): number {
  const steps = curve.kind === 'line' ? 1 : 32
  let least = Number.POSITIVE_INFINITY
  let a = pointAt(curve, 0)
  for (let i = 1; i <= steps; i++) {
    const b = pointAt(curve, i / steps)
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    const length = dx * dx + dy * dy
    const t = length === 0 ? 0 : ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / length
    const k = Math.min(1, Math.max(0, t))
    least = Math.min(least, Math.hypot(point[0] - a[0] - k * dx, point[1] - a[1] - k * dy))
    a = b
  }
  return least
}
