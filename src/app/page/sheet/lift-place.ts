import { pointAt } from '../../../geometry/evaluate.ts'
import type { Vec2 } from '../../../geometry/vec.ts'
import type { Ground } from './ground.ts'

/** Size in paper mm of what is to stand beside the pictorial. */
export interface Extent {
  readonly width: number
  readonly height: number
}

/** Points at which it is looked whether a curve runs through a place, at least. */
const LOOKS = 24

/**
 * Where words about the pictorial stand on the paper: their upper left corner, in mm. First in the empty corners of its
 * box, which its edges at 30° leave free, then close outside of it; where nothing is free, in the upper right corner.
 */
export function liftPlace(ground: Ground, { width, height }: Extent): Vec2 | undefined {
  const { sheet, boxes } = ground
  const box = sheet.views.find((v) => v.id === 'pictorial')?.box
  if (!box) return undefined
  const gap = height * 0.2
  const [left, right, low, high] = [box.min[0], box.max[0], box.min[1], box.max[1]]
  const places: Vec2[] = [
    [right - width, high],
    [left, high],
    [right - width, low + height],
    [left, low + height],
    [right + gap, high],
    [right - width, high + height + gap],
    [left, high + height + gap],
    [left - width - gap, high],
    [right - width, low - gap],
    [left, low - gap],
  ]
  const free = ([x, y]: Vec2): boolean => {
    const within = ([u, v]: Vec2) => u > x - gap && u < x + width + gap && v < y + gap / 2 && v > y - height - gap / 2
    if (x < 0 || x + width > sheet.width || y > sheet.height || y - height < 0) return false
    return sheet.items.every((item, i) => {
      const b = boxes[i]!
      if (b.min[0] > x + width + gap || b.max[0] < x - gap || b.min[1] > y + gap || b.max[1] < y - height - gap)
        return true
      if (item.item !== 'stroke') return false
      const long = Math.hypot(b.max[0] - b.min[0], b.max[1] - b.min[1])
      const looks = Math.max(LOOKS, Math.ceil((3 * long) / height))
      for (let k = 0; k <= looks; k++) if (within(pointAt(item.curve, k / looks))) return false
      return true
    })
  }
  return places.find(free) ?? places[0]
}
