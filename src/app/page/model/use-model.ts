import { useCallback, useEffect, useState } from 'react'
import { Ended, type Engine, Superseded } from '../engine/engine.ts'
import type { Drawn } from '../engine/messages.ts'

/** A STEP file that lies on the bench. */
export interface OpenedModel {
  readonly name: string
  readonly text: string
}

/** What the drawing of a model has come to. */
export interface ModelUse {
  /** The newest sheet, or what kept one from being made. */
  readonly drawn: Drawn | undefined
  /** Parts of the assembly, known once it was drawn whole. */
  readonly items: NonNullable<Drawn['items']>
  /** What the engine does just now; absent where it is done. */
  readonly words: string | undefined
  readonly fault: string | undefined
  readonly stopped: boolean
  /** The part that is drawn, by its name; absent: the whole. */
  readonly solid: string | undefined
  readonly choose: (solid: string | undefined) => void
  readonly stop: () => void
  readonly again: () => void
}

/** The engine's name for whatever model lies on the bench: a newer one ends the drawing of an older. */
const MODEL = 'a model'

/** Draws the model as the command line does, whole or a part at a time; ends when another is chosen or the model is put away. */
export function useModel(engine: Engine, model: OpenedModel): ModelUse {
  const [solid, setSolid] = useState<string>()
  const [round, setRound] = useState(0)
  const [drawn, setDrawn] = useState<Drawn>()
  const [items, setItems] = useState<NonNullable<Drawn['items']>>([])
  const [words, setWords] = useState<string>()
  const [fault, setFault] = useState<string>()
  const [stopped, setStopped] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round draws the same again
  useEffect(() => {
    let gone = false
    setWords('reading')
    setFault(undefined)
    setStopped(false)
    const tell = (next: string) => !gone && setWords(next)
    engine.draw(MODEL, model.text, solid === undefined ? {} : { solid }, tell).then(
      (made) => {
        if (gone) return
        setDrawn(made)
        if (made.items) setItems(made.items)
        setWords(undefined)
      },
      (why: unknown) => {
        if (gone || why instanceof Superseded) return
        setWords(undefined)
        if (why instanceof Ended) setStopped(true)
        else setFault(why instanceof Error ? why.message : String(why))
      },
    )
    return () => {
      gone = true
      engine.stop(MODEL)
    }
  }, [engine, model, solid, round])
  return {
    drawn,
    items,
    words,
    fault,
    stopped,
    solid,
    choose: setSolid,
    stop: useCallback(() => engine.stop(MODEL), [engine]),
    again: useCallback(() => setRound((now) => now + 1), []),
  }
}
