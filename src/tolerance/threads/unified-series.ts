// ASME B1.1 table 2: sizes and threads per inch of the coarse, fine and extra-fine series, from memory;
// sizes with three dashes have constant-pitch threads (UN) only.

export type UnifiedSeries = 'UNC' | 'UNF' | 'UNEF' | 'UN' | 'UNS'

export interface UnifiedSize {
  /** As it is written: `#10`, `1/4`, `1-1/8`. */
  readonly name: string
  /** Basic major diameter, in. */
  readonly diameter: number
  readonly UNC?: number
  readonly UNF?: number
  readonly UNEF?: number
}

const rows = `
  #0 - 80 -
  #1 64 72 -
  #2 56 64 -
  #3 48 56 -
  #4 40 48 -
  #5 40 44 -
  #6 32 40 -
  #8 32 36 -
  #10 24 32 -
  #12 24 28 32
  1/4 20 28 32
  5/16 18 24 32
  3/8 16 24 32
  7/16 14 20 28
  1/2 13 20 28
  9/16 12 18 24
  5/8 11 18 24
  11/16 - - 24
  3/4 10 16 20
  13/16 - - 20
  7/8 9 14 20
  15/16 - - 20
  1 8 12 20
  1-1/16 - - 18
  1-1/8 7 12 18
  1-3/16 - - 18
  1-1/4 7 12 18
  1-5/16 - - 18
  1-3/8 6 12 18
  1-7/16 - - 18
  1-1/2 6 12 18
  1-9/16 - - 18
  1-5/8 - - 18
  1-11/16 - - 18
  1-3/4 5 - -
  2 4.5 - -
  2-1/4 4.5 - -
  2-1/2 4 - -
  2-3/4 4 - -
  3 4 - -
  3-1/4 4 - -
  3-1/2 4 - -
  3-3/4 4 - -
  4 4 - -
  1-13/16 - - -
  1-7/8 - - -
  1-15/16 - - -
  2-1/8 - - -
  2-3/8 - - -
  2-5/8 - - -
  2-7/8 - - -
  3-1/8 - - -
  3-3/8 - - -
  3-5/8 - - -
  3-7/8 - - -
  4-1/4 - - -
  4-1/2 - - -
  4-3/4 - - -
  5 - - -
  5-1/4 - - -
  5-1/2 - - -
  5-3/4 - - -
  6 - - -`

export const unifiedSizes: readonly UnifiedSize[] = rows
  .trim()
  .split('\n')
  .map((line) => {
    const [name, coarse, fine, extraFine] = line.trim().split(/\s+/) as [string, string, string, string]
    return {
      name,
      diameter: sizeValue(name)!,
      ...(coarse === '-' ? {} : { UNC: Number(coarse) }),
      ...(fine === '-' ? {} : { UNF: Number(fine) }),
      ...(extraFine === '-' ? {} : { UNEF: Number(extraFine) }),
    }
  })

/** Threads per inch of the constant-pitch series UN. */
export const constantPitches: readonly number[] = [4, 6, 8, 12, 16, 20, 28, 32]

/** Diameter in inches of a size as written: `#10` (0.060 + 0.013 × number), `1/4`, `1-1/8`, `.250`; undefined when it is none. */
export function sizeValue(text: string): number | undefined {
  const number = /^#(\d{1,2})$/.exec(text)
  // Written in thousandths so that #10 is 0.19 and not the nearest sum of binary fractions.
  if (number) return (60 + 13 * Number(number[1])) / 1000
  const mixed = /^(?:(\d+)[-\s])?(\d+)\/(\d+)$/.exec(text)
  if (mixed) return Number(mixed[3]) === 0 ? undefined : Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3])
  return /^(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : undefined
}

/** The standard size of a diameter in inches; undefined when none has it. */
export function unifiedSize(diameterIn: number): UnifiedSize | undefined {
  return unifiedSizes.find((size) => Math.abs(size.diameter - diameterIn) < 6e-4)
}
