import { type RefObject, useEffect, useRef } from 'react'

/** The keyboard comes back to `place` when what lay over the bench is gone, unless it has found another place since. */
export function useReturn(away: boolean, place: RefObject<HTMLElement | null>): void {
  const was = useRef(away)
  useEffect(() => {
    if (was.current && !away && document.activeElement === document.body) place.current?.focus()
    was.current = away
  }, [away, place])
}
