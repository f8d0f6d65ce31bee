import type { Span } from '../brief/span.ts'
import type { Vec3 } from '../geometry/vec.ts'
import { inUnit } from './features/hole-shape.ts'
import type { WorkFace } from './model.ts'
import { axisOf, endSides, faceAxes } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** How far circles of radius r (0: their centres) stand out over a face, in words: `1.25 in beyond the rear`. */
export function beyondWords(shop: Workshop, face: WorkFace, points: readonly Vec3[], r: number): string {
  const { across, up } = faceAxes(axisOf[face.side])
  const unit = shop.brief.header.units
  const { radius } = face
  if (radius !== undefined) {
    const middle = [across, up].map((_, k) => (face.min[k]! + face.max[k]!) / 2)
    const far = Math.max(...points.map((p) => Math.hypot(p[across] - middle[0]!, p[up] - middle[1]!)))
    return `${inUnit(far + r - radius, unit)} beyond its rim`
  }
  const said = [across, up].flatMap((axis, k) => {
    const [low, high] = endSides[axis]!
    const places = points.map((p) => p[axis])
    const under = face.min[k]! - (Math.min(...places) - r)
    const over = Math.max(...places) + r - face.max[k]!
    return [
      ...(under > 1e-7 ? [`${inUnit(under, unit)} beyond the ${low}`] : []),
      ...(over > 1e-7 ? [`${inUnit(over, unit)} beyond the ${high}`] : []),
    ]
  })
  return said.join(' and ') || 'outside its outline'
}

/** How far the face reaches: `the top is 4.000 in left-right and 3.000 in front-rear`. */
export function reachWords(shop: Workshop, face: WorkFace): string {
  const unit = shop.brief.header.units
  if (face.radius !== undefined) return `the ${face.name} is ⌀${inUnit(2 * face.radius, unit)}`
  const { across, up } = faceAxes(axisOf[face.side])
  const ways = ['left-right', 'front-rear', 'up-down']
  const long = [across, up].map((axis, k) => `${inUnit(face.max[k]! - face.min[k]!, unit)} ${ways[axis]}`)
  return `the ${face.name} is ${long.join(' and ')}`
}

/** Where the feature says its places, or all of it. */
export function placeOf(shop: Workshop, feature: Span): Span {
  const found = shop.brief.features.find((f) => f.span === feature)
  const place = found && 'placement' in found ? found.placement : undefined
  const isSaid = place && place.span.to > place.span.from && place.span.from > feature.from
  return isSaid ? place.span : feature
}
