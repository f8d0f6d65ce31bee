import { useMemo } from 'react'
import type { Brief } from '../../../brief/brief.ts'
import { readBrief } from '../../../brief/read.ts'
import type { Drawn, PageMark } from '../engine/messages.ts'
import { type Ties, tiesOf } from '../sheet/light.ts'
import type { Kept } from '../shelf/shelf.ts'
import { byWeight, NO_MARKS } from './by-weight.ts'
import { standingOf } from './standing.ts'
import { type CheckUse, useCheck } from './use-check.ts'
import type { EngineUse, Shown } from './use-engine.ts'

/** The brief on the bench as far as it is drawn and checked. */
export interface Drawing {
  /** Its newest drawing; absent before there is one. */
  readonly mine: Shown | undefined
  /** The drawing whose sheet lies there. */
  readonly good: Drawn | undefined
  readonly ties: Ties | undefined
  readonly check: CheckUse
  readonly marks: readonly PageMark[]
  /** The sheet is older than the brief, which could not be drawn. */
  readonly stale: boolean
  /** How the sheet stands to the brief, where it is not its newest drawing. */
  readonly standing: string | undefined
  readonly brief: Brief | undefined
}

export function useDrawing(engines: EngineUse, active: Kept | undefined, checkPrint: boolean): Drawing {
  const mine = active && engines.shown.get(active.id)
  const good = mine?.good
  const ties = useMemo(() => good && tiesOf(good), [good])
  // Before the first drawing the reader alone says what it can.
  const read = useMemo(() => (active && !mine ? readBrief(active.text) : undefined), [mine, active])
  const check = useCheck(
    engines,
    { part: active?.id, text: active?.text, drawn: mine?.drawn, signed: active?.signed },
    checkPrint,
  )
  const early = useMemo(() => byWeight(read?.marks ?? NO_MARKS), [read])
  return {
    mine,
    good,
    ties,
    check,
    marks: mine ? check.marks : early,
    stale: mine !== undefined && good !== undefined && good !== mine.drawn,
    standing: standingOf(mine, active && engines.faults.get(active.id)),
    brief: mine?.drawn.brief ?? read,
  }
}
