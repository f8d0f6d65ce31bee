import type { Part } from '../../part/part.ts'

/** A part this large across (middle one of its three extents, mm) and larger is held to the whole of a least wall. */
const WHOLE = 25

/**
 * The share of a workshop's usual least wall that a part so small is held to: pins, tubes and shims of watch and
 * instrument size are cut with walls in proportion (common practice, no source).
 */
export function shareOfLeast({ body: { box } }: Pick<Part, 'body'>): number {
  const [, middle] = ([0, 1, 2] as const).map((k) => box.max[k] - box.min[k]).sort((a, b) => a - b)
  return Math.min(1, (middle ?? WHOLE) / WHOLE)
}
