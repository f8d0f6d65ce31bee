import { useMemo, useRef } from 'react'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Drawn } from '../engine/messages.ts'
import { type Ties, tiesOf } from '../sheet/light.ts'

export interface Printed {
  readonly drawn: Drawn
  readonly ties: Ties
  /** The brief was changed since: the print of what is written now is still to come. */
  readonly older: boolean
}

/**
 * The drawing with its check print in the place of its sheet. It has every item of the sheet too, the pencil about them.
 * While one writes on, the last print of the brief stays.
 */
export function usePrinted(
  brief: string | undefined,
  good: Drawn | undefined,
  print: Sheet | undefined,
  asked: boolean,
): Printed | undefined {
  const last = useRef<{ readonly brief: string | undefined; readonly printed: Printed }>(undefined)
  const fresh = useMemo((): Printed | undefined => {
    if (!good || !print) return undefined
    const drawn = { ...good, sheet: print }
    return { drawn, ties: tiesOf(drawn), older: false }
  }, [good, print])
  const kept = last.current?.brief === brief ? last.current?.printed : undefined
  last.current = asked && (fresh ?? kept) ? { brief, printed: (fresh ?? kept)! } : undefined
  return useMemo(() => (asked ? (fresh ?? (kept && { ...kept, older: true })) : undefined), [asked, fresh, kept])
}
