import { formatMark } from '../../brief/format-mark.ts'
import type { Mark } from '../../brief/mark.ts'

/** Where a command speaks. Colour only on a terminal and never against NO_COLOR. */
export interface Console {
  readonly out: (text: string) => void
  readonly say: (text: string) => void
  /** A line that the next one overwrites, its numbers ten times a second at most; nothing where there is no terminal. */
  readonly progress: (text: string) => void
  readonly mark: (file: string, brief: string, mark: Mark) => void
}

/** Milliseconds between two lines of progress that differ in their numbers only. */
const OFTEN = 100

export function openConsole(): Console {
  const terminal = process.stderr.isTTY === true
  const coloured = terminal && !process.env.NO_COLOR
  const paint = (code: number, text: string) => (coloured ? `\u001b[${code}m${text}\u001b[0m` : text)
  let pending = false
  let shown = { words: '', at: 0 }
  const clear = () => {
    if (pending) process.stderr.write('\r\u001b[K')
    pending = false
  }
  return {
    out: (text) => {
      clear()
      process.stdout.write(text)
    },
    say: (text) => {
      clear()
      process.stderr.write(`${text}\n`)
    },
    progress: (text) => {
      if (!terminal) return
      const now = performance.now()
      const words = text.replace(/\d+/g, '')
      if (words === shown.words && now - shown.at < OFTEN) return
      shown = { words, at: now }
      clear()
      // a line that wraps could not be overwritten
      process.stderr.write(text.slice(0, (process.stderr.columns || 80) - 1))
      pending = true
    },
    mark: (file, brief, mark) => {
      clear()
      const colour = mark.weight === 'must change' ? 31 : mark.weight === 'look again' ? 33 : 34
      const text = formatMark(brief, mark).replace(mark.weight, paint(colour, mark.weight))
      process.stderr.write(`${file}: ${text}\n`)
    },
  }
}
