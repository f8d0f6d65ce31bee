import { describe, expect, it } from 'vitest'
import { rootsBernstein, timesBernstein } from '../../../src/geometry/bernstein.ts'
import { chainAt } from '../../../src/geometry/bezier-chain.ts'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import { curveThroughSheet, MOST_PAIRS } from '../../../src/views/exact/curve-sheet.ts'
import { fitChain, MOST_PIECES as MOST_FITTED } from '../../../src/views/exact/fit-chain.ts'
import type { Path3 } from '../../../src/views/exact/path3.ts'
import { SplineSheet } from '../../../src/views/exact/spline-face.ts'
import { MOST_CELLS, outlineTraces } from '../../../src/views/exact/spline-outlines.ts'
import { bezierPatches, type Patch, patchAt } from '../../../src/views/exact/spline-patches.ts'
import { MOST_PIECES, SheetSight } from '../../../src/views/exact/spline-sight.ts'
import type { SplineSurface } from '../../../src/views/exact/spline-surface.ts'
import { seeded } from './random-solids.ts'

// Every search that refines has a bound. Source of the checks: closed formulas beside each; surfaces and curves chosen so
// that refining them would never end of itself.

const single = (n: number) => [...Array.from({ length: n + 1 }, () => 0), ...Array.from({ length: n + 1 }, () => 1)]

/** One patch of degree p by q with poles by their place in the net. */
function surface(p: number, q: number, pole: (i: number, j: number) => Vec3): SplineSurface {
  const poles = Array.from({ length: p + 1 }, (_, i) => Array.from({ length: q + 1 }, (_, j) => pole(i, j)))
  return { kind: 'spline', degreeU: p, degreeV: q, knotsU: single(p), knotsV: single(q), poles }
}

/** Sight along z, x to the right, y up. */
const view = { right: [1, 0, 0], up: [0, 1, 0], toViewer: [0, 0, 1] } as const

/** cos between the surface's normal and the sight. */
function facing(patch: Patch, u: number, v: number): number {
  const s = patchAt(patch, u, v)
  const n = [s.u[1] * s.v[2] - s.u[2] * s.v[1], s.u[2] * s.v[0] - s.u[0] * s.v[2], s.u[0] * s.v[1] - s.u[1] * s.v[0]]
  return n[2]! / Math.hypot(...n)
}

describe('bounds of refinement', () => {
  it('finds the outlines of a wild surface within the cells allowed', () => {
    const random = seeded(5)
    const patches = bezierPatches(surface(9, 9, () => [random(), random(), random()]))
    let cells = 0
    const traces = outlineTraces(patches, () => cells++)
    expect(cells).toBeLessThanOrEqual(MOST_CELLS)
    expect(traces.length).toBeGreaterThan(0)
    for (const { places } of traces)
      for (const [u, v] of places) expect(Math.abs(facing(patches[0]!, u, v))).toBeLessThan(1e-6)
  })

  it('sees no outline where the surface only comes to a halt: x = u, y = v³', () => {
    // y = v³ on [-1, 1] has the poles -1, 1, -1, 1
    const patches = bezierPatches(surface(1, 3, (i, j) => [i, j % 2 ? 1 : -1, j]))
    let cells = 0
    expect(outlineTraces(patches, () => cells++)).toEqual([])
    expect(cells).toBeLessThanOrEqual(MOST_CELLS)
  })

  it('gives no outline of a surface seen edge-on but for rounding', () => {
    const random = seeded(7)
    const noise = () => 1e-13 * (random() - 0.5)
    const patches = bezierPatches(surface(7, 7, (i, j) => [i + noise(), 0.5 * i + noise(), j + noise()]))
    let cells = 0
    expect(outlineTraces(patches, () => cells++)).toEqual([])
    expect(cells).toBe(0)
  })

  it('ends a line of sight that runs within the surface', () => {
    // z runs along v at u = 0, which is seen end-on: a hyperbolic paraboloid raised in degree
    const sheet = new SplineSheet(surface(5, 5, (i, j) => [i / 5, (i * j) / 25, j / 5]))
    const looked = { pieces: 0 }
    new SheetSight(sheet, view).hits(0, 0, looked)
    expect(looked.pieces).toBeLessThanOrEqual(MOST_PIECES)
    // beside it the surface x = u, y = u v is met once, at v = y / x
    const hits = new SheetSight(sheet, view).hits(0.3, 0.12)
    expect(hits).toHaveLength(1)
    expect(hits[0]!.depth).toBeCloseTo(0.4, 10)
  })

  it('finds where a curve passes through a surface, and ends where it runs within it', () => {
    // y = x z for x, z in [0, 1]
    const sheet = new SplineSheet(surface(5, 5, (i, j) => [i / 5, (i * j) / 25, j / 5]))
    const met = (path: Path3) => {
      const out: number[] = []
      const looked = { pairs: 0 }
      curveThroughSheet(path, sheet, 2, out, looked)
      expect(looked.pairs).toBeLessThanOrEqual(MOST_PAIRS)
      return out.sort((a, b) => a - b)
    }
    const segment = (a: Vec3, b: Vec3): Path3 => ({ kind: 'segment', a, b, t0: 0, t1: 1 })
    // y = 0.3 · 0.4 = 0.12 on the way from -1 to 1
    expect(met(segment([0.3, -1, 0.4], [0.3, 1, 0.4]))).toEqual([expect.closeTo(1.12 / 2, 10)])
    expect(met(segment([1.3, -1, 0.4], [1.3, 1, 0.4]))).toEqual([])
    // round a point of the surface in the plane x = 0.3: there y = 0.3 z, tan t = 1 / 0.3
    const round = {
      kind: 'conic',
      o: [0.3, 0.12, 0.4],
      u: [0, 0.1, 0],
      v: [0, 0, 0.1],
      t0: 0,
      t1: 2 * Math.PI,
    } as const
    const t = Math.atan2(1, 0.3)
    expect(met(round)).toEqual([expect.closeTo(t, 10), expect.closeTo(t + Math.PI, 10)])
    // a ruling lies in the surface throughout: what is told of it matters not, but it ends
    met(segment([0.3, 0, 0], [0.3, 0.3, 1]))
  })

  it('follows a helix within the bound, and a curve known worse than that by no more pieces than allowed', () => {
    const helix = (t: number): Vec3 => [10 * Math.cos(t), 10 * Math.sin(t), 3 * t]
    const chain = fitChain(helix, 0, 9, 1e-9)
    const p = [0, 0, 0]
    for (let i = 0; i <= 500; i++) {
      const t = (9 * i) / 500
      chainAt(chain, t, p)
      const q = helix(t)
      expect(Math.hypot(p[0]! - q[0], p[1]! - q[1], p[2]! - q[2])).toBeLessThan(2e-9)
    }
    expect(chain.breaks.length - 1).toBeLessThan(40)
    const random = seeded(3)
    let asked = 0
    const rough = fitChain(
      (t) => {
        asked++
        return [t, 1e-3 * random(), 0]
      },
      0,
      9,
      1e-9,
    )
    expect(rough.breaks.length - 1).toBeLessThanOrEqual(MOST_FITTED)
    // eight places and seven trials a piece, and no more than twice the pieces kept were tried
    expect(asked).toBeLessThanOrEqual(15 * 2 * MOST_FITTED)
  })

  it('finds a root of order five once or so, not in every cell that rounding leaves open', () => {
    const factor = [-0.3, 0.7]
    let power = factor
    for (let i = 1; i < 5; i++) power = timesBernstein(power, factor)
    const roots = rootsBernstein(power, 0)
    expect(roots.length).toBeGreaterThan(0)
    expect(roots.length).toBeLessThan(20)
    // rounding of 1e-15 moves a root of order five by its fifth root
    for (const t of roots) expect(Math.abs(t - 0.3)).toBeLessThan(5e-3)
  })
})
