import { beforeAll, describe, expect, it } from 'vitest'
import { lengthOf } from '../../../src/geometry/evaluate.ts'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import { type OcctKernel, openKernel } from '../../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../../src/kernel/shapes.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import type { ExactCurve, ExactView } from '../../../src/views/view.ts'
import { AnalyticSight } from './analytic-solid.ts'
import { moved, movedRecipe, throughAll, together } from './assembly.ts'
import { BY_FORMULA, BY_MESH, meshOf } from './compared.ts'
import { judge, Sight } from './mesh-arbiter.ts'
import { frameAlong, PRINCIPAL, randomSolid, seeded } from './random-solids.ts'
import { loft } from './spline-solids.ts'

// Solids that cut through each other, as a file's assembly may hold. Source of the checks: descriptive geometry worked by
// hand, and lines of sight through each solid's own recipe. The curve in which two solids enter each other is no edge of
// either and is not drawn.

let kernel: OcctKernel
let make: Shapes

beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

const drawn = (view: ExactView, visible?: boolean) =>
  view.curves
    .filter((c) => c.kind !== 'smooth' && (visible === undefined || c.visible === visible))
    .reduce((sum, c) => sum + lengthOf(c.curve), 0)

describe('solids that cut through each other', () => {
  it('hides a bar where it enters a block’s top, and shows it down to there', () => {
    const block = kernel.body(make.box([-10, -10, -5], [10, 10, 5]))
    const bar = kernel.body(make.box([-1, -2, -20], [3, 2, 20]))
    const view = exactView(together([block, bar]), frameAlong([1, -1, 1]))
    // three upright edges of the bar are turned to the eye; each shows the 15 above the block, foreshortened by √(2/3)
    const upright = view.curves.flatMap((c) => (c.visible && c.curve.kind === 'line' ? [c.curve] : []))
    const lengths = upright
      .filter((l) => Math.abs(l.a[0] - l.b[0]) < 1e-9 && Math.max(l.a[1], l.b[1]) > 15 * Math.sqrt(2 / 3))
      .map((l) => lengthOf(l))
    expect(lengths).toHaveLength(3)
    for (const l of lengths) expect(l).toBeCloseTo(15 * Math.sqrt(2 / 3), 9)
  })

  it('ends a cylinder’s outline on a sphere where their equations say so', () => {
    const ball = kernel.body(make.sphere([0, 0, 0], 10))
    const rod = kernel.body(make.cylinder([0, 0, 0], [0, 0, 1], 6, 30))
    const view = exactView(together([ball, rod]), frameAlong([0, -1, 1]))
    // outlines of the rod at x = ±6, y = 0 leave the ball at z = 8; seen from 45° above z is foreshortened by 1/√2
    const sides = view.curves.flatMap((c) =>
      c.visible && c.curve.kind === 'line' && Math.abs(Math.abs(c.curve.a[0]) - 6) < 1e-9 ? [c.curve] : [],
    )
    expect(sides).toHaveLength(2)
    for (const side of sides) {
      expect(Math.min(side.a[1], side.b[1])).toBeCloseTo(8 / Math.SQRT2, 9)
      expect(Math.max(side.a[1], side.b[1])).toBeCloseTo(30 / Math.SQRT2, 9)
    }
  })

  it('lets solids that only touch be', () => {
    const lower = kernel.body(make.box([-10, -10, -5], [10, 10, 5]))
    const upper = kernel.body(make.box([-5, -5, 5], [5, 5, 9]))
    const both = exactView(together([lower, upper]), frameAlong([1, -1, 1]))
    const fused = exactView(
      kernel.body(make.fuse(make.box([-10, -10, -5], [10, 10, 5]), make.box([-5, -5, 5], [5, 5, 9]))),
      frameAlong([1, -1, 1]),
    )
    expect(drawn(both, true)).toBeCloseTo(drawn(fused, true), 9)
  })

  const kinds = ['box', 'cylinder', 'cone', 'sphere', 'torus']
  it.each([
    [1, 2],
    [3, 4],
    [5, 8],
    [6, 7],
    [9, 10],
    [11, 12],
    [13, 14],
    [15, 16],
  ])('random solids %i and %i are drawn as lines of sight through both see them', (a, b) => {
    const made = [a, b].map((seed) => randomSolid(make, seed, kinds)!)
    // the second is moved by odd lengths, so that no edge of it lies on one of the first
    const offs: readonly Vec3[] = [
      [0, 0, 0],
      [0.137, 0.291, -0.173],
    ]
    const bodies = made.map((m, i) => moved(kernel.body(m.solid), offs[i]!))
    const body = together(bodies)
    const random = seeded(a + 1e6)
    for (const frame of [PRINCIPAL.front, frameAlong([random() - 0.5, random() - 0.5, random() - 0.5])]) {
      const view = exactView(body, frame)
      const sight = throughAll(made.map((m, i) => new AnalyticSight(movedRecipe(m.recipe, offs[i]!), frame)))
      const { wrong, tried } = judge(sight, view.curves, 7, BY_FORMULA, true)
      expect(tried).toBeGreaterThan(50)
      expect(wrong).toEqual([])
      // nothing of either is lost: along an odd direction no two curves coincide. Ellipses and splines are measured by quadrature.
      if (frame === PRINCIPAL.front) continue
      const each = bodies.map((one) => exactView(one, frame))
      const straight = (c: ExactCurve) => c.curve.kind === 'line' || c.curve.kind === 'arc'
      for (const [exact, digits] of [
        [true, 6],
        [false, 2],
      ] as const) {
        const of = (v: ExactView) => drawn({ ...v, curves: v.curves.filter((c) => straight(c) === exact) })
        expect(of(view)).toBeCloseTo(of(each[0]!) + of(each[1]!), digits)
      }
    }
  })

  it('hides what enters a true spline surface', () => {
    const solids = [
      loft(
        kernel,
        [
          { centre: [0, 0, 0], major: 10, minor: 10 },
          { centre: [4, 1, 15], major: 6, minor: 5 },
          { centre: [0, 0, 30], major: 9, minor: 9 },
        ],
        false,
      ),
      make.box([-20, -3, 12], [20, 3, 17]),
      make.cylinder([2, -20, 8], [0, 1, 0], 3, 40),
    ]
    const body = together(solids.map((s) => kernel.body(s)))
    const meshes = solids.map((s) => meshOf(kernel, s, 0.005))
    for (const frame of [frameAlong([1, -1, 1]), frameAlong([0.3, -0.8, 0.45])]) {
      const view = exactView(body, frame)
      const { wrong, tried } = judge(throughAll(meshes.map((m) => new Sight(m, frame))), view.curves, 15, BY_MESH, true)
      expect(tried).toBeGreaterThan(100)
      expect(wrong).toEqual([])
    }
  })
})
