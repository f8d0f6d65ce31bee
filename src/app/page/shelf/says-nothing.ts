import type { Kept } from './shelf.ts'

/** A brief begun and left before it said anything: no more than its units and practice, and a name that is none. */
export const saysNothing = ({ text, home, saved }: Pick<Kept, 'text' | 'home' | 'saved'>): boolean =>
  home.kind === 'shelf' &&
  saved === undefined &&
  text.split('\n').every((line) => /^\s*$|^part\s*(?:Untitled\s*)?$|^(?:units|practice)\s+\S+\s*$/.test(line))
