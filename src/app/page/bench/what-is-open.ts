import type { Mark } from '../../../brief/mark.ts'
import type { Drawn } from '../engine/messages.ts'
import { sizesOf } from '../sheet/touch.ts'

/** What keeps a sheet from saying all that its brief was to say, whatever the proof says of the sizes that stand on it. */
export interface Open {
  /** Sizes that are still a question mark. */
  readonly unknown: number
  /** Statements with something that must change before they are drawn as meant. */
  readonly statements: number
  /** Sizes for which the sheet has no room. */
  readonly sizesLeftOff: number
  readonly tablesLeftOff: number
}

export function whatIsOpen({ brief, marks, features }: Drawn): Open {
  const must = marks.filter((m) => m.weight === 'must change' && m.accepted === undefined)
  const starts = statementStarts(brief.text)
  const startOf = (mark: Mark): number | undefined => starts.findLast((at) => mark.span && at <= mark.span.from)
  const made = new Set(features.filter((f) => f.span && f.faces.length > 0).map((f) => f.span!.from))
  const read = brief.marks.filter((m) => m.weight === 'must change').map(startOf)
  const stock = brief.stock?.span.from ?? 0
  const notMade = must.map(startOf).filter((at) => at !== undefined && at > stock && !made.has(at))
  const statements = new Set([...read, ...notMade].filter((at) => at !== undefined))
  const left = (rule: string) => must.filter((m) => m.rule === rule).length
  return {
    unknown: sizesOf(brief).filter((s) => 'unknown' in s && s.unknown).length,
    statements: statements.size,
    sizesLeftOff: left('no-room-for-size'),
    tablesLeftOff: left('no-room-for-table'),
  }
}

/** In words, most telling first; empty where nothing is open. */
export function openWords({ unknown, statements, sizesLeftOff, tablesLeftOff }: Open): string {
  const counted = (n: number, one: string, more: string) => (n === 0 ? [] : [`${n} ${n === 1 ? one : more}`])
  return [
    ...counted(statements, 'statement to be mended', 'statements to be mended'),
    ...counted(unknown, 'size is “?”', 'sizes are “?”'),
    ...counted(tablesLeftOff, 'hole table left off', 'hole tables left off'),
    ...counted(sizesLeftOff, 'size left off', 'sizes left off'),
  ].join(', ')
}

/** Where statements begin: at each line that is neither set in nor empty nor a comment. */
const statementStarts = (text: string): number[] => [...text.matchAll(/^[^\s#]/gm)].map((m) => m.index)
