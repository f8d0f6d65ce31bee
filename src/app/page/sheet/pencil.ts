import type { Mark } from '../../../brief/mark.ts'
import type { Box2 } from '../../../geometry/evaluate.ts'
import type { Drawn } from '../engine/messages.ts'
import { type Ground, union } from './ground.ts'
import type { Ties } from './light.ts'

/** A mark of the check print: what is ringed on the paper, in mm. */
export interface Ringed {
  /** Index in the list of marks. */
  readonly mark: number
  readonly box: Box2
}

/**
 * Where each mark goes on the sheet: round the lettering that stands for its words, else round its feature's lines in
 * one view. A mark about words that nothing on the sheet stands for is in the margin only.
 */
export function ringsOf(drawn: Drawn, ground: Ground, ties: Ties, marks: readonly Mark[]): Ringed[] {
  const { items } = ground.sheet
  return marks.flatMap((mark, index): Ringed[] => {
    const { span } = mark
    const lettering = !span
      ? []
      : items.flatMap((item, i) => {
          const at = item.tie?.span
          const meant = at && at.from < Math.max(span.to, span.from + 1) && span.from < at.to
          return meant && (item.item === 'text' || item.item === 'glyph') ? [i] : []
        })
    if (lettering.length > 0) {
      const first = items[lettering[0]!]!.tie
      const one = lettering.filter(
        (i) => items[i]!.tie?.dimension === first?.dimension && items[i]!.tie?.view === first?.view,
      )
      return [{ mark: index, box: union(one.map((i) => ground.boxes[i]!)) }]
    }
    const ids = drawn.features
      .filter(
        (f) =>
          f.id === mark.feature ||
          (span && f.span && f.id !== 'stock' && span.from >= f.span.from && span.to <= f.span.to),
      )
      .map((f) => f.id)
    const theirs = items.flatMap((item, i) => {
      const dimension = item.tie?.dimension
      const owner = dimension && drawn.dimensions.find((d) => d.id === dimension)?.feature
      return owner && ids.includes(owner) && (item.item === 'text' || item.item === 'glyph') ? [i] : []
    })
    if (theirs.length > 0) {
      const first = items[theirs[0]!]!.tie?.dimension
      const one = theirs.filter((i) => items[i]!.tie?.dimension === first)
      return [{ mark: index, box: union(one.map((i) => ground.boxes[i]!)) }]
    }
    const lines = ties.features.flatMap((list, i) => (list.some((id) => ids.includes(id)) ? [i] : []))
    const drawnLines = lines.filter((i) => {
      const item = items[i]!
      return item.item === 'stroke' && item.kind === 'visible' && item.tie?.view !== 'pictorial'
    })
    const view = drawnLines[0] === undefined ? undefined : items[drawnLines[0]]!.tie?.view
    const seen = drawnLines.filter((i) => items[i]!.tie?.view === view)
    return seen.length > 0 ? [{ mark: index, box: union(seen.map((i) => ground.boxes[i]!)) }] : []
  })
}

/** A ring drawn by hand: not quite closed, not quite round, the same each time for the same mark. */
export function ringPath(box: Box2, height: number, seed: number): string {
  const pad = 2.2
  const [cx, cy] = [(box.min[0] + box.max[0]) / 2, height - (box.min[1] + box.max[1]) / 2]
  const [rx, ry] = [((box.max[0] - box.min[0]) / 2 + pad) * 1.12, ((box.max[1] - box.min[1]) / 2 + pad) * 1.12]
  const wobble = (k: number) => Math.sin(seed * 12.9898 + k * 78.233) * 0.045
  const points: string[] = []
  for (let k = 0; k <= 40; k++) {
    const a = -2.3 + (k / 40) * 2 * Math.PI * 1.06
    const grow = 1 + wobble(Math.floor(k / 5)) + k * 0.0016
    points.push(`${(cx + rx * grow * Math.cos(a)).toFixed(2)} ${(cy + ry * grow * Math.sin(a)).toFixed(2)}`)
  }
  return `M${points.join('L')}`
}
