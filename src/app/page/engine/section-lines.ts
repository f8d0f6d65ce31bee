/**
 * Where the first section line of a cut lies, as a share of their spacing from the part's origin: the lines stay in their
 * places while the plane moves, and hardly ever meet a corner.
 */
export const FIRST_LINE = 0.3719
