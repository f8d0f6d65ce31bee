import { dot } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import { FRAMES } from '../frames.ts'
import type { Sight } from './plan.ts'
import { nameOf } from './wants.ts'
import { capital, listed } from './words.ts'

/**
 * The right or the left view: the one from which more is worked that the other does not show, else whichever hides less;
 * where they hide alike, the one the projection method sets beside the front.
 */
export function sideView(part: Part, sight: Sight): { readonly side: 'left' | 'right'; readonly reason: string } {
  const [atRight, atLeft] = [workedAt('right', 'left', part, sight), workedAt('left', 'right', part, sight)]
  if (atRight.length !== atLeft.length) {
    const [side, other, what] =
      atRight.length > atLeft.length ? (['right', 'left', atRight] as const) : (['left', 'right', atLeft] as const)
    return { side, reason: `${capital(side)} rather than ${other}: ${listed(what)} would be hidden there.` }
  }
  const [right, left] = [sight.hiddenLength('right'), sight.hiddenLength('left')]
  const alike = Math.abs(right - left) <= 1e-6 * Math.max(1, right, left)
  if (alike) {
    const side = part.brief.header.projection === 'first angle' ? 'left' : 'right'
    return {
      side,
      reason: `${capital(side)} and ${side === 'left' ? 'right' : 'left'} views hide alike; the ${side} one stands at the right of the front in ${part.brief.header.projection} projection.`,
    }
  }
  const side = right < left ? 'right' : 'left'
  return { side, reason: `${capital(side)} rather than ${side === 'left' ? 'right' : 'left'}: fewer hidden lines.` }
}

/** What is worked from a side and seen from there, but not from the other. */
function workedAt(side: 'left' | 'right', other: 'left' | 'right', part: Part, sight: Sight): string[] {
  return part.features
    .filter((f) => {
      if (dot(f.outward, FRAMES[side].toViewer) < 1 - 1e-9) return false
      const faces = f.members.flatMap((m) => m.faces)
      return faces.length > 0 && sight.shows(side, faces) && !sight.shows(other, faces)
    })
    .map(nameOf)
}
