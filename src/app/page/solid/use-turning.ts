import { type RefObject, useEffect, useRef, useState } from 'react'
import type { SolidPicture } from '../engine/messages.ts'
import type { Turning } from './turning.ts'

/** What draws the part while it moves; absent until it is loaded, and in a browser without WebGL. */
export function useTurning(canvas: RefObject<HTMLCanvasElement | null>, solid: SolidPicture | undefined) {
  const turning = useRef<Turning>(undefined)
  const [ready, setReady] = useState<SolidPicture>()
  useEffect(() => {
    if (!solid) return undefined
    let gone = false
    import('./turning.ts').then(
      ({ Turning: Made }) => {
        if (gone) return
        try {
          turning.current = new Made(canvas.current!, solid)
          setReady(solid)
        } catch {
          // No WebGL: the part is drawn where it comes to rest.
        }
      },
      () => {},
    )
    return () => {
      gone = true
      setReady(undefined)
      turning.current?.close()
      turning.current = undefined
    }
  }, [canvas, solid])
  return { turning, ready: ready !== undefined && ready === solid }
}
