import type { Practice } from '../../brief/brief.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { practiceFigures } from '../../standards/practice-figures.ts'

/** What placement needs of a practice, paper mm. */
export interface PlacementFigures {
  readonly practice: PracticeFigures
  readonly iso: boolean
  /** Capital height of sizes. */
  readonly text: number
  /** Outline to first row. */
  readonly first: number
  /** Row to row as laid out: the practice's minimum, more where the lettering needs it. */
  readonly pitch: number
  /** Row to row at the least. */
  readonly leastPitch: number
  readonly gap: number
  readonly overshoot: number
  readonly arrow: { readonly length: number; readonly width: number }
  readonly line: number
  /** Clear space between text and its own line. */
  readonly textGap: number
  readonly shoulder: number
}

export function placementFigures(practice: Practice, format?: string): PlacementFigures {
  const p = practiceFigures(practice, format)
  const text = p.lettering.dimension
  const iso = p.text.place === 'above line'
  return {
    practice: p,
    iso,
    text,
    first: p.rows.first,
    // Two heights of lettering between lines keep text of neighbouring rows apart (common practice).
    pitch: Math.max(p.rows.next, iso ? 2 * text + p.text.gap : 2 * text + 2),
    leastPitch: p.rows.next,
    gap: p.extension.gap,
    overshoot: p.extension.overshoot,
    arrow: { length: p.arrowhead.length, width: p.arrowhead.width },
    line: p.widths.thin,
    textGap: p.text.gap,
    shoulder: p.leader.shoulder,
  }
}
