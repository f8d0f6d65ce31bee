import { bad, good, type Outcome } from '../../brief/outcome.ts'
import type { UnifiedClass, UnifiedThread } from './thread.ts'

/** A pair of limits, inches for unified and mm for metric threads. */
export interface Limits {
  readonly max: number
  readonly min: number
}

export interface ExternalLimits {
  readonly of: 'screw'
  readonly allowance: number
  readonly major: Limits
  readonly pitch: Limits
  /** Largest minor diameter of a rounded root (unified: UNR, for reference). */
  readonly minorMax: number
}

export interface InternalLimits {
  readonly of: 'hole'
  readonly minor: Limits
  readonly pitch: Limits
  readonly majorMin: number
}

// ASME B1.1-2003, section 5: pitch diameter tolerance of a class as a share of that of 2A; major diameter by class.
const share: Readonly<Record<UnifiedClass, number>> = {
  '1A': 1.5,
  '2A': 1,
  '3A': 0.75,
  '1B': 1.95,
  '2B': 1.3,
  '3B': 0.975,
}

// Where the printed table departs from the formula (0.3 × .005501 = .00165 for 5/8-11), the table holds.
const printedAllowance: Readonly<Record<string, number>> = { '5/8-11': 0.0016 }

/**
 * Limits of size of a unified thread, inches, by the formulas of ASME B1.1-2003 (from memory):
 * pitch diameter tolerance of 2A = 0.0015 ∛D + 0.0015 √LE + 0.015 ∛P², LE = D for UNC, UNF and 4, 6, 8 UN, else 9P;
 * allowance of 1A, 2A = 0.3 of it; major diameter 0.060 ∛P² (1A 0.090); minor diameter of holes as in `minorTolerance`.
 * Terms are rounded to 0.000001 in, tolerances and diameters to 0.0001 in, which is how the printed table comes about.
 */
export function unifiedLimits(
  thread: UnifiedThread,
  wanted: UnifiedClass | undefined = thread.class,
): Outcome<ExternalLimits | InternalLimits> {
  if (!wanted)
    return bad({
      text: `${thread.size}-${thread.threadsPerInch} has no class.`,
      expected: '2A for a screw or 2B for a hole',
    })
  const pitch = 1 / thread.threadsPerInch
  const d = thread.diameter
  const engaged =
    thread.series === 'UNC' || thread.series === 'UNF' || (thread.series === 'UN' && thread.threadsPerInch <= 8)
  const width2A = [0.0015 * Math.cbrt(d), 0.0015 * Math.sqrt(engaged ? d : 9 * pitch), 0.015 * Math.cbrt(pitch * pitch)]
    .map((term) => Math.round(term * 1e6) / 1e6)
    .reduce((sum, term) => sum + term)
  const pitchBasic = round4(d - 0.64951905 * pitch)
  const pitchWidth = round4(share[wanted] * width2A)
  if (wanted.endsWith('A')) {
    const allowance =
      wanted === '3A' ? 0 : (printedAllowance[`${thread.size}-${thread.threadsPerInch}`] ?? round4(0.3 * width2A))
    const major = round4(d - allowance)
    const pitchMax = round4(pitchBasic - allowance)
    const majorWidth = round4((wanted === '1A' ? 0.09 : 0.06) * Math.cbrt(pitch * pitch))
    return good({
      of: 'screw',
      allowance,
      major: { max: major, min: round4(major - majorWidth) },
      pitch: { max: pitchMax, min: round4(pitchMax - pitchWidth) },
      minorMax: round4(d - allowance - 1.19078493 * pitch),
    })
  }
  const minor = round4(d - 1.08253175 * pitch)
  const minorMax = round4(minor + round4(minorTolerance(d, pitch, wanted)))
  // From #6 up the standard prints minor diameters of 1B and 2B to three places, and rounds the smallest of 3B alike.
  const small = d < 0.138
  return good({
    of: 'hole',
    minor: { min: small ? minor : round3(minor), max: wanted === '3B' || small ? minorMax : round3(minorMax) },
    pitch: { max: round4(pitchBasic + pitchWidth), min: pitchBasic },
    majorMin: d,
  })
}

/** Tolerance of the minor diameter of a hole. */
function minorTolerance(d: number, pitch: number, wanted: UnifiedClass): number {
  const general = 0.05 * Math.cbrt(pitch * pitch) + (0.03 * pitch) / d - 0.002
  if (wanted === '3B') {
    const least = pitch < 1 / 12.5 ? 0.23 * pitch - 1.5 * pitch * pitch : 0.12 * pitch
    return Math.min(Math.max(general, least), 0.394 * pitch)
  }
  const wide = pitch > 0.25 ? 0.15 * pitch : 0.25 * pitch - 0.4 * pitch * pitch
  return d < 0.25 ? Math.min(Math.max(general, wide), 0.394 * pitch) : wide
}

function round4(value: number): number {
  return Math.round(value * 1e4 + 1e-7) / 1e4
}

function round3(value: number): number {
  return Math.round(value * 1e3 + 1e-7) / 1e3
}
