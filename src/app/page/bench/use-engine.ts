import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { Engine, type EngineState, Superseded } from '../engine/engine.ts'
import type { Drawn } from '../engine/messages.ts'
import { afterPaint } from './after-paint.ts'

/** The drawing of one part: the newest that could be made, and the last that had a sheet. */
export interface Shown {
  readonly text: string
  readonly drawn: Drawn
  /** The last drawing with a sheet; its own where the newest has one. */
  readonly good: Drawn | undefined
  /** Milliseconds from asking to having. */
  readonly took: number
}

export interface EngineUse {
  readonly state: EngineState
  readonly shown: ReadonlyMap<string, Shown>
  /** Why the engine gave no answer to the part's newest text. */
  readonly faults: ReadonlyMap<string, string>
  readonly draw: (part: string, text: string) => void
  /** Lays out a drawing made earlier, unless a newer one is there. */
  readonly lay: (part: string, drawn: Drawn) => void
  /** Puts a drawing in the place of that of the same text: the checker changed its stamp. */
  readonly settle: (part: string, drawn: Drawn) => void
  readonly engine: Engine
}

const startWorker = () => new Worker(new URL('../engine/engine.worker.ts', import.meta.url), { type: 'module' })

/**
 * The engine and what it has drawn. Older drawings than the newest asked for never take its place. `paintAhead` may put
 * the ink of a new drawing on the paper at once; where it did, the rest of the page follows when that has been shown.
 */
export function useEngine(paintAhead: (part: string, drawn: Drawn) => boolean): EngineUse {
  const [state, setState] = useState<EngineState>('opening')
  const [shown, setShown] = useState<ReadonlyMap<string, Shown>>(new Map())
  const [faults, setFaults] = useState<ReadonlyMap<string, string>>(new Map())
  const engine = useRef<Engine>(undefined)
  const newest = useRef<EngineState>('opening')
  // What the engine is about is said once the sheet that came with it is on the screen.
  engine.current ??= new Engine(startWorker, (next) => {
    newest.current = next
    afterPaint(() => setState(newest.current))
  })
  useEffect(() => {
    const leave = () => engine.current?.close()
    addEventListener('pagehide', leave)
    return () => removeEventListener('pagehide', leave)
  }, [])
  const ahead = useRef(paintAhead)
  ahead.current = paintAhead
  /** Which drawing of each part was the last to be taken in. */
  const taken = useRef(new Map<string, number>())
  const count = useRef(0)
  const draw = useMemo(
    () => (part: string, text: string) => {
      const start = performance.now()
      const place = ++count.current
      engine.current!.draw(part, text).then(
        (drawn) => {
          const took = performance.now() - start
          const takeIn = () => {
            if ((taken.current.get(part) ?? 0) > place) return
            taken.current.set(part, place)
            setShown((old) => {
              const good = drawn.sheet ? drawn : old.get(part)?.good
              return new Map(old).set(part, { text, drawn, good, took })
            })
            setFaults((old) => without(old, part))
          }
          if (ahead.current(part, drawn)) afterPaint(takeIn)
          else takeIn()
        },
        (fault: unknown) => {
          if (!(fault instanceof Superseded)) {
            setFaults((old) => new Map(old).set(part, fault instanceof Error ? fault.message : String(fault)))
          }
        },
      )
    },
    [],
  )
  const lay = useCallback((part: string, drawn: Drawn) => {
    setShown((old) =>
      old.has(part) ? old : new Map(old).set(part, { text: drawn.brief.text, drawn, good: drawn, took: 0 }),
    )
  }, [])
  const settle = useCallback((part: string, drawn: Drawn) => {
    setShown((old) => {
      const now = old.get(part)
      if (now?.text !== drawn.brief.text) return old
      return new Map(old).set(part, { ...now, drawn, good: drawn.sheet ? drawn : now.good })
    })
  }, [])
  return { state, shown, faults, draw, lay, settle, engine: engine.current }
}

function without<V>(map: ReadonlyMap<string, V>, key: string): ReadonlyMap<string, V> {
  if (!map.has(key)) return map
  const rest = new Map(map)
  rest.delete(key)
  return rest
}
