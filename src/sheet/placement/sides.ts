import type { Side } from '../../brief/brief.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import type { View } from '../../views/view.ts'
import type { Facing, Option, Options, Unit } from './form.ts'
import type { StandingView } from './ink.ts'
import { dot } from './vec.ts'

export type PaperSide = 'above' | 'below' | 'left' | 'right'

const sideVectors: Readonly<Record<Side, Vec3>> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  front: [0, -1, 0],
  rear: [0, 1, 0],
  top: [0, 0, 1],
  bottom: [0, 0, -1],
}

/** Side of the paper that a direction points to mostly. */
export function paperSide(way: Vec2): PaperSide {
  if (Math.abs(way[1]) >= Math.abs(way[0])) return way[1] > 0 ? 'above' : 'below'
  return way[0] > 0 ? 'right' : 'left'
}

/** The wished side of a view on paper: the part's own side where the view shows it, else the words as on paper. */
function wishedSide(d: Dimension, view: View): PaperSide | undefined {
  const side = d.wish?.side
  if (!side) return undefined
  const v = sideVectors[side]
  const on = (axis: Vec3) => v[0] * axis[0] + v[1] * axis[1] + v[2] * axis[2]
  const way: Vec2 = [on(view.frame.right), on(view.frame.up)]
  if (Math.hypot(way[0], way[1]) > 0.5) return paperSide(way)
  const asWritten: Partial<Record<Side, PaperSide>> = { top: 'above', bottom: 'below', left: 'left', right: 'right' }
  return asWritten[side]
}

/** Options that obey the drafter's wish for side and row; all of them, and `unmet`, where none does. */
export function obeying(
  options: Options,
  wishing: Dimension | undefined,
  view: View,
): Pick<Unit, 'options' | 'unwished' | 'unmet'> {
  if (!wishing?.wish) return { options }
  const side = wishedSide(wishing, view)
  const { row } = wishing.wish
  if (wishing.wish.side && !side) return { options, unmet: true }
  const kept: Option[] = []
  for (let i = 0, o = options.at(0); o; o = options.at(++i)) {
    if ((side === undefined || o.side === side) && (row === undefined || o.row === row)) kept.push(o)
  }
  return kept.length > 0 ? { options: kept, unwished: options } : { options, unmet: true }
}

/** For each view, the directions in which another view stands in projection, with the distance between the outlines. */
export function facings(views: readonly StandingView[]): Facing[][] {
  return views.map((a, i) =>
    views.flatMap((b, j): Facing[] => {
      if (i === j || b.view.kind === 'pictorial' || a.view.kind === 'pictorial') return []
      const overlap = (k: 0 | 1) => Math.min(a.box.max[k], b.box.max[k]) - Math.max(a.box.min[k], b.box.min[k])
      if (overlap(0) > 1) {
        if (b.box.min[1] > a.box.max[1]) return [{ way: [0, 1], distance: b.box.min[1] - a.box.max[1] }]
        if (b.box.max[1] < a.box.min[1]) return [{ way: [0, -1], distance: a.box.min[1] - b.box.max[1] }]
      } else if (overlap(1) > 1) {
        if (b.box.min[0] > a.box.max[0]) return [{ way: [1, 0], distance: b.box.min[0] - a.box.max[0] }]
        if (b.box.max[0] < a.box.min[0]) return [{ way: [-1, 0], distance: a.box.min[0] - b.box.max[0] }]
      }
      return []
    }),
  )
}

/** Largest projection of the view's outline bounds on a direction. */
export function outlineLevel(view: StandingView, way: Vec2): number {
  const { min, max } = view.box
  return Math.max(dot(min, way), dot(max, way), dot([min[0], max[1]], way), dot([max[0], min[1]], way))
}

export function faces(list: readonly Facing[], way: Vec2): boolean {
  return list.some((f) => dot(f.way, way) > 0.99)
}
