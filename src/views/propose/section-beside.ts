import type { Side } from '../../brief/brief.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { axisOf, FRAMES } from '../frames.ts'
import { featurePoints } from './feature-points.ts'
import type { PlannedSection } from './plan.ts'
import { isInside } from './solid-bar.ts'

const SIDES = ['left', 'right', 'top', 'bottom', 'front', 'rear'] as const

/**
 * The lengthwise section of a hollow part whose longitudinal view stays whole for what is worked in its face: in the
 * third direction, from the side that takes less away. Undefined where the inside is a plain bore, which the end view or
 * a note tells.
 */
export function sectionBeside(part: Part, longitudinal: Side): PlannedSection | undefined {
  const { direction, point } = part.axis!
  const isWorkedInside = (f: PartFeature) => f.kind !== 'hole' && f.kind !== 'bore' && isInside(f, part)
  if (part.brief.stock?.kind !== 'tube' && !part.features.some(isWorkedInside)) return undefined
  const free = SIDES.filter(
    (s) => axisOf[s] !== axisOf[longitudinal] && Math.abs(dot(direction, FRAMES[s].toViewer)) < 1e-9,
  )
  const [side] = free
    .map((s) => ({ s, gone: part.features.filter((f) => !isInside(f, part) && isBefore(f, part, s)).length }))
    .sort((a, b) => a.gone - b.gone)
  if (!side) return undefined
  return { kind: 'section', letter: 'A', extent: 'full', side: side.s, point, parent: longitudinal }
}

/** Nothing of the feature is left behind the plane through the axis. */
export function isBefore(f: PartFeature, part: Part, side: Side): boolean {
  const { toViewer } = FRAMES[side]
  const points = featurePoints(f, part)
  return points.length > 0 && points.every((p) => dot(sub(p, part.axis!.point), toViewer) > -1e-6)
}
