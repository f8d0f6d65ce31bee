import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rootsBernstein, timesBernstein, valueBernstein } from '../../src/geometry/bernstein.ts'
import { rootsDegree1, rootsDegree2 } from '../../src/geometry/trig-roots.ts'

// Source of the checks: the definition of a root, and sums of angles (school trigonometry).

describe('roots of trigonometric polynomials', () => {
  it('solves 3 cos t + 4 sin t = 2.5 at 53.13° ± 60°', () => {
    const [a, b] = rootsDegree1(3, 4, 2.5)!
    const peak = Math.atan2(4, 3)
    expect(a).toBeCloseTo(peak - Math.PI / 3, 14)
    expect(b).toBeCloseTo(peak + Math.PI / 3, 14)
  })

  it('meets a tangency once and nothing beyond it', () => {
    const [a, b] = rootsDegree1(0, 2, 2)!
    expect(a).toBe(b)
    expect(a).toBeCloseTo(Math.PI / 2, 14)
    expect(rootsDegree1(0, 2, 2.001)).toBeUndefined()
  })

  it('finds the four roots of cos 2t = 0 and the double roots of 1 - cos 2t', () => {
    expect(rootsDegree2(0, 0, 0, 1, 0, 0).map((t) => t / Math.PI)).toEqual([
      expect.closeTo(0.25, 14),
      expect.closeTo(0.75, 14),
      expect.closeTo(1.25, 14),
      expect.closeTo(1.75, 14),
    ])
    const double = rootsDegree2(1, 0, 0, -1, 0, 1e-12)
    expect(double).toHaveLength(2)
    expect(Math.sin(double[0]!)).toBeCloseTo(0, 7)
    expect(Math.sin(double[1]!)).toBeCloseTo(0, 7)
  })

  it('leaves no sign change of a dense sampling unexplained', () => {
    const n = fc.double({ min: -3, max: 3, noNaN: true })
    fc.assert(
      fc.property(n, n, n, n, n, (c0, a1, b1, a2, b2) => {
        const f = (t: number) => c0 + a1 * Math.cos(t) + b1 * Math.sin(t) + a2 * Math.cos(2 * t) + b2 * Math.sin(2 * t)
        const roots = rootsDegree2(c0, a1, b1, a2, b2, 0)
        for (const t of roots) expect(Math.abs(f(t))).toBeLessThan(1e-12)
        const steps = 2000
        for (let i = 0; i < steps; i++) {
          const [a, b] = [(2 * Math.PI * i) / steps, (2 * Math.PI * (i + 1)) / steps]
          if (f(a) * f(b) >= 0 || Math.abs(f(a)) < 1e-12 || Math.abs(f(b)) < 1e-12) continue
          expect(roots.some((t) => t > a - 1e-12 && t < b + 1e-12)).toBe(true)
        }
      }),
      { numRuns: 60, seed: 3 },
    )
  })

  it('finds both roots of an even polynomial whose sines are rounding only, whatever their signs', () => {
    // c0 + a1 cos t + a2 cos 2t is a quadratic in cos t: its roots in closed form
    const [c0, a1, a2] = [10.425337154825467, 13.770117606687727, 2.4850223912309692]
    const c = (-a1 + Math.sqrt(a1 * a1 - 8 * a2 * (c0 - a2))) / (4 * a2)
    const rounding = fc.constantFrom(0, 1e-16, -1e-16, 9e-16, -9e-16)
    fc.assert(
      fc.property(rounding, rounding, fc.constantFrom(0, Math.PI / 2, Math.PI), (b1, b2, turn) => {
        const roots = rootsDegree2(
          c0,
          a1 * Math.cos(turn) + b1,
          a1 * Math.sin(turn) + b1,
          a2 * Math.cos(2 * turn) + b2,
          a2 * Math.sin(2 * turn) + b2,
          1e-9,
        )
        expect(roots).toHaveLength(2)
        for (const t of roots) expect(Math.cos(t - turn)).toBeCloseTo(c, 9)
      }),
    )
  })
})

describe('polynomials in Bernstein form', () => {
  it('multiplies (1 + t)(2 - t) to 2 + t - t²', () => {
    const product = timesBernstein([1, 2], [2, 1])
    for (const t of [0, 0.3, 0.7, 1]) expect(valueBernstein(product, t)).toBeCloseTo(2 + t - t * t, 14)
  })

  it('finds the roots a polynomial was made of', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 39 }), { minLength: 1, maxLength: 5 }), (steps) => {
        const wanted = steps.map((s) => s / 40).sort((a, b) => a - b)
        const c = wanted.reduce<number[]>((p, r) => timesBernstein(p, [-r, 1 - r]), [1])
        const found = rootsBernstein(c, 0)
        expect(found).toHaveLength(wanted.length)
        found.forEach((t, i) => {
          expect(t).toBeCloseTo(wanted[i]!, 9)
        })
      }),
      { numRuns: 100, seed: 5 },
    )
  })
})
