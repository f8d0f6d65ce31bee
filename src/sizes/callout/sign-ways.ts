/** Where the narrow end of a taper or slope sign looks in its view. */
export type SignWay = 'right' | 'left' | 'up' | 'down'

/**
 * A sign that does not look right is followed by one of these (Unicode variation selectors, which print nothing). The
 * lettering draws the sign turned; texts for reports leave them out.
 */
export const wayMarks: Readonly<Record<SignWay, string>> = { right: '', left: '\ufe00', up: '\ufe01', down: '\ufe02' }

/** ASME draws the arc sign above the figures that follow it (Y14.5-2018 Fig. 4-8, from memory). */
export const ABOVE = '\ufe03'

/** Without what only the lettering heeds. */
export const withoutSignMarks = (text: string): string => text.replace(/[\ufe00-\ufe03]/g, '')
