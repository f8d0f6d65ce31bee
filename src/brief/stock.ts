import type { Lie, Side } from './side.ts'
import type { Angle, Size } from './size.ts'
import type { Span } from './span.ts'
import type { Name, Words } from './words.ts'

interface StockBase {
  readonly span: Span
}

/** Length runs left-right unless `face` turns the large face elsewhere. */
export interface PlateStock extends StockBase {
  readonly kind: 'plate'
  readonly length: Size
  readonly width: Size
  readonly thickness: Size
  /** The large face seen true: top (lies flat), front or right. Length is left-right (front-rear for `right`). */
  readonly face: Side
}

/** Long (left-right) × wide (front-rear) × high (up-down). */
export interface BlockStock extends StockBase {
  readonly kind: 'block'
  readonly length: Size
  readonly width: Size
  readonly height: Size
}

export interface AngleStock extends StockBase {
  readonly kind: 'angle'
  /** Rolled: sharp heel, toe radius. Formed: heel = inside radius + thickness. Machined: as drawn. Absent: a mark asks. */
  readonly make?: 'rolled' | 'formed' | 'machined'
  readonly thickness: Size
  readonly insideRadius?: Size
  readonly toeRadius?: Size
  readonly uprightHeight: Size
  /** Where the upright stands. The base runs from there toward the opposite side. */
  readonly uprightAt: 'rear' | 'front' | 'left' | 'right'
  readonly baseDepth: Size
  readonly length: Size
}

export interface ChannelStock extends StockBase {
  readonly kind: 'channel' | 'tee'
  /** Channel: web height and flange width; tee: flange width and stem height. Sharp, uniform thickness. */
  readonly height: Size
  readonly width: Size
  readonly thickness: Size
  readonly length: Size
  readonly lie: Lie
}

export interface FlatStock extends StockBase {
  readonly kind: 'flat'
  readonly width: Size
  readonly thickness: Size
  readonly length: Size
  readonly face: Side
}

export interface RoundStock extends StockBase {
  readonly kind: 'bar'
  readonly diameter: Size
  readonly length: Size
  readonly lie: Lie
}

export interface TubeStock extends StockBase {
  readonly kind: 'tube'
  readonly outside: Size
  readonly inside?: Size
  readonly wall?: Size
  readonly length: Size
  readonly lie: Lie
}

export interface DiscStock extends StockBase {
  readonly kind: 'disc'
  readonly diameter: Size
  readonly thickness: Size
  /** The side the outer (main) face looks to: front by default. */
  readonly face: Side
}

/** A taper by its rate and one diameter: the other follows from the length. */
export interface Taper {
  /** The whole angle of the cone. */
  readonly rate: Angle
  /** Which end the step's diameter is. */
  readonly given: 'large' | 'small'
  /** The end of the axis that it narrows toward; absent: right, rear or top. */
  readonly toward?: Side
}

/** One step of a turned profile. */
export interface TurnedStep {
  readonly name: Name
  /** Of a threaded step its major diameter, from the designation. */
  readonly diameter: Size
  /** Designation of an outside thread over the whole step: `M20 × 1.5 - 6g`, `3/4-16 UNF-2A`. */
  readonly thread?: Words
  /** Diameter at the far end of a taper. */
  readonly endDiameter?: Size
  /** `tapered 1:10`; with an end diameter too, the one says the other again. */
  readonly taper?: Taper
  /** `28 long`: own length; `to 64`: length from the datum face. */
  readonly length: { readonly kind: 'long' | 'to'; readonly size: Size }
  readonly span: Span
}

export interface TurnedStock extends StockBase {
  readonly kind: 'turned'
  readonly lie: Lie
  /** `lengths from collar left face`: the face that `to` lengths count from; absent: the left end. */
  readonly datum?: Name
  /** From left to right. */
  readonly steps: readonly TurnedStep[]
}

/** One move of a closed outline, in the plane of its face: right/left and up/down as drawn. */
export type OutlineMove =
  | { readonly kind: 'by'; readonly way: 'right' | 'left' | 'up' | 'down'; readonly size: Size; readonly span: Span }
  /** Line to a point counted from the start: across (right +), up (+). */
  | { readonly kind: 'to'; readonly across: Size; readonly up: Size; readonly span: Span }
  /** Line by a slope: so far across and so far up, signed by the words. */
  | {
      readonly kind: 'slope'
      readonly across: Size
      readonly acrossWay: 'right' | 'left'
      readonly up: Size
      readonly upWay: 'up' | 'down'
      readonly span: Span
    }
  /** Line by a slope: so far one way, leaning toward the other by an angle from that way, below 90°. */
  | {
      readonly kind: 'lean'
      readonly way: 'right' | 'left' | 'up' | 'down'
      readonly size: Size
      readonly toward: 'right' | 'left' | 'up' | 'down'
      readonly angle: Angle
      readonly span: Span
    }
  /** Arc of the radius to a point counted from the start; turns left (ccw) or right (cw). */
  | {
      readonly kind: 'arc'
      readonly radius: Size
      readonly across: Size
      readonly up: Size
      readonly turn: 'left' | 'right'
      readonly span: Span
    }
  /** Arc that runs on smoothly from the side before, by its radius and its own length. */
  | {
      readonly kind: 'arc by length'
      readonly radius: Size
      readonly length: Size
      readonly turn: 'left' | 'right'
      readonly span: Span
    }
  | { readonly kind: 'close'; readonly span: Span }

export interface OutlineStock extends StockBase {
  readonly kind: 'outline'
  readonly thickness: Size
  readonly face: Side
  readonly moves: readonly OutlineMove[]
}

export type Stock =
  | PlateStock
  | BlockStock
  | AngleStock
  | ChannelStock
  | FlatStock
  | RoundStock
  | TubeStock
  | DiscStock
  | TurnedStock
  | OutlineStock
