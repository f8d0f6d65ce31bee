import type { Unit } from '../../brief/size.ts'
import { Listing } from '../part/listing.ts'

/** Numbers as they would be typed in a brief of the unit. */
export interface Wording {
  readonly unit: Unit
  /** A length given in mm; with its unit where it is round only in the other one. */
  readonly length: (mm: number) => string
  /** An angle in degrees, without its sign. */
  readonly angle: (degrees: number) => string
}

export function wordingOf(unit: Unit): Wording {
  // the digits are chosen as on the sheet of a measured solid
  const listing = new Listing(unit)
  return {
    unit,
    length: (mm) => {
      if (Math.abs(mm) < 1e-9) return '0'
      const size = listing.size('length', mm)
      return size.unitTyped ? `${size.text} ${size.unit === 'inch' ? 'in' : 'mm'}` : size.text
    },
    angle: (degrees) => listing.angle('angle', degrees).text,
  }
}

/** `2X ` before a callout of several, nothing before one. */
export const times = (count: number): string => (count > 1 ? `${count}X ` : '')

/** A statement: its keyword, what follows, and further lines under it. */
export function statement(keyword: string, first: string, ...more: readonly string[]): string {
  const indent = ' '.repeat(10)
  return [`${keyword.padEnd(9)} ${first}`, ...more.map((line) => indent + line)].join('\n')
}
