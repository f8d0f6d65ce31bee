import { bad, good, type Outcome } from '../../brief/outcome.ts'
import { nearestWord } from '../nearest.ts'
import { forceLower, forceSteps, inchDeviations, inchGrades, inchJs, inchSteps, ln1 } from './b41-table.ts'

/** Limits of a hole and a shaft above and below the basic size, in inches. */
export interface InchFit {
  readonly symbol: string
  readonly hole: { readonly upper: number; readonly lower: number }
  readonly shaft: { readonly upper: number; readonly lower: number }
  /** Smallest and largest clearance, in; negative is interference. */
  readonly minClearance: number
  readonly maxClearance: number
}

/** Hole grade, shaft deviation and shaft grade of each class. `+` marks a shaft above the basic size. */
const classes: Readonly<Record<string, readonly [hole: number, shaft: string, grade: number]>> = {
  RC1: [5, 'gR', 4],
  RC2: [6, 'gR', 5],
  RC3: [7, 'fR', 6],
  RC4: [8, 'fR', 7],
  RC5: [8, 'eR', 7],
  RC6: [9, 'eR', 8],
  RC7: [9, 'dR', 8],
  RC8: [10, 'c', 9],
  RC9: [11, 'RC9', 10],
  LC1: [6, 'h', 5],
  LC2: [7, 'h', 6],
  LC3: [8, 'h', 7],
  LC4: [10, 'h', 9],
  LC5: [7, 'gL', 6],
  LC6: [9, 'fL', 8],
  LC7: [10, 'eL', 9],
  LC8: [10, 'dL', 9],
  LC9: [11, 'c', 10],
  LC10: [12, 'LC10', 12],
  LC11: [13, 'LC11', 13],
  LT1: [7, 'js', 6],
  LT2: [8, 'js', 7],
  LT3: [7, '+k', 6],
  LT4: [8, '+k', 7],
  LT5: [7, '+n', 6],
  LT6: [7, '+n', 7],
  LN1: [6, 'ln1', 5],
  LN2: [7, '+p', 6],
  LN3: [7, '+r', 6],
  FN1: [6, 'force', 5],
  FN2: [7, 'force', 6],
  FN3: [7, 'force', 6],
  FN4: [7, 'force', 6],
  FN5: [8, 'force', 7],
}

export const inchFitClasses: readonly string[] = Object.keys(classes)

/**
 * Limits of an ANSI B4.1-1967 class of fit (`RC 4`, `FN2`) at a basic size in inches, up to 19.69 in.
 * The classes are not written on drawings; the limits they give are.
 */
export function inchFit(symbol: string, sizeIn: number): Outcome<InchFit> {
  const key = symbol.replace(/[\s-]/g, '').toUpperCase()
  const wanted = classes[key]
  if (!wanted) {
    const near = nearestWord(key, inchFitClasses)!
    return bad({
      text: `ANSI B4.1 has no class of fit "${symbol}".`,
      expected: 'RC 1 to 9, LC 1 to 11, LT 1 to 6, LN 1 to 3 or FN 1 to 5',
      instead: near.replace(/(\d)/, ' $1'),
    })
  }
  const step = inchSteps.findIndex((bound) => sizeIn > 0 && sizeIn <= bound)
  if (step < 0)
    return bad({ text: `ANSI B4.1 is held here up to 19.69 in, not ${sizeIn} in.`, expected: 'a size up to 19.69 in' })
  const [holeGrade, shaft, grade] = wanted
  const limits = shaftLimits(key, shaft, grade, step, sizeIn)
  if (Number.isNaN(limits.lower)) {
    return bad({ text: `ANSI B4.1 gives no ${symbol} at ${sizeIn} in.`, expected: 'a larger size or another class' })
  }
  const hole = inchGrades[holeGrade]![step]!
  return good({
    symbol: key.replace(/(\d+)$/, ' $1'),
    hole: { upper: inches(hole), lower: 0 },
    shaft: { upper: inches(limits.upper), lower: inches(limits.lower) },
    minClearance: inches(-limits.upper),
    maxClearance: inches(hole - limits.lower),
  })
}

function shaftLimits(key: string, shaft: string, grade: number, step: number, sizeIn: number) {
  const width = inchGrades[grade]![step]!
  if (shaft === 'js') return { upper: inchJs[grade]![step]!, lower: -inchJs[grade]![step]! }
  if (shaft === 'ln1') return { upper: ln1.upper[step]!, lower: ln1.lower[step]! }
  if (shaft === 'force') {
    const forceStep = forceSteps.findIndex((bound) => sizeIn <= bound)
    const lower = forceLower[Number(key[2])]![forceStep]!
    // The standard prints +6.1, not +6.0, for the shaft of FN 1 above 13.98 to 15.75 in.
    return { upper: key === 'FN1' && forceStep === 22 ? 6.1 : lower + width, lower }
  }
  if (shaft.startsWith('+')) {
    const lower = inchDeviations[shaft.slice(1)]![step]!
    return { upper: lower + width, lower }
  }
  const upper = 0 - inchDeviations[shaft]![step]!
  // The standard prints −6.0, not −6.3, for the shaft of RC 9 above 0.12 to 0.24 in.
  return { upper, lower: key === 'RC9' && step === 1 ? -6 : upper - width }
}

/** Thousandths to inches, without the dust of binary fractions. */
function inches(thousandths: number): number {
  return Math.round(thousandths * 100) / 100_000
}
