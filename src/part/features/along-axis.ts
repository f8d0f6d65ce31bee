import type { Side } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { Origin } from '../find-name.ts'
import type { Workshop } from '../workshop.ts'

/** Where a cut lies along the axis of a turned part, and which of its ends, or its middle, a distance reaches. */
export interface Stretch {
  readonly from: number
  readonly to: number
  readonly origin?: Origin
  readonly reached: 'low' | 'high' | 'middle'
}

/** The size from a face to the end, or the middle, that it reaches; an end at the face needs none. */
export function locate(
  shop: Workshop,
  id: string,
  place: Stretch,
  size: Size,
  direction: Vec3,
  [low, high]: readonly [Side, Side],
): void {
  const to =
    place.reached === 'low' ? `${id} ${low} end` : place.reached === 'high' ? `${id} ${high} end` : `${id} middle`
  if (size.mm === 0) {
    shop.imply('aligned', `${to} at ${place.origin!.id}`, [to, place.origin!.id])
    return
  }
  shop.choose({ kind: 'distance', size, from: place.origin!.id, to, direction, span: size.span, group: id })
}
