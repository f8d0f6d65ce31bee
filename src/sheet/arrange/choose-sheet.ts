import type { Format } from '../../standards/formats.ts'
import { type Scale, scaleText } from '../../standards/scales.ts'
import { type Composition, compose, fillOf, type Request } from './compose.ts'

export interface SheetChoice extends Composition {
  readonly stated: Scale
  /** As printed. */
  readonly scaleText: string
  /** Lower is better. */
  readonly cost: number
}

export interface ChoiceInput {
  readonly formats: readonly Format[]
  /** Largest first. */
  readonly scales: readonly Scale[]
  /** Scale at which everything can be read. */
  readonly wanted: number
  request(format: Format, scale: Scale): Request
  /** The same with less room than the views' sizes take at ease: they may still find their places. */
  tight(format: Format, scale: Scale): Request
  /** The same with the least room round the views: what does not fit so cannot fit at all. */
  bare(format: Format, scale: Scale): Request
}

/** What one step of format costs against one halving of the scale (common practice, no source: small sheets are handled daily). */
const FORMAT_COST = [0, 0.45, 1.3, 2.4, 3.6]
/** Sheets dearer than the best by more than this are not looked at. */
const SPARE = 1.5
/** A scale this near to the wanted one needs no larger one. */
const NEAR_ENOUGH = 0.7
const COST = {
  halfScale: 1.2,
  empty: 1,
  half: 0.5,
  reduced: 0.6,
  /** A doubling past what can be read, or past full size. */
  larger: 0.2,
  notWhole: 1.2,
  smallPictorial: 0.3,
  tight: 0.3,
}
/** Views that fill less than this share of a sheet may be drawn a step larger. */
const SPARSE = 0.38

/**
 * The sheets and scales that hold everything, best first: the smallest format on which the smallest feature stays
 * readable and the sheet is well filled.
 */
export function chooseSheet(input: ChoiceInput): SheetChoice[] {
  const choices: SheetChoice[] = []
  const most = Math.max(1, input.wanted)
  const value = (s: Scale) => s.paper / s.part
  // The first scale that is not larger than needed; the next larger one where only that reaches what is wanted.
  const enough = Math.min(...input.scales.map(value).filter((v) => v >= most * NEAR_ENOUGH), Infinity)
  const usable = input.scales.filter((s) => value(s) <= enough + 1e-12)
  input.formats.forEach((format, index) => {
    // A larger sheet cannot do better than its own cost.
    const least = Math.min(...choices.map((c) => c.cost))
    if (choices.filter((c) => c.whole).length > 2 && (FORMAT_COST[index] ?? 5) > least + SPARE) return
    const consider = (scale: Scale): { composition: Composition; easy: boolean } | undefined => {
      // Finding the room that sizes need is dear; most sheets fall out before.
      if (!compose(input.bare(format, scale))) return undefined
      const eased = compose(input.request(format, scale))
      const composition = eased?.whole ? eased : (compose(input.tight(format, scale)) ?? eased)
      if (!composition) return undefined
      choices.push({
        ...composition,
        stated: scale,
        scaleText: scaleText(scale),
        cost:
          cost(composition, FORMAT_COST[index] ?? 5, input.wanted, value(scale)) +
          (composition === eased ? 0 : COST.tight),
      })
      return { composition, easy: eased?.whole ?? false }
    }
    for (const scale of usable.length > 0 ? usable : input.scales) {
      const found = consider(scale)
      if (found && fillOf(found.composition) < SPARSE) {
        const next = input.scales[input.scales.indexOf(scale) - 1]
        if (next && value(next) > enough) consider(next)
      }
      // A smaller scale is of use only where this one left something out.
      if (found?.easy) break
    }
  })
  return choices.sort((a, b) => a.cost - b.cost)
}

function cost(c: Composition, format: number, wanted: number, scale: number): number {
  const small = Math.max(0, Math.log2((wanted * NEAR_ENOUGH) / scale))
  const empty = Math.max(0, COST.half - fillOf(c)) / COST.half
  const reduced = Math.max(0, Math.log2(1 / scale))
  const pictorial = c.pictorial ? Math.log2(scale / c.pictorial.scale) : 0
  return (
    format +
    COST.halfScale * small +
    COST.larger * Math.max(0, Math.log2(scale / Math.max(1, wanted))) +
    COST.empty * empty +
    COST.reduced * reduced +
    (c.whole ? 0 : COST.notWhole) +
    COST.smallPictorial * pictorial
  )
}
