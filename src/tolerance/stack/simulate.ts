import { deviationOf, halfWidth, type Link } from './link.ts'
import { addNormal, addTriangular, addUniform, blockSize, stream } from './random.ts'
import { type Requirement, stack } from './stack.ts'

export interface SimulationOptions {
  /** Number of assemblies; at least 1. */
  readonly samples: number
  /** The same seed gives the same outcome. */
  readonly seed: number
  readonly requirement?: Requirement
  /** Bars of the histogram for a chart; default 60. */
  readonly bars?: number
  /** Keep every result, for tests and further statistics. */
  readonly keep?: boolean
  /** Told now and then how many are done. */
  readonly progress?: (done: number) => void
}

export interface Histogram {
  readonly from: number
  readonly to: number
  readonly counts: readonly number[]
}

export interface Simulation {
  readonly samples: number
  readonly mean: number
  readonly deviation: number
  readonly min: number
  readonly max: number
  /** Results below and above the requirement, as shares of all. */
  readonly below: number
  readonly above: number
  readonly histogram: Histogram
  /** Result below which the share p of all results lies. */
  readonly quantile: (p: number) => number
  /** Empty unless kept. */
  readonly results: Float64Array
}

/** Divisible by every sensible number of bars; fine enough for quantiles to a thousandth of the deviation. */
const fine = 7680

/**
 * Monte Carlo simulation of a linear stack: each link scatters about the middle of its tolerance by its own distribution.
 * Normal links are not cut off at their limits. Fast enough to run at a keystroke, and pure, so that it may run in a worker.
 */
export function simulate(links: readonly Link[], options: SimulationOptions): Simulation {
  const { samples, seed, requirement = {}, bars = 60, keep = false } = options
  const { middle, worstCase, deviation } = stack(links)
  const normal = links.some((link) => (link.distribution ?? 'normal') === 'normal')
  const reach = normal
    ? Math.max(6.5 * deviation, Number.MIN_VALUE)
    : Math.max((worstCase.max - worstCase.min) / 2, Number.MIN_VALUE)
  const bins = Math.round(fine / bars) * bars
  const counts = new Uint32Array(bins)
  const perBin = bins / (2 * reach)
  const results = new Float64Array(keep ? samples : 0)
  const part = new Float64Array(blockSize)
  const streams = links.map((_, i) => stream(seed, i))
  const low = (requirement.min ?? Number.NEGATIVE_INFINITY) - middle
  const high = (requirement.max ?? Number.POSITIVE_INFINITY) - middle
  let sum = 0
  let squares = 0
  let min = Number.POSITIVE_INFINITY
  let max = Number.NEGATIVE_INFINITY
  let below = 0
  let above = 0
  for (let done = 0; done < samples; done += blockSize) {
    if (done % (blockSize * 256) === 0) options.progress?.(done)
    const count = Math.min(blockSize, samples - done)
    part.fill(0)
    for (let i = 0; i < links.length; i++) add(part, count, links[i]!, streams[i]!)
    for (let i = 0; i < count; i++) {
      const value = part[i]!
      sum += value
      squares += value * value
      if (value < min) min = value
      if (value > max) max = value
      if (value < low) below++
      else if (value > high) above++
      const bin = ((value + reach) * perBin) | 0
      counts[bin < 0 ? 0 : bin >= bins ? bins - 1 : bin]!++
    }
    if (keep) for (let i = 0; i < count; i++) results[done + i] = middle + part[i]!
  }
  const mean = sum / samples
  const from = middle - reach
  return {
    samples,
    mean: middle + mean,
    deviation: Math.sqrt(Math.max(0, (squares - samples * mean * mean) / Math.max(1, samples - 1))),
    min: middle + min,
    max: middle + max,
    below: below / samples,
    above: above / samples,
    histogram: { from, to: middle + reach, counts: joined(counts, bars) },
    quantile: (p) => from + quantileBin(counts, p * samples) / perBin,
    results,
  }
}

function add(into: Float64Array, count: number, link: Link, state: Uint32Array): void {
  const scale = link.sensitivity
  if (link.distribution === 'uniform') addUniform(into, count, scale * halfWidth(link), state)
  else if (link.distribution === 'triangular') addTriangular(into, count, scale * halfWidth(link), state)
  else addNormal(into, count, scale * deviationOf(link), state)
}

function joined(counts: Uint32Array, bars: number): number[] {
  const each = counts.length / bars
  return Array.from({ length: bars }, (_, i) =>
    counts.subarray(i * each, (i + 1) * each).reduce((total, count) => total + count, 0),
  )
}

/** Place, in bins, below which `wanted` results lie, straight between the ends of a bin. */
function quantileBin(counts: Uint32Array, wanted: number): number {
  let total = 0
  for (let i = 0; i < counts.length; i++) {
    const count = counts[i]!
    if (count > 0 && total + count >= wanted) return i + (wanted - total) / count
    total += count
  }
  return counts.length
}
