import { bad, good, type Outcome } from '../../brief/outcome.ts'

/**
 * General tolerances written out after ISO 22081:2021, which replaced ISO 2768-2 and has no values of its own:
 * one ± for linear sizes, one for angular sizes, and a surface profile for everything else.
 */
export interface Iso22081 {
  /** ± of linear sizes, mm. */
  readonly linear?: number
  /** ± of angular sizes, degrees. */
  readonly angular?: number
  /** Frame of the general surface profile, as written. */
  readonly profile?: string
}

/** Does a general tolerance call up ISO 22081? */
export function callsIso22081(text: string): boolean {
  return /\bISO\s*22081\b/i.test(text)
}

/** Reads `ISO 22081 ±0.2`, `ISO 22081 ±0.2 ±1° ⌓ 0.4 A B C`. */
export function readIso22081(text: string): Outcome<Iso22081> {
  if (!callsIso22081(text))
    return bad({ text: `"${text.trim()}" does not call up ISO 22081.`, expected: 'ISO 22081 ±0.2 ⌓ 0.4 A B C' })
  const rest = text.replace(/\bISO\s*22081\b/i, ' ')
  const found: { linear?: number; angular?: number; profile?: string } = {}
  for (const [, digits, degrees] of rest.matchAll(/(?:±|\+-|\+\/-)\s*(\d*[.,]?\d+)\s*(°)?/g)) {
    found[degrees ? 'angular' : 'linear'] = Number(digits!.replace(',', '.'))
  }
  const profile = /(?:⌓|profile)\s*.+$/i.exec(rest.replace(/\s+/g, ' '))
  if (profile) found.profile = profile[0].trim()
  if (found.linear === undefined && found.angular === undefined && found.profile === undefined) {
    return bad({
      text: 'ISO 22081 is called up without values, and has none of its own.',
      expected: 'ISO 22081 ±0.2 ⌓ 0.4 A B C',
    })
  }
  return good(found)
}

/** The statement for the title block (wording after the standard, from memory). */
export function iso22081Statement({ linear, angular, profile }: Iso22081): string {
  return [
    'GENERAL TOLERANCES ISO 22081',
    ...(linear === undefined ? [] : [`LINEAR SIZES ±${linear}`]),
    ...(angular === undefined ? [] : [`ANGULAR SIZES ±${angular}°`]),
    ...(profile === undefined ? [] : [`OTHER FEATURES ${profile}`]),
  ].join(' | ')
}
