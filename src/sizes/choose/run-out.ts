import type { Mark } from '../../brief/mark.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { ChosenSize, PartFeature } from '../../part/part.ts'
import { lengthCallout } from '../callout/shapes.ts'
import { SAME } from '../proof/elements.ts'
import { endsOf } from '../proof/making.ts'
import { type Context, type Mooring, mooringOf } from './context.ts'
import { sizeOf } from './derive.ts'
import { type Draft, directionWords } from './draft.ts'
import { isKind, oneOf } from './kinds.ts'
import { stretchOf } from './linear.ts'
import { showLinear } from './show.ts'

/** A slot that runs out into another cut, so that an end of it, or both, are not on the part. */
export interface RunOut {
  readonly feature: PartFeature
  /** The way that it runs: along it neither its length nor its middle can be measured. */
  readonly direction: Vec3
  /** Axes of the ends that are left. */
  readonly left: readonly Mooring[]
}

/** The slot as it runs out, where each of its members does so alike. */
export function runOutOf(context: Context, feature: PartFeature): RunOut | undefined {
  const slot = feature.feature
  if (slot?.kind !== 'slot') return undefined
  const own = context.part.chosen.filter((c) => c.group === feature.id)
  const direction = oneOf(own, 'length')?.direction
  const ends = feature.members.map((m) => axesOf(context, feature, m.faces, m.id))
  const whole = slot.openTo ? 1 : 2
  const [first] = ends
  if (!direction || !first || first.length >= whole || ends.some((e) => e.length !== first.length)) return undefined
  return { feature, direction, left: ends.flat() }
}

function axesOf(context: Context, feature: PartFeature, faces: readonly number[], name: string): Mooring[] {
  const found: Mooring[] = []
  for (const face of endsOf(context.part, faces, feature.outward)) {
    const surface = context.part.body.faces.find((f) => f.id === face)?.surface
    if (surface?.kind !== 'cylinder') continue
    const { origin: at, z: axis } = surface.axes
    const one = found.findIndex((f) => norm(cross(sub(f.at, at), axis)) < SAME)
    if (one < 0) found.push({ at, name: `${name} end`, faces: [face], axis })
    else found[one] = { ...found[one]!, faces: [...found[one]!.faces, face] }
  }
  return found
}

/** Whether the number says where along its way the slot stands. */
export function placesAlong({ feature, direction }: RunOut, chosen: ChosenSize): boolean {
  if (chosen.group !== feature.id || !('direction' in chosen)) return false
  return (isKind(chosen, 'distance') || isKind(chosen, 'pitch')) && isAlong(chosen.direction, direction)
}

export const isAlong = (a: Vec3, b: Vec3): boolean => Math.abs(dot(a, b)) > 1 - 1e-9

/**
 * What is left to say of where the slot ends: nothing where both ends run out, else the place of the end that is left,
 * worked out from the slot's own numbers and counted from where they count.
 */
export function endDrafts(context: Context, out: RunOut): Draft[] {
  const { part, writing } = context
  const { feature, direction, left } = out
  const { chosen } = part
  const span = feature.feature?.span
  const length = oneOf(
    chosen.filter((c) => c.group === feature.id),
    'length',
  )
  if (length) context.marks.push(runsOut(feature, length.size.text, length.span))
  const place = chosen.find((c) => isKind(c, 'distance') && placesAlong(out, c))
  const [end] = left
  const outermost: Mooring = { at: part.body.box.min, name: 'outermost', faces: [] }
  const base = place && isKind(place, 'distance') ? mooringOf(context, place.from, direction) : outermost
  if (!end || !base || left.length > 1) return []
  const size = sizeOf(context, Math.abs(dot(sub(end.at, base.at), direction)), span)
  context.marks.push({
    rule: 'size-derived',
    weight: 'look again',
    text: `The end of ${feature.id} has no size of its own in the brief; ${size.text} is worked out from its length and place.`,
    ...(span ? { span } : {}),
    expected: 'the place of that end, if it shall stand otherwise',
    source: 'common practice, no source',
  })
  return [
    {
      id: `${feature.id}/end/${directionWords(direction)}`,
      callout: lengthCallout(size, writing),
      value: size.mm,
      size,
      direction: directionWords(direction),
      states: [{ kind: 'distance', ...stretchOf(base, end, direction) }],
      shows: showLinear(base, end, direction, { facing: feature.outward }),
      derived: true,
      feature: feature.id,
      ...(span ? { span } : {}),
    },
  ]
}

function runsOut(feature: PartFeature, text: string, span: Mark['span']): Mark {
  return {
    rule: 'length-runs-out',
    weight: 'remark',
    text: `${text} does not stand on the sheet: ${feature.id} runs out into another cut, so that its length cannot be measured.`,
    ...(span ? { span } : {}),
    expected: 'nothing, if the slot may end there; else a shorter slot',
    source: 'common practice, no source',
  }
}
