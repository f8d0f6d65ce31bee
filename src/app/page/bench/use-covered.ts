import { useEffect, useState } from 'react'
import type { Covered } from '../sheet/viewport.ts'

/** What slip, margin and routing slip take from the window, in rem; the style sheet says the same. */
const REM = { slip: 23.5, foldedSlip: 2.6, margin: 16, edge: 1.2, top: 1.2, routing: 8.1 }

/** Px that lie under slip, routing slip and, where there is one, the margin. */
export function useCovered(folded: boolean, margin: boolean): Covered {
  const [rem, setRem] = useState(rootSize)
  useEffect(() => {
    const measure = () => setRem(rootSize())
    addEventListener('resize', measure)
    return () => removeEventListener('resize', measure)
  }, [])
  return {
    left: (folded ? REM.foldedSlip : REM.slip) * rem + REM.edge * rem,
    right: (margin ? REM.margin : REM.edge) * rem,
    top: REM.top * rem,
    bottom: REM.routing * rem,
  }
}

const rootSize = (): number => Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
