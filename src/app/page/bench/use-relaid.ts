import { useCallback, useEffect, useRef } from 'react'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Drawn } from '../engine/messages.ts'

const called = ({ format, scale }: Pick<Sheet, 'format' | 'scale'>): string => `${format}, ${scale}`

/**
 * Says when something that was put elsewhere by hand has changed the sheet's format or scale: the view or the size that
 * was moved leaves no room for the rest on the old one. `placed` is told what was written, and on which sheet.
 */
export function useRelaid(
  good: Drawn | undefined,
  tell: (text: string) => void,
): (statement: string, on: Sheet) => void {
  const waiting = useRef<{ readonly statement: string; readonly on: Sheet }>(undefined)
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked once of each new drawing
  useEffect(() => {
    const { current } = waiting
    const sheet = good?.sheet
    if (!current || !sheet || sheet === current.on) return
    waiting.current = undefined
    if (called(sheet) === called(current.on)) return
    tell(
      `${current.statement}: so not all has room on ${called(current.on)}, and the sheet is ${called(sheet)} now. Undo takes it back.`,
    )
  }, [good])
  return useCallback((statement, on) => {
    waiting.current = { statement, on }
  }, [])
}
