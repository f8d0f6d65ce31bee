import type { Vec3 } from '../../geometry/vec.ts'
import { type AxisIndex, SAME } from './elements.ts'

/** A line that axes lie on, or the bare centre of a bolt circle. */
export interface AxisLine {
  readonly along: AxisIndex
  readonly at: Vec3
  readonly bars: readonly [number, number, number]
  readonly elements: number[]
  readonly isStock: boolean
  /** Whose arc stands here by itself. */
  readonly arc: string | undefined
}

/** The axis line through a point that stands at the coordinate along k: of these elements, else an arc's only where no other is. */
export function nearestLine(
  lines: readonly AxisLine[],
  k: AxisIndex,
  coordinate: number,
  at: Vec3,
  own: ReadonlySet<number>,
): AxisLine | undefined {
  const there = lines.filter(
    (l) =>
      l.along !== k &&
      Math.abs(l.at[k] - coordinate) < SAME &&
      ([0, 1, 2] as const).every((i) => i === k || i === l.along || Math.abs(l.at[i] - at[i]) < SAME * 10),
  )
  return there.find((l) => l.elements.some((e) => own.has(e))) ?? there.find((l) => l.arc === undefined) ?? there[0]
}
