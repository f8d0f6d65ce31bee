import { useEffect, useMemo, useState } from 'react'
import { type Lying, liesOverSheet, type Room, roomFor, type Window } from './room.ts'

const measured = (): Window => ({
  width: innerWidth,
  height: innerHeight,
  rem: Number.parseFloat(getComputedStyle(document.documentElement).fontSize),
})

/** Whether the brief's slip begins folded: it would lie over the sheet. */
export const beginsFolded = (): boolean => liesOverSheet(measured())

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
