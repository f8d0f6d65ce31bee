import { bad, good, type Outcome } from '../../brief/outcome.ts'
import { type FitLimits, fitLimits } from './limits.ts'

/** How a hole and a shaft of the same nominal size go together. */
export interface Fit {
  readonly hole: FitLimits
  readonly shaft: FitLimits
  readonly kind: 'clearance' | 'transition' | 'interference'
  /** Largest and smallest clearance, mm; a negative clearance is an interference. */
  readonly maxClearance: number
  readonly minClearance: number
}

/** A fit written hole over shaft, such as `H7/g6`, at a nominal size in mm. */
export function fitPair(symbol: string, sizeMm: number): Outcome<Fit> {
  const parts = symbol.split('/').map((part) => part.trim())
  if (parts.length !== 2) {
    return bad({
      text: `"${symbol}" is not a fit.`,
      expected: 'hole and shaft with a stroke between them, such as H7/g6',
    })
  }
  const first = fitLimits(parts[0]!, sizeMm)
  if (!first.ok) return first
  const second = fitLimits(parts[1]!, sizeMm)
  if (!second.ok) return second
  if (first.value.of !== 'hole' || second.value.of !== 'shaft') {
    return bad({
      text: `"${symbol}" does not pair a hole with a shaft.`,
      expected: 'the hole in capitals first, the shaft in small letters after the stroke',
    })
  }
  return good(fitOf(first.value, second.value))
}

/** The clearance between a hole and a shaft whose limits are known. */
function fitOf(hole: FitLimits, shaft: FitLimits): Fit {
  // Differences are taken in µm, which are exact where the tables are.
  const max = hole.upperMicrons - shaft.lowerMicrons
  const min = hole.lowerMicrons - shaft.upperMicrons
  const kind = min >= 0 ? 'clearance' : max <= 0 ? 'interference' : 'transition'
  return { hole, shaft, kind, maxClearance: max / 1000, minClearance: min / 1000 }
}
