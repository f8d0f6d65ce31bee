import { boxOfCurves, lengthOf } from '../../../src/geometry/evaluate.ts'
import type { Body } from '../../../src/kernel/body.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import type { OcctKernel } from '../../../src/kernel/open.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import { kernelExactView } from '../../../src/views/oracle.ts'
import type { ExactView, Frame } from '../../../src/views/view.ts'
import { AnalyticSight, REACH, type Recipe } from './analytic-solid.ts'
import { type Fineness, type Hit, judge, type LineOfSight, type Mesh, meshOf, missing, Sight } from './mesh-arbiter.ts'
import { seeded } from './random-solids.ts'

/** Drawn lengths of a view, mm; smooth edges apart. */
function drawn(view: ExactView): { visible: number; hidden: number } {
  const sum = (visible: boolean) =>
    view.curves.filter((c) => c.kind !== 'smooth' && c.visible === visible).reduce((s, c) => s + lengthOf(c.curve), 0)
  return { visible: sum(true), hidden: sum(false) }
}

export function sizeOf(body: Body): number {
  return Math.hypot(...body.box.max.map((x, i) => x - body.box.min[i]!))
}

export interface Comparison {
  /** Largest difference of drawn lengths from the kernel's own algorithm, mm; NaN where that fails. */
  readonly difference: number
  /** What the ray test has against our view; asked only where the lengths differ. */
  readonly against: readonly string[]
  readonly places: number
}

/** Decides where the two differ: by the kernel's triangulation, or in closed form where the recipe is known. */
export type Arbiter = { readonly mesh: () => Mesh } | { readonly recipe: Recipe }

/** Triangles lie up to their sag off the surface; closed forms do not, but the kernel's spline edges do. */
export const BY_MESH: Fineness = { clear: 0.02, touching: 0.02 }
export const BY_FORMULA: Fineness = { clear: 1e-3, touching: 1e-8 }

/**
 * Our view against the kernel's; where covered lengths differ by more than 1e-6 of the part, the dense ray test
 * decides.
 */
export function compared(
  kernel: OcctKernel,
  solid: SolidKey,
  body: Body,
  frame: Frame,
  arbiter: Arbiter,
  view = exactView(body, frame),
): Comparison {
  const a = drawn(view)
  let difference = Number.NaN
  try {
    const b = drawn(kernelExactView(kernel, solid, body, frame))
    difference = Math.max(Math.abs(a.visible - b.visible), Math.abs(a.hidden - b.hidden))
  } catch {
    // the kernel's algorithm gives up on some solids
  }
  if (difference <= 1e-6 * sizeOf(body)) return { difference, against: [], places: 0 }
  const told =
    'mesh' in arbiter
      ? judged(view, new Sight(arbiter.mesh(), frame), BY_MESH)
      : judged(view, new AnalyticSight(arbiter.recipe, frame), BY_FORMULA)
  return { difference, against: told.against, places: told.places }
}

/** All that a ray test has against a view. */
export function judged(
  view: ExactView,
  sight: LineOfSight,
  fine: Fineness = BY_MESH,
): { against: string[]; places: number } {
  const lines = judge(sight, view.curves, 7, fine)
  const { min, max } = boxOfCurves(view.curves.map((c) => c.curve))
  const gaps = missing(
    sight,
    view.curves,
    [min[0] - 0.1, min[1] - 0.1, max[0] + 0.1, max[1] + 0.1],
    12,
    { ...fine, clear: 1.5 * fine.clear },
    seeded(11),
  )
  const say = (w: { at: readonly [number, number]; what: string }) => `${w.what} (${w.at.map((x) => x.toFixed(3))})`
  return { against: [...lines.wrong, ...gaps.wrong].map(say), places: lines.tried + gaps.tried }
}

/**
 * Share of lines of sight on which the solid that the kernel made is not the one of its recipe: other faces are met, or in
 * other depths. Lines near an outline, where the triangulation strays, are left out.
 */
export function shareWrong(mesh: Mesh, recipe: Recipe, frame: Frame, steps = 160): number {
  const [made, meant] = [new Sight(mesh, frame), new AnalyticSight(recipe, frame)]
  const depths = (hits: readonly Hit[]) => {
    // what is thinner than the triangulation is exact counts for nothing
    const out: number[] = []
    for (const h of hits) {
      if (out.length > 0 && out[out.length - 1]! - h.depth < 4 * BY_MESH.touching) out.pop()
      else out.push(h.depth)
    }
    return out
  }
  const same = (a: readonly number[], b: readonly number[], within: number) =>
    a.length === b.length && a.every((x, i) => Math.abs(x - b[i]!) <= within)
  let [tried, wrong] = [0, 0]
  for (let i = 0; i < steps; i++)
    for (let j = 0; j < steps; j++) {
      const [x, y] = [(2 * (i + 0.5) * REACH) / steps - REACH, (2 * (j + 0.5) * REACH) / steps - REACH]
      const wanted = depths(meant.at(x, y))
      const near = [-1, 1].some((k) =>
        [
          [k * BY_MESH.clear, 0],
          [0, k * BY_MESH.clear],
        ].some(([dx, dy]) => !same(depths(meant.at(x + dx!, y + dy!)), wanted, 10 * BY_MESH.clear)),
      )
      const found = depths(made.at(x, y))
      if (near || (wanted.length === 0 && found.length === 0)) continue
      tried++
      if (!same(found, wanted, 10 * BY_MESH.clear)) wrong++
    }
  return wrong / Math.max(1, tried)
}

export { meshOf }
