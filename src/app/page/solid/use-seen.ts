import { useEffect, useRef, useState } from 'react'
import type { Held, Seen, SolidPicture } from '../engine/messages.ts'

/** Milliseconds without a movement after which the part is at rest. */
const REST = 120

/**
 * The part at rest in exact lines; undefined while it moves, and until the engine has drawn it. `key` says how it is
 * held: another key, another view.
 */
export function useSeen(
  solid: SolidPicture | undefined,
  key: string,
  held: () => Held | undefined,
  look: (held: Held) => Promise<Seen>,
): { readonly seen: Seen | undefined; readonly last: Seen | undefined } {
  const [found, setFound] = useState<{ key: string; solid: SolidPicture; seen: Seen }>()
  const latest = useRef({ held, look })
  latest.current = { held, look }
  useEffect(() => {
    if (!solid) return undefined
    let gone = false
    const timer = setTimeout(() => {
      const now = latest.current.held()
      if (!now) return
      latest.current.look(now).then(
        (seen) => !gone && setFound({ key, solid, seen }),
        // Held otherwise by now, or the engine is at a newer brief: what is drawn in motion stays.
        () => {},
      )
    }, REST)
    return () => {
      gone = true
      clearTimeout(timer)
    }
  }, [solid, key])
  return { seen: found?.key === key && found.solid === solid ? found.seen : undefined, last: found?.seen }
}
