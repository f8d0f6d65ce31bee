import type { Part } from '../../part/part.ts'
import type { AxisIndex } from '../proof/elements.ts'

/** Where a frame of position counts the places of its feature from. */
export interface ExactFrom {
  /** Letters of the datums that fix the direction: `B`, `B, C`. */
  readonly letters: string
  /** Their levels along the axis of the part, mm. */
  readonly levels: readonly number[]
}

/**
 * The datums that fix a positioned feature along an axis of the part: basic sizes start there (ASME Y14.5-2018 7.2 and
 * 10.2, ISO 5458, from memory). Undefined where no frame holds the feature in position, or no datum of it reaches that way.
 */
export function exactFrom(part: Part, feature: string, k: AxisIndex): ExactFrom | undefined {
  const { frames = [], datums = [] } = part.brief
  const found = frames.flatMap(({ frame }, i) => {
    if (frame.characteristic !== 'position' || part.named?.frames[i]?.feature !== feature) return []
    return frame.rows.flatMap((row) =>
      row.datums
        .flatMap((d) => d.letters)
        .flatMap((letter) => {
          const levels = levelsOf(
            part,
            datums.findIndex((d) => d.letter.text === letter),
            k,
          )
          return levels.length > 0 ? [{ letter, levels }] : []
        }),
    )
  })
  if (found.length === 0) return undefined
  return { letters: [...new Set(found.map((f) => f.letter))].join(', '), levels: found.flatMap((f) => f.levels) }
}

/** A plane's level, the middle of a width, the axis of a round that lies across. */
function levelsOf(part: Part, index: number, k: AxisIndex): number[] {
  const datum = part.named?.datums[index]
  if (!datum) return []
  const along = Math.abs(datum.direction[k])
  const surfaces = datum.faces.flatMap((id) => part.body.faces.find((f) => f.id === id)?.surface ?? [])
  if (datum.kind === 'round')
    return along > 1e-9 ? [] : surfaces.flatMap((s) => (s.kind === 'cylinder' ? [s.axes.origin[k]] : []))
  if (along < 1 - 1e-9) return []
  const planes = surfaces.flatMap((s) => (s.kind === 'plane' ? [s.axes.origin[k]] : []))
  if (datum.kind === 'plane' || planes.length === 0) return planes.slice(0, 1)
  return [(Math.min(...planes) + Math.max(...planes)) / 2]
}
