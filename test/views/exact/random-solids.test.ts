import { beforeAll, describe, expect, it } from 'vitest'
import { lengthOf } from '../../../src/geometry/evaluate.ts'
import { type OcctKernel, openKernel } from '../../../src/kernel/open.ts'
import { shapes } from '../../../src/kernel/shapes.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import { compared, meshOf, shareWrong } from './compared.ts'
import { flaws } from './flaws.ts'
import { frameAlong, PRINCIPAL, randomSolid, seeded, turnedSolid } from './random-solids.ts'

// Reference: the kernel's own exact hidden-line algorithm (covered lengths, 1e-6 of the part). Where the two differ, a
// dense ray test decides, in closed form from the primitives' equations, which shares nothing with either.

/** Triangles of the kernel's solids lie no further than this from the surface, mm. */
const SAG = 0.005

let kernel: OcctKernel

beforeAll(async () => {
  kernel = await openKernel()
})

describe('the exact view against the kernel on random solids', () => {
  const check = (seed: number, kinds: readonly string[]) => {
    const made = randomSolid(shapes(kernel), seed, kinds)
    if (!made) throw new Error(`the kernel made no solid of seed ${seed}: choose another`)
    const body = kernel.body(made.solid)
    const random = seeded(seed + 1e6)
    for (const frame of [
      Object.values(PRINCIPAL)[seed % 6]!,
      frameAlong([1, -1, 1]),
      frameAlong([random() - 0.5, random() - 0.5, random() - 0.5]),
    ]) {
      const c = compared(kernel, made.solid, body, frame, { recipe: made.recipe })
      expect(c.against, `${made.words.join('; ')}: lengths differ by ${c.difference} mm`).toEqual([])
    }
    kernel.free(made.solid)
  }

  const quadrics = ['box', 'cylinder', 'cone', 'sphere']
  it.each(Array.from({ length: 24 }, (_, i) => i + 3000))('seed %i: boxes, cylinders, cones, spheres', (seed) =>
    check(seed, quadrics),
  )

  // Kept because they once went wrong: a border round a sphere's axis (118), a border ending where angles jump (1046),
  // spline borders that hold an angle and its opposite (2000, 2017), a seam that is another face's border (10159), a knife
  // edge whose faces cross again (10299).
  it.each([118, 1046, 2000, 2017, 10159, 10299])('kept seed %i', (seed) => check(seed, quadrics))

  // Kept because ours and the kernel's differ and ours is right: a cut that leaves a wall of no thickness along a line
  // beside one of a thousandth (63), cones and spheres that part by a thousandth (125), a border that comes up to its
  // sphere's outline from below (5054), the outline of a cone's hollow, hidden by the material round it (5125), a face whose outer loop does not close (10180).
  it.each([63, 125, 5054, 5125, 10180])('kept seed %i: the kernel differs', (seed) => check(seed, quadrics))

  // Kept likewise: slit edges and sheets that touch along a line (18, 41), cut tori (200, 306), a border of a torus that
  // is its outline or touches it (325, 410, 423, 432, 448), edges of tangent tori whose ends lie apart (545).
  it.each([18, 41])('kept seed %i: boxes and cylinders', (seed) => check(seed, ['box', 'cylinder']))
  const tori = ['box', 'cylinder', 'torus']
  it.each([200, 306, 325, 410, 423, 432, 448, 545])('kept seed %i: boxes, cylinders, tori', (seed) => check(seed, tori))

  // Kept because a crossing of two ellipses was lost where a turn begins and ends.
  it('kept seed 453: boxes, cylinders', () => check(453, tori))

  // Here the kernel's boolean fails: lines of sight meet another solid than the recipe's, so no view of it can agree with
  // them. With its seams turned elsewhere the kernel makes the solid meant, and ours draws that one.
  it.each([
    [1140, quadrics],
    [321, tori],
  ] as const)('seed %i: the kernel makes a wrong solid', (seed, kinds) => {
    const made = randomSolid(shapes(kernel), seed, kinds)!
    const odd = frameAlong([0.3, -0.8, 0.45])
    expect(shareWrong(meshOf(kernel, made.solid, SAG), made.recipe, odd, 60)).toBeGreaterThan(0.1)
    expect(flaws(kernel.body(made.solid), 1e-3)).not.toEqual([])
    const view = exactView(kernel.body(made.solid), frameAlong([1, -1, 1]))
    expect(view.curves.every((c) => Number.isFinite(lengthOf(c.curve)))).toBe(true)
    const solid = turnedSolid(shapes(kernel), made.recipe, 37)
    const body = kernel.body(solid)
    expect(shareWrong(meshOf(kernel, solid, SAG), made.recipe, odd, 60)).toBe(0)
    for (const frame of [PRINCIPAL.front, frameAlong([1, -1, 1])]) {
      const c = compared(kernel, solid, body, frame, { recipe: made.recipe })
      expect(c.against, `lengths differ by ${c.difference} mm`).toEqual([])
    }
    kernel.free(made.solid)
    kernel.free(solid)
  })
})
