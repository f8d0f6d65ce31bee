import type { Part } from '../../part/part.ts'
import type { Sight } from './plan.ts'
import { capital } from './words.ts'

/** The right or the left view, whichever hides less; where they hide alike, the one the projection method sets beside the front. */
export function sideView(part: Part, sight: Sight): { readonly side: 'left' | 'right'; readonly reason: string } {
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
