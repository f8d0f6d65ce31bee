import type { Part, PartFeature } from '../../part/part.ts'
import type { Dimension } from '../dimension.ts'
import { axisIndex } from './elements.ts'

const WAYS = ['left-right', 'front-rear', 'up-down'] as const

/**
 * The conditions `aligned` between features, one by one: `hole A level with slot B, left-right`. Each stands for a size
 * that the sheet does not show again, because both are drawn in line.
 */
export function levelWords(part: Part, dimensions: readonly Pick<Dimension, 'states' | 'reference'>[]): string[] {
  const words = dimensions.flatMap(({ states = [], reference }) =>
    reference
      ? []
      : states.flatMap((said) => {
          if (said.kind !== 'aligned') return []
          const [a, b] = said.reaches.map((r) => ownerOf(part, r.name)?.id)
          const k = axisIndex(said.direction)
          return a && b && a !== b ? [`${a} level with ${b}${k === undefined ? '' : `, ${WAYS[k]}`}`] : []
        }),
  )
  return [...new Set(words)]
}

/** The feature whose data have this name: `hole A.1`, `notch 1 middle`. */
export const ownerOf = (part: Pick<Part, 'features'>, name: string): PartFeature | undefined =>
  part.features.find((f) =>
    [f.id, ...f.members.map((m) => m.id)].some((stem) => name === stem || name.startsWith(`${stem} `)),
  )
