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
  /** A halving below the scale at which the pictorial tells anything. */
  tinyPictorial: 0.5,
  tight: 0.3,
}
/** Halvings of the views' scale past which a pictorial is tiny. */
const TINY = 1.3
/** Views that fill less than this share of a sheet may be drawn a step larger. */
const SPARSE = 0.38

/**
 * The sheets and scales that hold everything, best first: the smallest format on which the smallest feature stays
 * readable and the sheet is well filled. Each is worked out only when nothing cheaper can be left, for finding the room
 * that sizes need is dear.
 */
export function* chooseSheet(input: ChoiceInput): Generator<SheetChoice> {
  const most = Math.max(1, input.wanted)
  // The first scale that is not larger than needed; the next larger one where only that reaches what is wanted.
  const enough = Math.min(...input.scales.map(ratioOf).filter((v) => v >= most * NEAR_ENOUGH), Infinity)
  const first = Math.max(
    0,
    input.scales.findIndex((s) => ratioOf(s) <= enough + 1e-12),
  )
  const ready: SheetChoice[] = []
  const pending: Candidate[] = []
  const considered = new Set<string>()
  const consider = (format: number, scale: number, last = false) => {
    const s = input.scales[scale]
    if (!s || considered.has(`${format} ${scale}`)) return
    considered.add(`${format} ${scale}`)
    pending.push({ format, scale, last, least: bareCost(FORMAT_COST[format] ?? 5, input.wanted, ratioOf(s)) })
  }
  input.formats.forEach((_, format) => {
    consider(format, first)
  })
  while (pending.length + ready.length > 0) {
    pending.sort((a, b) => a.least - b.least || a.format - b.format)
    ready.sort((a, b) => a.cost - b.cost)
    const next = pending[0]
    if (ready[0] && (!next || ready[0].cost <= next.least)) {
      yield ready.shift()!
      continue
    }
    if (!next) break
    pending.shift()
    const found = tried(input, next)
    if (found) ready.push(found.choice)
    if (next.last) continue
    // Views that leave much white may be drawn a step larger; a smaller scale is of use only where something is left out.
    if (found && fillOf(found.choice) < SPARSE && next.scale <= first) consider(next.format, next.scale - 1, true)
    if (!found?.easy) consider(next.format, next.scale + 1)
  }
  // Whoever asks on has found that something is left off on all of these: larger ones, on every sheet that holds them.
  const further = input.formats.flatMap((_, format) => {
    const out: SheetChoice[] = []
    for (let scale = first; scale >= 0; scale--) {
      if (considered.has(`${format} ${scale}`)) continue
      const least = bareCost(FORMAT_COST[format] ?? 5, input.wanted, ratioOf(input.scales[scale]!))
      const found = tried(input, { format, scale, last: true, least })
      if (!found) break
      out.push(found.choice)
    }
    return out
  })
  yield* further.sort((a, b) => a.cost - b.cost)
}

/** A format and scale (by index) not yet worked out. */
interface Candidate {
  readonly format: number
  readonly scale: number
  /** No other scale is tried after it. */
  readonly last: boolean
  /** It cannot cost less. */
  readonly least: number
}

const ratioOf = (s: Scale) => s.paper / s.part

function tried(input: ChoiceInput, c: Candidate): { choice: SheetChoice; easy: boolean } | undefined {
  const format = input.formats[c.format]!
  const scale = input.scales[c.scale]!
  if (!compose(input.bare(format, scale))) return undefined
  const eased = compose(input.request(format, scale))
  const composition = eased?.whole ? eased : (compose(input.tight(format, scale)) ?? eased)
  if (!composition) return undefined
  const whole = cost(composition, c.least, ratioOf(scale)) + (composition === eased ? 0 : COST.tight)
  return {
    choice: { ...composition, stated: scale, scaleText: scaleText(scale), cost: whole },
    easy: eased?.whole ?? false,
  }
}

/** What a format and a scale cost by themselves. */
function bareCost(format: number, wanted: number, scale: number): number {
  const small = Math.max(0, Math.log2((wanted * NEAR_ENOUGH) / scale))
  const reduced = Math.max(0, Math.log2(1 / scale))
  const larger = Math.max(0, Math.log2(scale / Math.max(1, wanted)))
  return format + COST.halfScale * small + COST.larger * larger + COST.reduced * reduced
}

function cost(c: Composition, bare: number, scale: number): number {
  const empty = Math.max(0, COST.half - fillOf(c)) / COST.half
  const small = c.pictorial ? Math.log2(scale / c.pictorial.scale) : 0
  const tiny = Math.max(0, small - TINY)
  const pictorial = COST.smallPictorial * small + COST.tinyPictorial * tiny
  return bare + COST.empty * empty + (c.whole ? 0 : COST.notWhole) + pictorial
}
