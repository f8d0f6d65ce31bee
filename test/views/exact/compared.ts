import { boxOfCurves, lengthOf } from '../../../src/geometry/evaluate.ts'
import type { Body } from '../../../src/kernel/body.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import type { OcctKernel } from '../../../src/kernel/open.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import { kernelExactView } from '../../../src/views/oracle.ts'
import type { ExactView, Frame } from '../../../src/views/view.ts'
import { judge, type Mesh, meshOf, missing, Sight } from './mesh-arbiter.ts'
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
  /** Milliseconds of ours and of the kernel's algorithm alone. */
  readonly ours: number
}

/**
 * Our view against the kernel's; where covered lengths differ by more than 1e-6 of the part, the dense ray test
 * decides. `mesh` is asked for only then.
 */
export function compared(kernel: OcctKernel, solid: SolidKey, body: Body, frame: Frame, mesh: () => Mesh): Comparison {
  const start = performance.now()
  const view = exactView(body, frame)
  const ours = performance.now() - start
  const a = drawn(view)
  let difference = Number.NaN
  try {
    const b = drawn(kernelExactView(kernel, solid, body, frame))
    difference = Math.max(Math.abs(a.visible - b.visible), Math.abs(a.hidden - b.hidden))
  } catch {
    // the kernel's algorithm gives up on some solids
  }
  if (difference <= 1e-6 * sizeOf(body)) return { difference, against: [], places: 0, ours }
  const told = judged(view, frame, mesh())
  return { difference, against: told.against, places: told.places, ours }
}

/** All that the ray test has against a view. */
export function judged(view: ExactView, frame: Frame, mesh: Mesh): { against: string[]; places: number } {
  const sight = new Sight(mesh, frame)
  const lines = judge(sight, view.curves, 7, 0.02)
  const { min, max } = boxOfCurves(view.curves.map((c) => c.curve))
  const gaps = missing(
    sight,
    view.curves,
    [min[0] - 0.1, min[1] - 0.1, max[0] + 0.1, max[1] + 0.1],
    12,
    0.03,
    seeded(11),
  )
  const say = (w: { at: readonly [number, number]; what: string }) => `${w.what} (${w.at.map((x) => x.toFixed(3))})`
  return { against: [...lines.wrong, ...gaps.wrong].map(say), places: lines.tried + gaps.tried }
}

export { meshOf }
