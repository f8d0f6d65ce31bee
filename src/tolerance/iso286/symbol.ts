import { bad, good, type Outcome } from '../../brief/outcome.ts'
import { nearestNumber, nearestWord } from '../nearest.ts'
import { grades } from './grades.ts'

/** Fundamental deviations of shafts in the order of their position; holes have the same letters in capitals. */
export const zones: readonly string[] = 'a b c cd d e ef f fg g h js j k m n p r s t u v x y z za zb zc'.split(' ')

/** A tolerance class: `H7`, `js6`. */
export interface ToleranceClass {
  readonly of: 'hole' | 'shaft'
  /** Letter or letters in lower case. */
  readonly zone: string
  readonly grade: string
  /** As ISO 286 writes it. */
  readonly symbol: string
}

/** Reads a tolerance class. Capitals mean a hole, small letters a shaft. */
export function readToleranceClass(text: string): Outcome<ToleranceClass> {
  const trimmed = text.trim()
  const parts = /^([A-Za-z]+)\s*(\d+)$/.exec(trimmed)
  if (!parts) {
    return bad({ text: `"${trimmed}" is not a tolerance class.`, expected: 'letter and grade, such as H7 or g6' })
  }
  const [, letters, digits] = parts as unknown as [string, string, string]
  const zone = letters.toLowerCase()
  const capital = letters[0] !== zone[0]
  const dress = (z: string) => (capital ? z.toUpperCase() : z)
  const grade = grades.includes(digits) ? digits : undefined
  const nearGrade = grade ?? String(nearestNumber(Number(digits), grades.map(Number)))
  if (!zones.includes(zone)) {
    const near = nearestZone(zone)
    return bad({
      text: `ISO 286 has no zone "${dress(zone)}".`,
      expected: `one of ${zones.map(dress).join(', ')}`,
      instead: `${dress(near)}${nearGrade}`,
    })
  }
  if (capital && letters !== letters.toUpperCase()) {
    return bad({
      text: `"${trimmed}" mixes capitals and small letters.`,
      expected: `${zone.toUpperCase()} for a hole or ${zone} for a shaft`,
      instead: `${zone.toUpperCase()}${nearGrade}`,
    })
  }
  if (!grade) {
    return bad({
      text: `ISO 286 has no standard tolerance grade ${digits}.`,
      expected: 'a grade from 01, 0, 1 to 18',
      instead: `${dress(zone)}${nearGrade}`,
    })
  }
  return good({ of: capital ? 'hole' : 'shaft', zone, grade, symbol: `${dress(zone)}${grade}` })
}

/** i, l, o, q and w are left out of the alphabet of zones; each goes to its neighbour, anything else to the nearest spelling. */
function nearestZone(zone: string): string {
  const neighbour: Readonly<Record<string, string>> = { i: 'h', l: 'k', o: 'n', q: 'p', w: 'v' }
  return neighbour[zone] ?? nearestWord(zone, zones)!
}
