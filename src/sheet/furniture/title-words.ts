import type { Practice } from '../../brief/brief.ts'
import type { Unit } from '../../brief/size.ts'

/** Names of the title-block fields. */
export interface TitleWords {
  readonly firm: string
  readonly title: string
  readonly number: string
  readonly revision: string
  readonly drawn: string
  readonly checked: string
  readonly approved: string
  readonly material: string
  readonly coating: string
  readonly weight: string
  readonly scale: string
  readonly sheet: string
  readonly size: string
  readonly unless: string
  readonly units: Readonly<Record<Unit, string>>
  readonly tolerances: string
  readonly fractions: string
  readonly whole: string
  readonly angles: string
  readonly edges: string
  readonly texture: string
  readonly standard: string
  readonly doNotScale: string
  readonly notes: string
  /** Headings of a parts list: item number, quantity, name. */
  readonly items: readonly [string, string, string]
  readonly preliminary: readonly [string, string]
  sheetOf(n: number, of: number): string
}

/** Customary headings of ASME Y14.1 title blocks, upper case (ASME Y14.2-2014 §4.3). */
const asme: TitleWords = {
  firm: '',
  title: 'TITLE',
  number: 'DWG NO.',
  revision: 'REV',
  drawn: 'DRAWN',
  checked: 'CHECKED',
  approved: 'APPROVED',
  material: 'MATERIAL',
  coating: 'FINISH',
  weight: 'WEIGHT',
  scale: 'SCALE',
  sheet: 'SHEET',
  size: 'SIZE',
  unless: 'UNLESS OTHERWISE SPECIFIED',
  units: { inch: 'DIMENSIONS ARE IN INCHES', mm: 'DIMENSIONS ARE IN MILLIMETERS' },
  tolerances: 'TOLERANCES',
  fractions: 'FRACTIONS',
  whole: 'WHOLE NUMBERS',
  angles: 'ANGLES',
  edges: 'BREAK EDGES',
  texture: 'SURFACES',
  standard: 'PER',
  doNotScale: 'DO NOT SCALE DRAWING',
  notes: 'NOTES',
  items: ['ITEM', 'QTY', 'DESCRIPTION'],
  preliminary: ['PRELIMINARY', 'NOT FOR MANUFACTURE'],
  sheetOf: (n, of) => `${n} OF ${of}`,
}

/** Data fields of ISO 7200:2004 Tables 1 to 3 by the names used there. */
const iso: TitleWords = {
  firm: 'Legal owner',
  title: 'Title',
  number: 'Identification number',
  revision: 'Rev.',
  drawn: 'Created by',
  checked: 'Checked by',
  approved: 'Approved by',
  material: 'Material',
  coating: 'Coating',
  weight: 'Mass',
  scale: 'Scale',
  sheet: 'Sheet',
  size: 'Size',
  unless: 'Unless otherwise specified',
  units: { inch: 'Dimensions in inches', mm: 'Dimensions in millimetres' },
  tolerances: 'General tolerances',
  fractions: 'Fractions',
  whole: 'Whole numbers',
  angles: 'Angles',
  edges: 'Edges',
  texture: 'Surfaces',
  standard: 'According to',
  doNotScale: 'Do not scale',
  notes: 'Notes',
  items: ['Item', 'Qty', 'Designation'],
  preliminary: ['PRELIMINARY', 'NOT FOR MANUFACTURE'],
  sheetOf: (n, of) => `${n}/${of}`,
}

export function titleWords(practice: Practice): TitleWords {
  return practice === 'ASME' ? asme : iso
}
