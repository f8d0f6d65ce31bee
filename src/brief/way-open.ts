import type { Lie, Name } from './brief.ts'

/** Which way an open slot runs: square to the edge that it opens to, where that edge is one of the part's sides. */
export function wayOpen(openTo: Name | undefined): Lie | undefined {
  const words = openTo?.text.split(' ') ?? []
  if (words.includes('left') || words.includes('right')) return 'left-right'
  if (words.includes('top') || words.includes('bottom')) return 'up-down'
  if (words.includes('front') || words.includes('rear')) return 'front-rear'
  return undefined
}
