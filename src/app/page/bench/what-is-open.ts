import { notDrawn, notDrawnWords } from '../../not-drawn.ts'
import type { Drawn } from '../engine/messages.ts'
import { sizesOf } from '../sheet/touch.ts'

/** What keeps a sheet from saying all that its brief was to say, whatever the proof says of the sizes that stand on it. */
export interface Open {
  /** Sizes that are still a question mark. */
  readonly unknown: number
  /** Statements not drawn as meant. */
  readonly statements: number
  /** Sizes for which the sheet has no room. */
  readonly sizesLeftOff: number
  readonly tablesLeftOff: number
}

export function whatIsOpen({ brief, marks, features }: Drawn): Open {
  const must = marks.filter((m) => m.weight === 'must change' && m.accepted === undefined)
  const left = (rule: string) => must.filter((m) => m.rule === rule).length
  return {
    unknown: sizesOf(brief).filter((s) => 'unknown' in s && s.unknown).length,
    statements: notDrawn({ brief, marks, features }),
    sizesLeftOff: left('no-room-for-size'),
    tablesLeftOff: left('no-room-for-table'),
  }
}

/** In words, most telling first; empty where nothing is open. */
export function openWords({ unknown, statements, sizesLeftOff, tablesLeftOff }: Open): string {
  const counted = (n: number, one: string, more: string) => (n === 0 ? [] : [`${n} ${n === 1 ? one : more}`])
  return [
    ...[notDrawnWords(statements)].filter((words) => words !== ''),
    ...counted(unknown, 'size is “?”', 'sizes are “?”'),
    ...counted(tablesLeftOff, 'hole table left off', 'hole tables left off'),
    ...counted(sizesLeftOff, 'size left off', 'sizes left off'),
  ].join(', ')
}
