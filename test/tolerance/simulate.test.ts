import * as statistics from 'simple-statistics'
import { describe, expect, test } from 'vitest'
import { type Distribution, type Link, plusMinus } from '../../src/tolerance/stack/link.ts'
import { addNormal, addUniform, blockSize, stream } from '../../src/tolerance/stack/random.ts'
import { simulate } from '../../src/tolerance/stack/simulate.ts'
import { stack } from '../../src/tolerance/stack/stack.ts'

// Bounds: five standard errors of the estimate, so that a right simulation fails once in two million runs; the seeds are
// fixed, so it does not fail at random.
const errors = 5

function loop(distribution: Distribution): Link[] {
  return Array.from({ length: 10 }, (_, i) => ({
    ...plusMinus(`size ${i}`, 10 + i, 0.02 + 0.01 * i, i % 2 === 0 ? 1 : -0.5 - 0.1 * i),
    distribution,
  }))
}

describe('against the closed form of a linear stack', () => {
  test.each(['normal', 'uniform', 'triangular'] as const)(
    '%s: mean and deviation, ten links, a million samples',
    (distribution) => {
      const links = loop(distribution)
      const exact = stack(links)
      const found = simulate(links, { samples: 1_000_000, seed: 20 })
      expect(Math.abs(found.mean - exact.middle)).toBeLessThan((errors * exact.deviation) / 1000)
      expect(Math.abs(found.deviation / exact.deviation - 1)).toBeLessThan(errors / Math.sqrt(2_000_000))
      if (distribution !== 'normal') {
        expect(found.min).toBeGreaterThanOrEqual(exact.worstCase.min)
        expect(found.max).toBeLessThanOrEqual(exact.worstCase.max)
      }
      expect(found.histogram.counts.reduce((a, b) => a + b)).toBe(1_000_000)
    },
  )
  // Irwin–Hall: sum of three uniforms on 0 … 1 exceeds 3 − t with probability t³/6 for t ≤ 1.
  test('tail of three uniform links', () => {
    const links = ['a', 'b', 'c'].map((name): Link => ({ ...plusMinus(name, 0.5, 0.5), distribution: 'uniform' }))
    for (const t of [0.2, 0.5, 1]) {
      const p = t ** 3 / 6
      const found = simulate(links, { samples: 1_000_000, seed: 3, requirement: { min: t, max: 3 - t } })
      const bound = errors * Math.sqrt((p * (1 - p)) / 1_000_000)
      expect(Math.abs(found.above - p)).toBeLessThan(bound)
      expect(Math.abs(found.below - p)).toBeLessThan(bound)
    }
  })
  // Triangular on −1 … 1: P(x > t) = (1 − t)²/2.
  test('tail of one triangular link', () => {
    const found = simulate([{ ...plusMinus('a', 0, 1), distribution: 'triangular' }], {
      samples: 1_000_000,
      seed: 4,
      requirement: { max: 0.8 },
    })
    expect(Math.abs(found.above - 0.02)).toBeLessThan(errors * Math.sqrt((0.02 * 0.98) / 1_000_000))
  })
  test('unequal tolerances are centred on their middle', () => {
    const found = simulate(
      [{ name: 'a', nominal: 10, upper: 0.3, lower: -0.1, sensitivity: -1, distribution: 'uniform' }],
      {
        samples: 200_000,
        seed: 5,
      },
    )
    expect(found.mean).toBeCloseTo(-10.1, 2)
    expect(found.max).toBeLessThanOrEqual(-9.9)
  })
})

describe('against the package simple-statistics', () => {
  const links: Link[] = [
    { ...plusMinus('a', 5, 0.3), distribution: 'normal' },
    { ...plusMinus('b', 2, 0.2, -1), distribution: 'uniform' },
    { ...plusMinus('c', 1, 0.1, -1), distribution: 'triangular' },
  ]
  const found = simulate(links, { samples: 200_000, seed: 6, keep: true, requirement: { min: 1.8, max: 2.2 } })
  const results = [...found.results]
  test('mean, deviation, extremes and shares outside are those of the results', () => {
    expect(found.mean).toBeCloseTo(statistics.mean(results), 9)
    expect(found.deviation).toBeCloseTo(statistics.sampleStandardDeviation(results), 9)
    expect([found.min, found.max]).toEqual(statistics.extent(results))
    expect(found.below).toBe(results.filter((value) => value < 1.8).length / results.length)
    expect(found.above).toBe(results.filter((value) => value > 2.2).length / results.length)
  })
  test('quantiles', () => {
    for (const p of [0.00135, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99865]) {
      expect(Math.abs(found.quantile(p) - statistics.quantile(results, p)), `${p}`).toBeLessThan(
        0.003 * found.deviation + 1e-4,
      )
    }
  })
  test('the histogram of one bar is the count between its ends', () => {
    const { from, to, counts } = found.histogram
    const width = (to - from) / counts.length
    const i = counts.length / 2
    const inside = results.filter((value) => value >= from + i * width && value < from + (i + 1) * width).length
    expect(Math.abs(inside - counts[i]!)).toBeLessThanOrEqual(2)
  })
  test('normal links follow the normal distribution out to four deviations', () => {
    const one = simulate([{ name: 'a', nominal: 0, upper: 3, lower: -3, sensitivity: 1 }], {
      samples: 2_000_000,
      seed: 7,
      keep: true,
    })
    const sorted = one.results.sort()
    for (const z of [-4, -3.5, -3, -2, -1, -0.5, 0, 0.5, 1, 2, 3, 3.5, 4]) {
      const p = (1 + statistics.errorFunction(z / Math.SQRT2)) / 2
      const share = lowerBound(sorted, z) / sorted.length
      // The package's error function is good to 2e-7; its table of the normal distribution ends at 3.09.
      expect(Math.abs(share - p), `${z}`).toBeLessThan(errors * Math.sqrt((p * (1 - p)) / sorted.length) + 2e-7)
    }
    expect(Math.abs(statistics.sampleSkewness([...sorted.slice(0)].filter((_, i) => i % 4 === 0)))).toBeLessThan(0.02)
  })
  test('streams of different links are unrelated', () => {
    const a = new Float64Array(blockSize)
    const b = new Float64Array(blockSize)
    addUniform(a, blockSize, 1, stream(1, 0))
    addUniform(b, blockSize, 1, stream(1, 1))
    expect(Math.abs(statistics.sampleCorrelation([...a], [...b]))).toBeLessThan(errors / Math.sqrt(blockSize))
    const c = new Float64Array(blockSize)
    addNormal(c, blockSize, 1, stream(2, 0))
    expect(Math.abs(statistics.sampleCorrelation([...a], [...c]))).toBeLessThan(errors / Math.sqrt(blockSize))
    expect(Math.abs(statistics.sampleCorrelation([...a].slice(1), [...a].slice(0, -1)))).toBeLessThan(
      errors / Math.sqrt(blockSize),
    )
  })
})

describe('seeds', () => {
  test('the same seed gives the same outcome, another seed another', () => {
    const links = loop('normal')
    const run = (seed: number) => simulate(links, { samples: 10_000, seed, keep: true }).results
    expect(run(1)).toEqual(run(1))
    expect(run(1)).not.toEqual(run(2))
  })
  test('a link of no width adds nothing', () => {
    const found = simulate([plusMinus('a', 3, 0)], { samples: 100, seed: 1 })
    expect([found.mean, found.deviation, found.min, found.max]).toEqual([3, 0, 3, 3])
  })
})

function lowerBound(sorted: Float64Array, value: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle]! < value) low = middle + 1
    else high = middle
  }
  return low
}
