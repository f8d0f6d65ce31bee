import type { Span } from '../../brief/span.ts'

/** How a size scatters between its limits when many parts are made. */
export type Distribution = 'normal' | 'uniform' | 'triangular'

/** One toleranced size in a loop. All links of a stack are in one unit. */
export interface Link {
  readonly name: string
  readonly nominal: number
  /** Deviations from the nominal: `upper` ≥ `lower`. */
  readonly upper: number
  readonly lower: number
  /**
   * Change of the result for a change of 1 in this size. +1 for a link walked along its own direction, −1 against it,
   * other values for angles, slopes and radii.
   */
  readonly sensitivity: number
  /** Default `normal`. */
  readonly distribution?: Distribution
  /** Standard deviations from the middle to a limit, for `normal`; 3 unless the process is known to be better or worse. */
  readonly sigmas?: number
  readonly span?: Span
}

/** A link of ± tolerance. */
export function plusMinus(name: string, nominal: number, tolerance: number, sensitivity = 1): Link {
  return { name, nominal, upper: tolerance, lower: -tolerance, sensitivity }
}

/** A link given by its limits; the middle serves as nominal. */
export function fromLimits(name: string, max: number, min: number, sensitivity = 1): Link {
  const middle = (max + min) / 2
  return { name, nominal: middle, upper: max - middle, lower: min - middle, sensitivity }
}

/** Middle of the tolerance: what a centred process makes on average. */
export function middleOf(link: Link): number {
  return link.nominal + (link.upper + link.lower) / 2
}

/** Half the width of the tolerance. */
export function halfWidth(link: Link): number {
  return (link.upper - link.lower) / 2
}

/** Standard deviation by the link's distribution: normal half/k, uniform half/√3, triangular half/√6. */
export function deviationOf(link: Link): number {
  const half = halfWidth(link)
  if (link.distribution === 'uniform') return half / Math.sqrt(3)
  return link.distribution === 'triangular' ? half / Math.sqrt(6) : half / (link.sigmas ?? 3)
}
