import type { Span } from './span.ts'

export type Unit = 'inch' | 'mm'

/** A plain number as it was typed. 2.5, 2.50 and 2-1/2 are three different statements. */
export interface Num {
  /** The digits as typed, without unit or symbol: `1-3/8`, `.281`, `2.50`. */
  readonly text: string
  readonly value: number
  readonly form: 'decimal' | 'fraction' | 'whole'
  /** Digits after the decimal sign; 0 for fractions and whole numbers. */
  readonly decimals: number
  readonly span: Span
}

/** What the brief says about how exact a size must be. Numbers are in the size's own unit. */
export type Tolerance =
  | { readonly kind: 'plus-minus'; readonly value: Num; readonly span: Span }
  /** Deviations with their signs, both in the digits and in the value: `+.002`, `-.000`. */
  | { readonly kind: 'unequal'; readonly upper: Num; readonly lower: Num; readonly span: Span }
  /** Limits: the size itself holds the number typed first. */
  | { readonly kind: 'limits'; readonly upper: Num; readonly lower: Num; readonly span: Span }
  /** ISO 286 symbol: H7, k6. */
  | { readonly kind: 'fit'; readonly symbol: string; readonly span: Span }
  /** Stock thickness, governed by the mill and not by the title block. */
  | { readonly kind: 'stock'; readonly span: Span }
  | { readonly kind: 'max' | 'min' | 'basic' | 'reference'; readonly span: Span }

/**
 * What a feature of size is said to keep of its form, beside what the practice takes for granted: `envelope` (Ⓔ, ISO
 * 14405-1) perfect form at maximum material; `independent` (Ⓘ, ASME Y14.5-2018 5.8.1) no such envelope.
 */
export interface FormRequirement {
  readonly kind: 'envelope' | 'independent'
  readonly span: Span
}

/** A length as the drafter stated it. */
export interface Size extends Num {
  /** Unit of `value`: the brief's own, or the one typed beside the number. */
  readonly unit: Unit
  /** True when the unit was typed beside the number (`25 mm` on an inch sheet). */
  readonly unitTyped: boolean
  /** The length in millimetres, the unit of everything past the brief. */
  readonly mm: number
  readonly tolerance?: Tolerance
  readonly formRule?: FormRequirement
  /** `?` was written: still to be measured. `value` is then a guess for layout only. */
  readonly unknown?: boolean
}

/** An angle in degrees, also where the brief says it by a rate: `value` is then worked out, `text` the rate. */
export interface Angle extends Num {
  readonly tolerance?: Tolerance
  /** Said by a rate: a cone's difference of diameters to its length, a flat side's rise to its run. */
  readonly rate?: 'taper' | 'slope'
}

/** A count in front of a callout: `4X`. */
export interface Count {
  readonly value: number
  readonly span: Span
}
