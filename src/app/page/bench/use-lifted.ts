import { useCallback, useState } from 'react'
import type { Engine } from '../engine/engine.ts'
import type { SolidPicture } from '../engine/messages.ts'

export interface Lifting {
  /** Absent while the pictorial lies on its sheet. */
  readonly lifted: { readonly solid?: SolidPicture; readonly fault?: string } | undefined
  /** Takes the solid of a brief into the hand, or its newer state where one is there already. */
  readonly lift: (text: string) => void
  readonly putBack: () => void
}

/** The pictorial lifted off the sheet. */
export function useLifted(engine: Engine): Lifting {
  const [lifted, setLifted] = useState<{ solid?: SolidPicture; fault?: string }>()
  const lift = useCallback(
    (text: string) => {
      setLifted((now) => now ?? {})
      engine.solid(text).then(
        (solid) => setLifted((now) => now && { solid }),
        (fault: unknown) =>
          setLifted((now) => now && { fault: fault instanceof Error ? fault.message : String(fault) }),
      )
    },
    [engine],
  )
  const putBack = useCallback(() => setLifted(undefined), [])
  return { lifted, lift, putBack }
}
