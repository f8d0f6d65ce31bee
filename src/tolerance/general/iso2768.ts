import { bad, good, type Outcome } from '../../brief/outcome.ts'
import { nearestWord } from '../nearest.ts'

// ISO 2768-1:1989 tables 1 to 3 and ISO 2768-2:1989 tables 1 to 4, from memory. Part 2 was withdrawn and replaced by
// ISO 22081:2021, which has no values of its own; part 1 stands.

export type LinearClass = 'f' | 'm' | 'c' | 'v'
export type GeometricalClass = 'H' | 'K' | 'L'

/** A designation such as `ISO 2768-mK`. */
export interface Iso2768 {
  readonly linear?: LinearClass
  readonly geometrical?: GeometricalClass
  /** `-E`: the envelope requirement holds for every single size. */
  readonly envelope: boolean
  /** Set when the withdrawn part is called up. */
  readonly note?: string
}

type Row = readonly (number | undefined)[]

const lengthSteps = [3, 6, 30, 120, 400, 1000, 2000, 4000]
const lengths: Readonly<Record<LinearClass, Row>> = {
  f: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, undefined],
  m: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2],
  c: [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4],
  v: [undefined, 0.5, 1, 1.5, 2.5, 4, 6, 8],
}

const cornerSteps = [3, 6, Number.POSITIVE_INFINITY]
const corners: Readonly<Record<LinearClass, Row>> = {
  f: [0.2, 0.5, 1],
  m: [0.2, 0.5, 1],
  c: [0.4, 1, 2],
  v: [0.4, 1, 2],
}

const legSteps = [10, 50, 120, 400, Number.POSITIVE_INFINITY]
/** Minutes of arc. */
const angles: Readonly<Record<LinearClass, Row>> = {
  f: [60, 30, 20, 10, 5],
  m: [60, 30, 20, 10, 5],
  c: [90, 60, 30, 15, 10],
  v: [180, 120, 60, 30, 20],
}

const formSteps = [10, 30, 100, 300, 1000, 3000]
const form: Readonly<Record<GeometricalClass, Row>> = {
  H: [0.02, 0.05, 0.1, 0.2, 0.3, 0.4],
  K: [0.05, 0.1, 0.2, 0.4, 0.6, 0.8],
  L: [0.1, 0.2, 0.4, 0.8, 1.2, 1.6],
}
const squareSteps = [100, 300, 1000, 3000]
const square: Readonly<Record<GeometricalClass, Row>> = {
  H: [0.2, 0.3, 0.4, 0.5],
  K: [0.4, 0.6, 0.8, 1],
  L: [0.6, 1, 1.5, 2],
}
const symmetry: Readonly<Record<GeometricalClass, Row>> = {
  H: [0.5, 0.5, 0.5, 0.5],
  K: [0.6, 0.6, 0.8, 1],
  L: [0.6, 1, 1.5, 2],
}
const runout: Readonly<Record<GeometricalClass, number>> = { H: 0.1, K: 0.2, L: 0.5 }

function find(steps: readonly number[], row: Row, size: number): number | undefined {
  const step = steps.findIndex((bound) => size <= bound)
  return step < 0 ? undefined : row[step]
}

/** Permissible deviation ± of a length, mm. Undefined below 0.5 mm and where the class gives none: the size then needs its own tolerance. */
export function linearDeviation(wanted: LinearClass, sizeMm: number): number | undefined {
  return sizeMm < 0.5 ? undefined : find(lengthSteps, lengths[wanted], sizeMm)
}

/** Permissible deviation ± of an external radius or a chamfer height, mm. Undefined below 0.5 mm. */
export function cornerDeviation(wanted: LinearClass, sizeMm: number): number | undefined {
  return sizeMm < 0.5 ? undefined : find(cornerSteps, corners[wanted], sizeMm)
}

/** Permissible deviation ± of an angle, degrees, by the length of its shorter leg in mm. */
export function angularDeviation(wanted: LinearClass, shorterLegMm: number): number | undefined {
  const minutes = shorterLegMm > 0 ? find(legSteps, angles[wanted], shorterLegMm) : undefined
  return minutes === undefined ? undefined : minutes / 60
}

/** General straightness or flatness, mm: by the length of the line, the longer side of the surface or the diameter of a circular one. */
export function formTolerance(wanted: GeometricalClass, lengthMm: number): number | undefined {
  return lengthMm > 0 ? find(formSteps, form[wanted], lengthMm) : undefined
}

/** General perpendicularity, mm: by the shorter side of the right angle; the longer side is the datum. */
export function perpendicularity(wanted: GeometricalClass, shorterSideMm: number): number | undefined {
  return shorterSideMm > 0 ? find(squareSteps, square[wanted], shorterSideMm) : undefined
}

/** General symmetry, mm: by the shorter feature; the longer is the datum. */
export function generalSymmetry(wanted: GeometricalClass, shorterMm: number): number | undefined {
  return shorterMm > 0 ? find(squareSteps, symmetry[wanted], shorterMm) : undefined
}

/** General circular run-out, radial, axial and of any surface of revolution, mm. */
export function circularRunout(wanted: GeometricalClass): number {
  return runout[wanted]
}

/**
 * General roundness, mm: the diameter tolerance in figures, but never more than the circular run-out (ISO 2768-2, 5.1.2).
 * Cylindricity has no general tolerance.
 */
export function roundness(wanted: GeometricalClass, diameterToleranceMm: number): number {
  return Math.min(diameterToleranceMm, runout[wanted])
}

const withdrawn =
  'ISO 2768-2 was withdrawn in 2021 and replaced by ISO 22081, which asks for the general geometrical tolerances to be written out.'

/** Reads a designation: `ISO 2768-m`, `ISO 2768-mK`, `ISO 2768-mK-E`, `ISO 2768-K`. */
export function readIso2768(text: string): Outcome<Iso2768> {
  const parts =
    /^\s*(?:DIN\s+|EN\s+)*(?:ISO)?\s*2768\s*(?:[-–\s]\s*(?:1\s*[-–]?\s*)?([A-Za-z]{1,2}))?\s*(?:[-–\s]\s*([Ee]))?\s*$/.exec(
      text,
    )
  if (!parts) {
    return bad({
      text: `"${text.trim()}" does not call up ISO 2768.`,
      expected: 'ISO 2768-m, ISO 2768-mK or ISO 2768-mK-E',
    })
  }
  const letters = parts[1]
  const legal = [
    'f',
    'm',
    'c',
    'v',
    'H',
    'K',
    'L',
    ...['f', 'm', 'c', 'v'].flatMap((a) => ['H', 'K', 'L'].map((b) => a + b)),
  ]
  if (letters === undefined || !legal.includes(letters)) {
    const near =
      letters === undefined
        ? 'm'
        : (legal.find((word) => word.toLowerCase() === letters.toLowerCase()) ?? nearestWord(letters, legal)!)
    return bad({
      text: letters === undefined ? 'ISO 2768 is called up without a class.' : `ISO 2768 has no class "${letters}".`,
      expected: 'f, m, c or v for sizes, then H, K or L for geometry',
      instead: `ISO 2768-${near}`,
    })
  }
  const linear = [...letters].find((letter) => 'fmcv'.includes(letter)) as LinearClass | undefined
  const geometrical = [...letters].find((letter) => 'HKL'.includes(letter)) as GeometricalClass | undefined
  return good({
    ...(linear ? { linear } : {}),
    ...(geometrical ? { geometrical, note: withdrawn } : {}),
    envelope: parts[2] !== undefined,
  })
}
