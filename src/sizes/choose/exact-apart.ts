import type { Side } from '../../brief/brief.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import type { Dimension } from '../dimension.ts'
import type { Context } from './context.ts'
import type { Sight } from './sight.ts'

/**
 * Two equal sizes of features in line, one of them made exact by a frame, stand on opposite sides of the view, each next
 * to its own feature: on one side it would not be seen whose they are (common practice, no source). A place that the drafter wishes is kept.
 */
export function exactApart(context: Context, dimensions: readonly Dimension[]): Dimension[] {
  const wishes = new Map<string, Side>()
  for (const exact of dimensions) {
    const sight = context.sights.find((s) => s.view.id === exact.view)
    if (!exact.basic || !sight) continue
    const other = dimensions.find((d) => !d.basic && d.feature !== exact.feature && areInLine(d, exact))
    if (!other) continue
    const [a, b] = [exact, other].map((d) => across(d)) as [number, number]
    const way = acrossWay(exact)
    const [low, high] = a <= b ? [exact, other] : [other, exact]
    const [back, on] = [sideOf(sight, [-way[0], -way[1]]), sideOf(sight, way)]
    if (back) wishes.set(low.id, back)
    if (on) wishes.set(high.id, on)
  }
  return dimensions.map((d) => {
    const side = wishes.get(d.id)
    return side && !d.wish?.side ? { ...d, wish: { ...d.wish, side } } : d
  })
}

type Linear = Extract<Dimension['measured'], { kind: 'linear' }>

const linear = ({ measured, reference, group }: Dimension): Linear | undefined =>
  measured.kind === 'linear' && !reference && !group ? measured : undefined

/** Between the same two levels of one view. */
function areInLine(d: Dimension, e: Dimension): boolean {
  const [p, q] = [linear(d), linear(e)]
  if (!p || !q || d.view !== e.view || d.feature === undefined || e.feature === undefined) return false
  const level = (v: Vec2) => v[0] * q.along[0] + v[1] * q.along[1]
  const ends = (m: Linear) => [level(m.a), level(m.b)].sort((x, y) => x - y)
  const [s, t] = [ends(p), ends(q)]
  const parallel = Math.abs(p.along[0] * q.along[1] - p.along[1] * q.along[0]) < 1e-9
  return parallel && s.every((x, i) => Math.abs(x - t[i]!) < 1e-5)
}

/** Across the size's direction, to the right or up. */
function acrossWay(d: Dimension): Vec2 {
  const along = linear(d)?.along ?? [1, 0]
  return Math.abs(along[0]) > Math.abs(along[1]) ? [0, 1] : [1, 0]
}

/** Where the size's own feature stands across its direction. */
function across(d: Dimension): number {
  const way = acrossWay(d)
  const b = linear(d)?.b ?? [0, 0]
  return b[0] * way[0] + b[1] * way[1]
}

const SIDES: readonly (readonly [Side, Vec3])[] = [
  ['left', [-1, 0, 0]],
  ['right', [1, 0, 0]],
  ['front', [0, -1, 0]],
  ['rear', [0, 1, 0]],
  ['bottom', [0, 0, -1]],
  ['top', [0, 0, 1]],
]

/** The part's own side that lies that way in the view. */
function sideOf({ view: { frame } }: Sight, way: Vec2): Side | undefined {
  const at = (v: Vec3) =>
    [0, 1, 2].reduce((sum, i) => sum + v[i]! * (way[0] * frame.right[i]! + way[1] * frame.up[i]!), 0)
  return SIDES.find(([, v]) => at(v) > 1 - 1e-9)?.[0]
}
