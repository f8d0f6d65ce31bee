import { useCallback, useRef, useState } from 'react'
import type { Mark } from '../../../brief/mark.ts'

/** The mark that is open in the margin, by its place in the list. Where another mark has come to that place, none is. */
export function useOpenMark(
  marks: readonly Mark[],
): readonly [open: number | undefined, setOpen: (mark: number | undefined) => void] {
  const [opened, setOpened] = useState<{ readonly at: number; readonly rule: string | undefined }>()
  const latest = useRef(marks)
  latest.current = marks
  const open = opened && marks[opened.at]?.rule === opened.rule ? opened.at : undefined
  const setOpen = useCallback(
    (at: number | undefined) => setOpened(at === undefined ? undefined : { at, rule: latest.current[at]?.rule }),
    [],
  )
  return [open, setOpen]
}
