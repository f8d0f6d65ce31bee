import { useCallback, useEffect, useRef, useState } from 'react'
import type { Mark } from '../../../brief/mark.ts'

/** The mark that is open in the margin, by its place in the list as it is now. Once it is gone, none is. */
export function useOpenMark(
  marks: readonly Mark[],
): readonly [open: number | undefined, setOpen: (mark: number | undefined) => void] {
  const [opened, setOpened] = useState<{ readonly at: number; readonly mark: Mark | undefined }>()
  const latest = useRef(marks)
  latest.current = marks
  const open = opened && (opened.mark ? placeNow(marks, opened.at, opened.mark) : marks[opened.at] && opened.at)
  // Asked for while the checker was still at work: it is the one that then comes to stand there.
  useEffect(() => {
    if (opened && !opened.mark && marks[opened.at]) setOpened({ at: opened.at, mark: marks[opened.at] })
  }, [opened, marks])
  const setOpen = useCallback(
    (at: number | undefined) => setOpened(at === undefined ? undefined : { at, mark: latest.current[at] }),
    [],
  )
  return [open, setOpen]
}

/** Where the same mark stands among newer ones: by its words, else by its rule at its old place. */
function placeNow(marks: readonly Mark[], at: number, { rule, text }: Mark): number | undefined {
  const same = marks.findIndex((m) => m.rule === rule && m.text === text)
  if (same >= 0 && marks[at]?.text !== text) return same
  return marks[at]?.rule === rule ? at : undefined
}
