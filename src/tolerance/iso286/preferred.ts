// ANSI B4.2-1978 preferred fits and first-choice sizes, from memory.

export interface PreferredFit {
  readonly name: string
  readonly holeBasis: string
  readonly shaftBasis: string
  readonly use: string
}

/** In order from the loosest to the tightest. Up to 3 mm the locational interference fit H7/p6 is a transition fit. */
export const preferredFits: readonly PreferredFit[] = [
  {
    name: 'loose running',
    holeBasis: 'H11/c11',
    shaftBasis: 'C11/h11',
    use: 'wide commercial tolerances on external members',
  },
  {
    name: 'free running',
    holeBasis: 'H9/d9',
    shaftBasis: 'D9/h9',
    use: 'large temperature changes, high speeds, heavy journal pressures',
  },
  {
    name: 'close running',
    holeBasis: 'H8/f7',
    shaftBasis: 'F8/h7',
    use: 'accurate machines, moderate speeds and journal pressures',
  },
  {
    name: 'sliding',
    holeBasis: 'H7/g6',
    shaftBasis: 'G7/h6',
    use: 'moves and turns freely and locates accurately, not for running',
  },
  {
    name: 'locational clearance',
    holeBasis: 'H7/h6',
    shaftBasis: 'H7/h6',
    use: 'snug location of stationary parts, freely assembled',
  },
  {
    name: 'locational transition',
    holeBasis: 'H7/k6',
    shaftBasis: 'K7/h6',
    use: 'accurate location between clearance and interference',
  },
  {
    name: 'locational transition, tight',
    holeBasis: 'H7/n6',
    shaftBasis: 'N7/h6',
    use: 'more accurate location where greater interference may be had',
  },
  {
    name: 'locational interference',
    holeBasis: 'H7/p6',
    shaftBasis: 'P7/h6',
    use: 'rigidity and alignment without special bore pressure',
  },
  {
    name: 'medium drive',
    holeBasis: 'H7/s6',
    shaftBasis: 'S7/h6',
    use: 'ordinary steel parts, shrink fits on light sections',
  },
  { name: 'force', holeBasis: 'H7/u6', shaftBasis: 'U7/h6', use: 'parts that can be highly stressed, shrink fits' },
]

/** First-choice nominal sizes of ANSI B4.2, mm. */
export const preferredSizes: readonly number[] = [
  1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 40, 50, 60, 80, 100, 120, 160, 200, 250, 300, 400, 500,
]
