import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { computedText } from '../callout/numbers.ts'
import { diameterCallout, lengthCallout, radiusCallout } from '../callout/shapes.ts'
import type { Statement } from '../dimension.ts'
import { featureOf } from '../proof/feature-of.ts'
import { judge } from '../proof/judge.ts'
import type { Unknown } from '../proof/model.ts'
import { nameOf } from '../proof/words.ts'
import type { Context, Mooring } from './context.ts'
import { type Draft, directionWords } from './draft.ts'
import { stretchOf } from './linear.ts'
import { showDiameter, showLinear, showRadius } from './show.ts'

/**
 * Sizes that the shape needs and no number of the brief gives: what the part was built with by default. Each is
 * worked out from the solid, shown, and marked for the drafter to confirm.
 */
export function derivedDrafts(
  context: Context,
  given: readonly { readonly id: string; readonly states: readonly Statement[] }[],
): Draft[] {
  const named = given.map((d) => ({ ...d, reference: false }))
  const { loose } = judge(context.model, named)
  return loose.flatMap((set): Draft[] => {
    if (set.length !== 1) return []
    const unknown = context.model.unknowns[set[0]!]!
    const draft =
      unknown.kind === 'radius'
        ? radius(context, unknown)
        : unknown.kind === 'position'
          ? plane(context, unknown)
          : undefined
    if (!draft) return []
    context.marks.push({
      rule: 'size-derived',
      weight: 'look again',
      text: `${nameOf(context.part, context.model, unknown.elements[0]!)} has no size in the brief; ${draft.size?.text ?? ''} is taken from the part as built.`,
      ...(draft.span ? { span: draft.span } : {}),
      expected: 'the size, written where the feature is',
      source: 'common practice, no source',
    })
    return [draft]
  })
}

/** A number worked out from the part, in the sheet's unit. */
export function sizeOf(context: Context, mm: number, span: Draft['span']): Size {
  const { unit } = context.writing
  const text = computedText(mm, { ...context.writing, sign: '.' })
  const decimals = text.split('.')[1]?.length ?? 0
  return {
    text,
    value: unit === 'inch' ? mm / 25.4 : mm,
    form: decimals > 0 ? 'decimal' : 'whole',
    decimals,
    span: span ?? { from: 0, to: 0 },
    unit,
    unitTyped: false,
    mm,
  }
}

function radius(context: Context, unknown: Unknown): Draft | undefined {
  const { model, part, writing } = context
  const element = model.elements[unknown.elements[0]!]!
  const { surface, faces } = element
  if (surface.kind === 'plane' || surface.kind === 'spline') return undefined
  const r = model.values[unknown.id]!
  const ball = surface.kind === 'sphere'
  const feature = featureOf(part, faces)
  const span = feature?.feature?.span
  const whole = part.body.edges.some(
    (e) =>
      e.curve.kind === 'circle' &&
      Math.abs(e.curve.sweep) > 6 &&
      e.faces.some((f) => f !== undefined && faces.includes(f)),
  )
  const size = sizeOf(context, whole ? 2 * r : r, span)
  return {
    id: `derived/${nameOf(part, model, element.id)}/${whole ? 'diameter' : 'radius'}`,
    callout: whole ? diameterCallout(size, writing, 1, ball) : radiusCallout(size, writing, 1, ball),
    value: size.mm,
    size,
    direction: whole ? 'diameter' : 'radius',
    states: [{ kind: 'radius', faces }],
    shows: whole ? showDiameter(faces, surface.axes.origin, surface.axes.z, r, 'circle') : showRadius(faces, r),
    derived: true,
    ...(feature?.feature ? { feature: feature.id } : {}),
    ...(span ? { span } : {}),
  }
}

function plane(context: Context, unknown: Unknown): Draft | undefined {
  const { model, part, writing } = context
  const k = unknown.along
  const elements = unknown.elements.map((e) => model.elements[e]!)
  if (k === undefined || elements.length === 0 || elements.some((e) => e.surface.kind !== 'plane')) return undefined
  const at = model.values[unknown.id]!
  const { min, max } = part.body.box
  const base = Math.abs(at - min[k]) > 1e-6 ? min : max
  const direction: Vec3 = [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
  const facesAt = (level: number) =>
    model.elements.flatMap((e) =>
      e.surface.kind === 'plane' && e.along === k && Math.abs(e.surface.axes.origin[k] - level) < 1e-5 ? e.faces : [],
    )
  const own = elements.flatMap((e) => e.faces)
  const surface = elements[0]!.surface
  if (surface.kind !== 'plane' || facesAt(base[k]).length === 0) return undefined
  const from: Mooring = { at: base, name: 'outer face', faces: facesAt(base[k]), normal: direction }
  const to: Mooring = {
    at: surface.axes.origin,
    name: nameOf(part, model, elements[0]!.id),
    faces: own,
    normal: direction,
  }
  const feature = featureOf(part, own)
  const span = feature?.feature?.span
  const size = sizeOf(context, Math.abs(at - base[k]), span)
  return {
    id: `derived/${to.name}/${directionWords(direction)}`,
    callout: lengthCallout(size, writing),
    value: size.mm,
    size,
    direction: directionWords(direction),
    states: [{ kind: 'distance', ...stretchOf(from, to, direction) }],
    shows: showLinear(from, to, direction),
    derived: true,
    ...(feature?.feature ? { feature: feature.id } : {}),
    ...(span ? { span } : {}),
  }
}
