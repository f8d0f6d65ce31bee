import type { Side } from './brief.ts'

/** The side across the part from each. */
export const oppositeOf: Readonly<Record<Side, Side>> = {
  left: 'right',
  right: 'left',
  front: 'rear',
  rear: 'front',
  top: 'bottom',
  bottom: 'top',
}
