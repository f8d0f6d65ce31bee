import { useMemo } from 'react'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Drawn } from '../engine/messages.ts'
import { type Ties, tiesOf } from '../sheet/light.ts'

export interface Printed {
  readonly drawn: Drawn
  readonly ties: Ties
}

/** The drawing with its check print in the place of its sheet. It has every item of the sheet too, the pencil about them. */
export function usePrinted(good: Drawn | undefined, print: Sheet | undefined): Printed | undefined {
  return useMemo(() => {
    if (!good || !print) return undefined
    const drawn = { ...good, sheet: print }
    return { drawn, ties: tiesOf(drawn) }
  }, [good, print])
}
