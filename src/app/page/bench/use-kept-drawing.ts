import { useEffect } from 'react'
import type { Drawn } from '../engine/messages.ts'
import { keepDrawing } from '../shelf/shelf.ts'

/** Milliseconds of rest after which a drawing is kept. */
const REST = 800

/** Keeps a brief's last drawing on the shelf, to be laid out before the engine is ready. */
export function useKeptDrawing(id: string | undefined, drawn: Drawn | undefined): void {
  useEffect(() => {
    if (!id || !drawn) return undefined
    const timer = setTimeout(() => void keepDrawing(id, drawn), REST)
    return () => clearTimeout(timer)
  }, [id, drawn])
}
