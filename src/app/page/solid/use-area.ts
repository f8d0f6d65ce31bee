import { type RefObject, useLayoutEffect, useState } from 'react'

export interface Area {
  readonly width: number
  readonly height: number
}

/** Inner size of an element in px, as it is now. */
export function useArea(element: RefObject<HTMLElement | null>): Area {
  const [area, setArea] = useState<Area>({ width: 0, height: 0 })
  useLayoutEffect(() => {
    const here = element.current!
    const measure = () => setArea({ width: here.clientWidth, height: here.clientHeight })
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(here)
    return () => observer.disconnect()
  }, [element])
  return area
}
