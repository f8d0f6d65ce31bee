import { useEffect, useRef } from 'react'

export interface KeyActions {
  readonly save: () => void
  readonly shelf: () => void
  readonly print: () => void
  readonly fold: () => void
  readonly undo: () => void
  readonly whole: () => void
  readonly realSize: () => void
  readonly pan: (dx: number, dy: number) => void
  readonly zoom: (factor: number) => void
  readonly escape: () => void
  /** To the first mark in the margin. */
  readonly marks: () => void
}

/** Px that an arrow moves the paper by. */
const STRIDE = 60

/** The page's keys. Single keys work where nothing is being written. */
export function useKeys(actions: KeyActions): void {
  const latest = useRef(actions)
  latest.current = actions
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const a = latest.current
      const writing =
        event.target instanceof Element &&
        event.target.closest('input, textarea, select, [contenteditable="true"]') !== null
      const key = event.key.toLowerCase()
      if (event.ctrlKey || event.metaKey) {
        const run = { s: a.save, o: a.shelf, p: a.print, b: a.fold, ...(writing ? {} : { z: a.undo }) }[key]
        if (!run || event.shiftKey || event.altKey) return
        event.preventDefault()
        run()
        return
      }
      if (writing || event.altKey) return
      const way = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key]
      if (way && event.target === document.body) a.pan(way[0]! * STRIDE, way[1]! * STRIDE)
      else if (event.key === 'Escape') a.escape()
      else if (key === 'm') a.marks()
      else if (key === 'l') document.querySelector<HTMLElement>('main > .sheet-frame:first-child .lift')?.click()
      else if (event.key === '0') a.whole()
      else if (event.key === '1') a.realSize()
      else if (event.key === '+' || event.key === '=') a.zoom(1.25)
      else if (event.key === '-') a.zoom(1 / 1.25)
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [])
}
