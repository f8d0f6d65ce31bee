import { cross, scale } from '../geometry/vec3.ts'
import { combine, countSolids, unified } from '../kernel/boolean.ts'
import { guarded, KernelError, type Occt, type Shape } from '../kernel/occt.ts'
import { prism, revolve } from '../kernel/profile.ts'
import { release } from '../kernel/scope.ts'
import { cornerWork, halfSection } from './contour.ts'
import type { Legs, Profile, ProfileCurve } from './model.ts'
import { squareUp, unitAxis } from './sides.ts'
import type { Step, Workshop } from './workshop.ts'

/** Builds the solid from the profile or half section and works it step by step. Undefined where nothing stands. */
export function assemble(shop: Workshop, oc: Occt): Shape | undefined {
  let solid = startingSolid(shop, oc)
  if (!solid) return undefined
  const { steps } = shop
  for (let i = 0; i < steps.length; ) {
    const kind = steps[i]!.kind
    let j = i + 1
    while (kind !== 'edges' && j < steps.length && steps[j]!.kind === kind) j++
    solid = worked(shop, oc, solid, steps.slice(i, j))
    i = j
  }
  const pieces = countSolids(oc, solid)
  if (pieces !== 1) {
    const last = steps[steps.length - 1]
    shop.must(
      'falls-apart',
      last?.span ?? shop.brief.stock!.span,
      pieces === 0 ? 'Nothing is left of the part.' : `The part falls into ${pieces} pieces.`,
      'cuts that leave one piece',
    )
  }
  return solid
}

function startingSolid(shop: Workshop, oc: Occt): Shape | undefined {
  const { profile, contour, brief } = shop
  try {
    if (profile && shop.legs && shop.legsWorked()) {
      return guarded(oc, 'joining the legs', () => joinedLegs(oc, profile, shop.legs!))
    }
    if (profile) {
      return guarded(oc, 'thickening the profile', () => thickened(oc, profile, profile.curves))
    }
    if (contour) {
      const section = cornerWork(shop, contour, halfSection(contour))
      const along = unitAxis[contour.axis]
      const plane = { origin: [0, 0, 0] as const, right: along, up: squareUp(contour.axis) }
      return guarded(oc, 'turning the half section', () =>
        revolve(oc, { outer: section.map((c) => c.curve), holes: [] }, plane, [0, 0, 0], along),
      )
    }
  } catch (e) {
    if (!(e instanceof KernelError)) throw e
    shop.must('cannot-build', brief.stock!.span, `The stock cannot be built as written (${e.message}).`)
  }
  return undefined
}

function thickened(oc: Occt, profile: Profile, curves: readonly ProfileCurve[]): Shape {
  const region = {
    outer: curves.map((c) => c.curve),
    holes: profile.holes.map((loop) => loop.map((c) => c.curve)),
  }
  const normal = cross(profile.plane.right, profile.plane.up)
  return prism(oc, region, profile.plane, scale(normal, profile.thickness))
}

/** The corner and the two legs meet in whole faces, so they are glued: a fraction of the time of cutting the legs. */
function joinedLegs(oc: Occt, profile: Profile, { core, legs }: Legs): Shape {
  const pieces = [thickened(oc, profile, core), ...legs.map((l) => thickened(oc, l.profile, l.profile.curves))]
  try {
    const [first, ...others] = pieces
    const joined = combine(oc, 'glue', first!, others)
    const whole = unified(oc, joined)
    release(joined)
    return whole
  } finally {
    for (const piece of pieces) release(piece)
  }
}

/** Applies steps of one kind together; where that fails, one by one, leaving out and marking the faulty ones. */
function worked(shop: Workshop, oc: Occt, solid: Shape, steps: readonly Step[]): Shape {
  try {
    const next = guarded(oc, 'working the solid', () => apply(oc, solid, steps))
    release(solid)
    return next
  } catch (e) {
    if (!(e instanceof KernelError)) throw e
    if (steps.length > 1) return steps.reduce((s, step) => worked(shop, oc, s, [step]), solid)
    const { feature, span } = steps[0]!
    shop.must('cannot-build', span, `${feature} cannot be worked as written and is left out.`, 'smaller sizes')
    return solid
  }
}

function apply(oc: Occt, solid: Shape, steps: readonly Step[]): Shape {
  const first = steps[0]!
  if (first.kind === 'edges') return first.work(oc, solid)
  const tools: Shape[] = []
  try {
    for (const step of steps) if (step.kind !== 'edges') tools.push(step.make(oc))
    const result = combine(oc, first.kind, solid, tools)
    if (first.kind === 'cut') return result
    const whole = unified(oc, result)
    release(result)
    return whole
  } finally {
    for (const tool of tools) release(tool)
  }
}
