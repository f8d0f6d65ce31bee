import { useCallback, useState } from 'react'
import type { Engine } from '../engine/engine.ts'
import type { Held, ModelAsked, Seen, SolidPicture } from '../engine/messages.ts'

export interface InHand {
  readonly solid?: SolidPicture
  readonly fault?: string
  /** On its way back to the sheet. */
  readonly going: boolean
  /** The solid in exact lines, as it is held. */
  readonly look: (held: Held) => Promise<Seen>
}

export interface Lifting {
  /** Absent while the pictorial lies on its sheet. */
  readonly lifted: InHand | undefined
  /** Takes the solid of a brief, or of a model, into the hand, or its newer state where one is there already. */
  readonly lift: (text: string, model?: ModelAsked) => void
  readonly putBack: () => void
  /** It lies on the sheet again, or the sheet is gone. */
  readonly drop: () => void
}

/** The pictorial lifted off the sheet. */
export function useLifted(engine: Engine): Lifting {
  const [lifted, setLifted] = useState<InHand>()
  const lift = useCallback(
    (text: string, model?: ModelAsked) => {
      const look = (held: Held) => engine.look(text, held, model)
      setLifted((now) => now ?? { going: false, look })
      engine.solid(text, model).then(
        (solid) => setLifted((now) => now && { solid, look, going: now.going }),
        (fault: unknown) =>
          setLifted((now) => now && { ...now, fault: fault instanceof Error ? fault.message : String(fault) }),
      )
    },
    [engine],
  )
  const putBack = useCallback(() => setLifted((now) => now && { ...now, going: true }), [])
  const drop = useCallback(() => setLifted(undefined), [])
  return { lifted, lift, putBack, drop }
}
