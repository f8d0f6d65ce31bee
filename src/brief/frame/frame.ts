import type { Num } from '../size.ts'
import type { Span } from '../span.ts'

/** Geometric characteristics of ASME Y14.5-2018 and ISO 1101; coaxiality and symmetry stand in ISO 1101 only. */
export type Characteristic =
  | 'straightness'
  | 'flatness'
  | 'circularity'
  | 'cylindricity'
  | 'profile of a line'
  | 'profile of a surface'
  | 'angularity'
  | 'perpendicularity'
  | 'parallelism'
  | 'position'
  | 'coaxiality'
  | 'symmetry'
  | 'circular runout'
  | 'total runout'

export type Family = 'form' | 'profile' | 'orientation' | 'location' | 'runout'

/** Symbol (its Unicode character) and family of each characteristic. */
export const characteristics: Readonly<Record<Characteristic, { readonly symbol: string; readonly family: Family }>> = {
  straightness: { symbol: '⏤', family: 'form' },
  flatness: { symbol: '⏥', family: 'form' },
  circularity: { symbol: '○', family: 'form' },
  cylindricity: { symbol: '⌭', family: 'form' },
  'profile of a line': { symbol: '⌒', family: 'profile' },
  'profile of a surface': { symbol: '⌓', family: 'profile' },
  angularity: { symbol: '∠', family: 'orientation' },
  perpendicularity: { symbol: '⟂', family: 'orientation' },
  parallelism: { symbol: '∥', family: 'orientation' },
  position: { symbol: '⌖', family: 'location' },
  coaxiality: { symbol: '◎', family: 'location' },
  symmetry: { symbol: '⌯', family: 'location' },
  'circular runout': { symbol: '↗', family: 'runout' },
  'total runout': { symbol: '⌰', family: 'runout' },
}

/** A datum or a common datum (A-B) in one compartment, with its material boundary. Without one it is regardless of material boundary. */
export interface DatumReference {
  readonly letters: readonly string[]
  readonly material?: 'M' | 'L'
  readonly span: Span
}

/** One row of a frame: tolerance compartment and datum compartments. */
export interface FrameRow {
  readonly zone: 'width' | 'diameter' | 'spherical diameter'
  /** In the unit of the sheet. */
  readonly value: Num
  readonly material?: 'M' | 'L'
  /** `MAX`: greatest tolerance that bonus may reach. */
  readonly most?: Num
  /** Projected zone Ⓟ and its height, when stated. */
  readonly projected?: { readonly height?: Num; readonly span: Span }
  readonly freeState: boolean
  readonly tangentPlane: boolean
  /** Unequally disposed profile: ASME Ⓤ gives the part outside the material, ISO UZ the shift of the zone's middle. */
  readonly unequal?: { readonly form: 'U' | 'UZ'; readonly value: Num; readonly span: Span }
  /** ISO: one zone for all elements, or each its own. */
  readonly combined?: 'CZ' | 'SZ'
  readonly datums: readonly DatumReference[]
  readonly span: Span
}

/** A geometric tolerance frame. */
export interface Frame {
  readonly characteristic: Characteristic
  /** One row, or the segments of a stacked frame, uppermost first. */
  readonly rows: readonly FrameRow[]
  /** With one symbol for all rows (composite) or a symbol for each (single segments); one row is `single`. */
  readonly stacking: 'single' | 'composite' | 'segments'
  readonly span: Span
}

/** Compartments of each row as they are lettered, the characteristic's symbol first where the row carries it; `write` letters a number. */
export function compartments(frame: Frame, write = (num: Num): string => num.text): readonly (readonly string[])[] {
  const { symbol } = characteristics[frame.characteristic]
  return frame.rows.map((row, i) => [
    ...(i === 0 || frame.stacking === 'segments' ? [symbol] : []),
    toleranceText(row, write),
    ...row.datums.map((datum) => datum.letters.join('-') + (datum.material ? circled[datum.material] : '')),
  ])
}

/** The frame in one line a row, with the symbols of the standards. */
export function frameText(frame: Frame): string {
  return compartments(frame)
    .map((cells) => cells.join(' '))
    .join('\n')
}

const circled = { M: 'Ⓜ', L: 'Ⓛ' } as const

function toleranceText(row: FrameRow, write: (num: Num) => string): string {
  const zone = { width: '', diameter: '⌀', 'spherical diameter': 'S⌀' }[row.zone]
  return [
    `${zone}${write(row.value)}`,
    row.unequal?.form === 'UZ' ? `UZ${write(row.unequal.value)}` : '',
    row.combined ?? '',
    row.material ? circled[row.material] : '',
    row.most ? `${write(row.most)} MAX` : '',
    row.projected ? `Ⓟ${row.projected.height ? ` ${write(row.projected.height)}` : ''}` : '',
    row.unequal?.form === 'U' ? `Ⓤ ${write(row.unequal.value)}` : '',
    row.tangentPlane ? 'Ⓣ' : '',
    row.freeState ? 'Ⓕ' : '',
  ]
    .filter((part) => part !== '')
    .join(' ')
}
