import { useEffect, useMemo, useState } from 'react'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Checked, Drawn, PageMark } from '../engine/messages.ts'
import { byWeight } from './by-weight.ts'
import { carriedMarks } from './carried-marks.ts'
import { lapsedMark } from './lapsed-mark.ts'
import type { EngineUse } from './use-engine.ts'

/** Milliseconds without a new sheet after which the checker is asked: never between two keystrokes. */
const QUIET = 180

export interface CheckUse {
  /** What must change first. While the checker has not been round, its last marks go along with the text. */
  readonly marks: readonly PageMark[]
  /** The checker has been round this very text. */
  readonly settled: boolean
  readonly print: Sheet | undefined
}

/** A brief on the bench: what is written, and its newest drawing. */
interface Subject {
  readonly part: string | undefined
  readonly text: string | undefined
  readonly drawn: Drawn | undefined
  /** The text that its signatures stand for. */
  readonly signed: string | undefined
}

/** The checker, asked once the sheet of what is written is on the paper. */
export function useCheck(
  { engine, settle }: Pick<EngineUse, 'engine' | 'settle'>,
  { part, text, drawn, signed }: Subject,
  print: boolean,
): CheckUse {
  const [found, setFound] = useState<{ readonly part: string; readonly checked: Checked }>()
  useEffect(() => {
    if (!part || !drawn || drawn.brief.text !== text) return undefined
    let stale = false
    const timer = setTimeout(() => {
      engine.check(part, text, print).then(
        (checked) => {
          if (stale) return
          setFound({ part, checked })
          if (checked.drawn) settle(part, checked.drawn)
        },
        // A newer text is asked about in its turn; a fault of the engine is told by the drawing.
        () => {},
      )
    }, QUIET)
    return () => {
      stale = true
      clearTimeout(timer)
    }
  }, [engine, settle, part, text, drawn, print])
  const checked = found && found.part === part ? found.checked : undefined
  const settled = checked !== undefined && checked.text === drawn?.brief.text
  const marks = useMemo(() => {
    if (!drawn) return []
    // Behind the checker's own, whose numbers are those of the check print.
    const lapsed = lapsedMark(drawn.brief.text, signed)
    if (!checked) return [...byWeight<PageMark>(drawn.marks), ...lapsed]
    if (checked.text === drawn.brief.text) return [...checked.marks, ...lapsed]
    const older = checked.marks.filter((m) => m.checker)
    const carried = carriedMarks(older, checked.text, drawn.brief.text)
    return [...byWeight<PageMark>([...drawn.marks, ...carried]), ...lapsed]
  }, [checked, drawn, signed])
  return { marks, settled, print: settled && print ? checked.print : undefined }
}
