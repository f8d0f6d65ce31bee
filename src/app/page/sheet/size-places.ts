import type { Box2 } from '../../../geometry/evaluate.ts'
import { type Ground, union } from './ground.ts'

/** A size of the sheet: its items by index, and where its figures stand on the paper, mm. */
export interface SizePlace {
  readonly id: string
  readonly items: readonly number[]
  readonly box: Box2
}

export function sizePlaces(ground: Ground): SizePlace[] {
  const byDimension = new Map<string, number[]>()
  ground.sheet.items.forEach((item, i) => {
    const id = item.tie?.dimension
    if (id && (item.item === 'text' || item.item === 'glyph')) byDimension.set(id, [...(byDimension.get(id) ?? []), i])
  })
  return [...byDimension].map(([id, items]) => ({ id, items, box: union(items.map((i) => ground.boxes[i]!)) }))
}

/**
 * The boxes grown to at least `least` each way, as far as half the gap to a neighbour: none overlaps another, unless the
 * boxes themselves did. Mm.
 */
export function fingerBoxes(boxes: readonly Box2[], least: number): Box2[] {
  const wanted = boxes.map((box): Box2 => {
    const by = ([0, 1] as const).map((k) => Math.max(0, least - (box.max[k] - box.min[k])) / 2)
    return { min: [box.min[0] - by[0]!, box.min[1] - by[1]!], max: [box.max[0] + by[0]!, box.max[1] + by[1]!] }
  })
  const grown = wanted.map(({ min, max }) => ({ min: [...min] as [number, number], max: [...max] as [number, number] }))
  for (const [i, a] of boxes.entries()) {
    for (let j = i + 1; j < boxes.length; j++) {
      const b = boxes[j]!
      if (!meet(wanted[i]!, wanted[j]!)) continue
      const gaps = ([0, 1] as const).map((k) => Math.max(b.min[k] - a.max[k], a.min[k] - b.max[k]))
      const k = gaps[0]! > gaps[1]! ? 0 : 1
      if (gaps[k]! < 0) continue
      // The line midway is the border of both.
      const [low, high] = a.max[k] <= b.min[k] ? [i, j] : [j, i]
      const middle = (boxes[low]!.max[k] + boxes[high]!.min[k]) / 2
      grown[low]!.max[k] = Math.min(grown[low]!.max[k], middle)
      grown[high]!.min[k] = Math.max(grown[high]!.min[k], middle)
    }
  }
  return grown
}

const meet = (a: Box2, b: Box2): boolean =>
  a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[1] < b.max[1] && b.min[1] < a.max[1]

/** The box that holds the point, by place in the list. */
export const boxAt = (boxes: readonly Box2[], [u, v]: readonly [number, number]): number =>
  boxes.findIndex(({ min, max }) => u >= min[0] && u <= max[0] && v >= min[1] && v <= max[1])
