import { deviationOf, halfWidth, type Link, middleOf } from './link.ts'

/** What the result of a stack must keep to. */
export interface Requirement {
  readonly min?: number
  readonly max?: number
}

export interface Range {
  readonly min: number
  readonly max: number
}

/** The part that one link has in the scatter of the result. */
export interface Contribution {
  readonly link: Link
  /** Half width that this link alone gives the result. */
  readonly half: number
  /** Share of the worst-case width, 0 to 1. */
  readonly worstShare: number
  /** Share of the variance, 0 to 1: what counts for root-sum-square and for the simulation. */
  readonly varianceShare: number
}

export interface Stack {
  /** Sum of the nominals, each times its sensitivity. */
  readonly nominal: number
  /** Sum of the middles of tolerance, which is the middle of both ranges. */
  readonly middle: number
  readonly worstCase: Range
  /** Root-sum-square of the half widths about the middle: every limit at the same number of standard deviations. */
  readonly rootSumSquare: Range
  /** Standard deviation of the result by the links' distributions. */
  readonly deviation: number
  /** Greatest share of variance first. */
  readonly contributions: readonly Contribution[]
}

/** Worst case, root-sum-square and contributions of a linear stack. Exact for sensitivities that do not change over the tolerance. */
export function stack(links: readonly Link[]): Stack {
  const sum = (part: (link: Link) => number) => links.reduce((total, link) => total + part(link), 0)
  const middle = sum((link) => link.sensitivity * middleOf(link))
  const worst = sum((link) => Math.abs(link.sensitivity) * halfWidth(link))
  const root = Math.sqrt(sum((link) => (link.sensitivity * halfWidth(link)) ** 2))
  const variance = sum((link) => (link.sensitivity * deviationOf(link)) ** 2)
  const share = (part: number, whole: number) => (whole === 0 ? 0 : part / whole)
  const contributions = links
    .map((link) => {
      const half = Math.abs(link.sensitivity) * halfWidth(link)
      return {
        link,
        half,
        worstShare: share(half, worst),
        varianceShare: share((link.sensitivity * deviationOf(link)) ** 2, variance),
      }
    })
    .sort((a, b) => b.varianceShare - a.varianceShare)
  return {
    nominal: sum((link) => link.sensitivity * link.nominal),
    middle,
    worstCase: { min: middle - worst, max: middle + worst },
    rootSumSquare: { min: middle - root, max: middle + root },
    deviation: Math.sqrt(variance),
    contributions,
  }
}

/** Does a range keep to a requirement? A hair of 1e-9 is forgiven to binary fractions. */
export function keeps(range: Range, wanted: Requirement): boolean {
  return (
    range.min >= (wanted.min ?? Number.NEGATIVE_INFINITY) - 1e-9 &&
    range.max <= (wanted.max ?? Number.POSITIVE_INFINITY) + 1e-9
  )
}
