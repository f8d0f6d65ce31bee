import type { Case } from './cases.ts'

const iso = (rule: string, bad: string, good: string): Case => ({ rule, on: 'iso', bad, good })
const asme = (rule: string, bad: string, good: string): Case => ({ rule, on: 'asme', bad, good })
const pin = (size: string, more = '') => `turned    axis left-right
          pin     ${size}, 30 long
          body    ⌀30 h7, 60 long
${more}`
const datum = 'datum     A  bottom\n'

/** Envelope and independency: Rule #1 of ASME Y14.5-2018, ISO 8015, ISO 14405-1. */
export const formCases: readonly Case[] = [
  asme('envelope-needless', 'block     3.00 × 2.00 × 1.000 ±.002 Ⓔ', 'block     3.00 × 2.00 × 1.000 ±.002 Ⓘ'),
  iso('envelope-of-no-size', pin('⌀20 h6').replace('30 long', '30 Ⓔ long'), pin('⌀20 h6 Ⓔ')),
]

/** Further pairs for the rule that asks rounds and widths, on both kinds of sheet. */
export const moreFormCases: readonly Case[] = [
  // 1.000 ±.002 varies by .004: its faces cannot be out of flat or parallel by more within the envelope.
  asme(
    'form-wider-than-size',
    'block     3.00 × 2.00 × 1.000 ±.002\nframe     top: flatness .004',
    'block     3.00 × 2.00 × 1.000 ±.002\nframe     top: flatness .003',
  ),
  asme(
    'form-wider-than-size',
    `block     3.00 × 2.00 × 1.000 ±.002\n${datum}frame     top: parallelism .005 A`,
    `block     3.00 × 2.00 × 1.000 ±.002\n${datum}frame     top: parallelism .002 A`,
  ),
  asme(
    'form-wider-than-size',
    'block     3.00 × 2.00 × 1.000 ±.002\nframe     top: flatness .010',
    'block     3.00 × 2.00 × 1.000 ±.002 Ⓘ\nframe     top: flatness .010',
  ),
  iso(
    'form-wider-than-size',
    'block     80 × 50 × 30 ±0.05 Ⓔ\nframe     top: flatness 0.1',
    'block     80 × 50 × 30 ±0.05\nframe     top: flatness 0.1',
  ),
  iso(
    'form-wider-than-size',
    pin('⌀20 h6 Ⓔ', 'frame     pin: cylindricity 0.02'),
    pin('⌀20 h6', 'frame     pin: cylindricity 0.02'),
  ),
  // ISO 2768-2, Annex: `-E` asks for the envelope at every feature of size.
  iso(
    'form-wider-than-size',
    `general   ISO 2768-mK-E\n${pin('⌀20 h6', 'frame     pin: cylindricity 0.02')}`,
    `general   ISO 2768-mK\n${pin('⌀20 h6', 'frame     pin: cylindricity 0.02')}`,
  ),
  iso('envelope-needless', pin('⌀20 h6 Ⓘ'), pin('⌀20 h6 Ⓔ')),
]
