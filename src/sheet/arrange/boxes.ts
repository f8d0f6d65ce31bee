import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'

export const boxOf = (x0: number, y0: number, x1: number, y1: number): Box2 => ({ min: [x0, y0], max: [x1, y1] })
export const widthOf = (b: Box2): number => b.max[0] - b.min[0]
export const heightOf = (b: Box2): number => b.max[1] - b.min[1]
export const middleOf = (b: Box2): Vec2 => [(b.min[0] + b.max[0]) / 2, (b.min[1] + b.max[1]) / 2]

/** Boxes that share more than an edge. */
export function overlap(a: Box2, b: Box2): boolean {
  const slack = 1e-6
  return (
    a.min[0] < b.max[0] - slack &&
    b.min[0] < a.max[0] - slack &&
    a.min[1] < b.max[1] - slack &&
    b.min[1] < a.max[1] - slack
  )
}

export function inside(inner: Box2, outer: Box2): boolean {
  const slack = 1e-6
  return (
    inner.min[0] >= outer.min[0] - slack &&
    inner.min[1] >= outer.min[1] - slack &&
    inner.max[0] <= outer.max[0] + slack &&
    inner.max[1] <= outer.max[1] + slack
  )
}

export function grownBy(b: Box2, d: number): Box2 {
  return boxOf(b.min[0] - d, b.min[1] - d, b.max[0] + d, b.max[1] + d)
}

/** The free place nearest to one of several wishes; the first wish that is met settles it. */
export function findSpotNear(
  width: number,
  height: number,
  obstacles: readonly Box2[],
  bounds: Box2,
  wishes: readonly Vec2[],
): Box2 | undefined {
  let best: Box2 | undefined
  let least = Infinity
  for (const wish of wishes) {
    const spot = findSpot(width, height, obstacles, bounds, wish)
    if (!spot) return undefined
    const [x, y] = middleOf(spot)
    const far = Math.hypot(x - wish[0], y - wish[1])
    if (far < least - 1e-6) {
      best = spot
      least = far
    }
    if (far < MET) break
  }
  return best
}

/** A wish is met by a place this near to it, mm. */
const MET = 2

/**
 * A free place for a box of the given size, its middle as near as can be to `wish`; undefined when there is none.
 * Candidates are the wish itself and every position flush with an edge of an obstacle or of the bounds.
 */
export function findSpot(
  width: number,
  height: number,
  obstacles: readonly Box2[],
  bounds: Box2,
  wish: Vec2,
): Box2 | undefined {
  if (width > widthOf(bounds) || height > heightOf(bounds)) return undefined
  const near = obstacles.filter((o) => overlap(o, bounds))
  const steps = (k: 0 | 1, size: number): number[] => {
    const lowest = bounds.min[k]
    const highest = bounds.max[k] - size
    const all = [wish[k] - size / 2, lowest, highest, ...near.flatMap((o) => [o.max[k], o.min[k] - size])]
    return [...new Set(all.map((v) => Math.min(highest, Math.max(lowest, v))))]
  }
  const xs = steps(0, width)
  const ys = steps(1, height)
  let best: Box2 | undefined
  let least = Infinity
  for (const x of xs) {
    for (const y of ys) {
      const far = Math.hypot(x + width / 2 - wish[0], y + height / 2 - wish[1])
      if (far >= least) continue
      const spot = boxOf(x, y, x + width, y + height)
      if (near.some((o) => overlap(o, spot))) continue
      best = spot
      least = far
    }
  }
  return best
}
