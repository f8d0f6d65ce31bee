/** A trimmed sheet and its border, in millimetres, landscape except where the standard says otherwise. */
export interface Format {
  /** `A3`, `B`. */
  readonly name: string
  readonly width: number
  readonly height: number
  /** From the trimmed edge to the frame of the drawing space. */
  readonly margins: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }
  readonly zones: ZoneFigures | undefined
  /** Centring marks at the middles of the four sides. */
  readonly centring: { readonly width: number; readonly outside: number; readonly inside: number }
}

export interface ZoneFigures {
  /** Numbered columns and lettered rows. */
  readonly columns: number
  readonly rows: number
  /** Length of a zone, counted from the middle of the side; the end zones take what is left. */
  readonly column: number
  readonly row: number
  /** Depth of the strip between the frame and the grid border. */
  readonly strip: number
  /** A1 lies at the upper left (ISO) or at the lower right (ASME). */
  readonly origin: 'upper left' | 'lower right'
  /** Sides that carry the references. */
  readonly sides: readonly ('left' | 'right' | 'top' | 'bottom')[]
  /** A line is drawn round the strip (ISO grid reference border). */
  readonly bordered: boolean
}

const IN = 25.4
const everySide = ['left', 'right', 'top', 'bottom'] as const

/**
 * ASME Y14.1-2020 decimal-inch flat sizes (from memory of Y14.1-2012 Table 1; confirmed by the frames everybody
 * prints: B 15.76 × 10.24, C 21.00 × 15.50, D 32.00 × 21.00, E 43.00 × 32.00 in). Zones count from the lower right.
 */
function inch(
  name: string,
  [width, height]: readonly [number, number],
  [upDown, leftRight]: readonly [number, number],
  zones?: readonly [columns: number, rows: number],
): Format {
  return {
    name,
    width: width * IN,
    height: height * IN,
    margins: { left: leftRight * IN, right: leftRight * IN, top: upDown * IN, bottom: upDown * IN },
    zones: zones && {
      columns: zones[0],
      rows: zones[1],
      column: (width * IN) / zones[0],
      row: (height * IN) / zones[1],
      strip: Math.min(upDown, leftRight) * IN,
      origin: 'lower right',
      sides: everySide,
      bordered: false,
    },
    // Y14.1 alignment marks at the middles, outside the frame; length by common practice.
    centring: { width: 0.6, outside: 6, inside: 0 },
  }
}

/**
 * ISO 5457:1999 Table 1, trimmed sizes of ISO 216: filing margin 20 mm at left, 10 mm elsewhere; grid of 50 mm from the
 * centring marks in a strip of 5 mm; letters I and O left out; A4 upright with references at top and right only.
 */
function metric(name: string, width: number, height: number, columns: number, rows: number): Format {
  return {
    name,
    width,
    height,
    margins: { left: 20, right: 10, top: 10, bottom: 10 },
    zones: {
      columns,
      rows,
      column: 50,
      row: 50,
      strip: 5,
      origin: 'upper left',
      sides: name === 'A4' ? ['top', 'right'] : everySide,
      bordered: true,
    },
    // ISO 5457:1999 §4.3: 0.7 mm wide, from the grid border past the frame; 5 mm past it as in the 1980 edition (from memory).
    centring: { width: 0.7, outside: 5, inside: 5 },
  }
}

/** Smallest first. */
export const inchFormats: readonly Format[] = [
  inch('A', [11, 8.5], [0.38, 0.25]),
  inch('B', [17, 11], [0.38, 0.62], [4, 2]),
  inch('C', [22, 17], [0.75, 0.5], [4, 4]),
  inch('D', [34, 22], [0.5, 1], [8, 4]),
  inch('E', [44, 34], [1, 0.5], [8, 8]),
]

/** Smallest first. Numbers of fields: ISO 5457:1999 Table 2. */
export const metricFormats: readonly Format[] = [
  metric('A4', 210, 297, 4, 6),
  metric('A3', 420, 297, 8, 6),
  metric('A2', 594, 420, 12, 8),
  metric('A1', 841, 594, 16, 12),
  metric('A0', 1189, 841, 24, 16),
]

/** Zone letters in order: I and O are not used (ISO 5457:1999 §4.4; ASME Y14.1, from memory). */
export const zoneLetters = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** A format by its name, any case; undefined when there is none. */
export function formatNamed(name: string): Format | undefined {
  const wanted = name.trim().toUpperCase()
  return [...inchFormats, ...metricFormats].find((f) => f.name === wanted)
}
