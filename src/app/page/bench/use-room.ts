import { useEffect, useMemo, useState } from 'react'
import { type Lying, type Room, roomFor, takesFromSheet, type Window } from './room.ts'

const measured = (): Window => ({
  width: innerWidth,
  height: innerHeight,
  rem: Number.parseFloat(getComputedStyle(document.documentElement).fontSize),
})

/** Whether the brief's slip begins folded: it would take the sheet's room. */
export const beginsFolded = (): boolean => takesFromSheet(measured())

/** The sheet's place in the window as it is. */
export function useRoom({ folded, paper, withoutMargin, withoutDesks = false }: Lying): Room {
  const [window, setWindow] = useState(measured)
  useEffect(() => {
    const measure = () => setWindow(measured())
    addEventListener('resize', measure)
    return () => removeEventListener('resize', measure)
  }, [])
  const { width, height } = paper
  return useMemo(
    () => roomFor(window, { folded, paper: { width, height }, withoutMargin, withoutDesks }),
    [window, folded, width, height, withoutMargin, withoutDesks],
  )
}
