import type { Span } from '../../brief/span.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { wrap } from '../lettering/fit.ts'
import { lettering } from '../lettering/lettering.ts'
import type { SheetItem } from '../sheet.ts'

export interface Note {
  readonly text: string
  readonly span?: Span
}

/** A numbered block of notes, measured and ready to stand. */
export interface NotesBlock {
  readonly width: number
  readonly height: number
  /** Items with the block's upper left corner at the given paper point. */
  at(left: number, top: number): SheetItem[]
}

/** Width of the number in front of a note, in lettering heights. */
const INDENT = 2.2

/** Room between columns, in lettering heights. */
const BETWEEN = 3

/** Numbered notes wrapped to columns of a width, filled one after the other, none broken; undefined when there are none. */
export function notesBlock(
  heading: string,
  notes: readonly Note[],
  { width, columns }: { readonly width: number; readonly columns: number },
  figures: PracticeFigures,
): NotesBlock | undefined {
  if (notes.length === 0) return undefined
  const h = figures.lettering.note
  const step = h * figures.lettering.lineRatio
  // three figures need more room than one
  const indent = (INDENT + 0.6 * Math.max(0, String(notes.length).length - 2)) * h
  const wrapped = notes.map((n) => ({
    ...n,
    lines: n.text.split('\n').flatMap((t) => wrap(t.trim(), width - indent, h, {}, true)!),
  }))
  const set = inColumns(
    wrapped.map((n) => n.lines.length),
    columns,
  )
  const most = Math.max(...set.map((c) => c.reduce((sum, i) => sum + wrapped[i]!.lines.length, 0)))
  const count = 1 + most
  const pitch = width + BETWEEN * h
  return {
    width: (set.length - 1) * pitch + width,
    height: h + (count - 1) * step + 0.3 * h,
    at(left, top) {
      const items: SheetItem[] = []
      const put = (x: number, y: number, text: string, span?: Span) =>
        items.push(...lettering(text, { at: [x, y], height: h, role: 'note', ...(span ? { tie: { span } } : {}) }))
      put(left, top - h, heading)
      set.forEach((column, c) => {
        let y = top - h
        for (const i of column) {
          const n = wrapped[i]!
          y -= step
          put(left + c * pitch, y, `${i + 1}.`, n.span)
          n.lines.forEach((line, k) => {
            if (k > 0) y -= step
            put(left + c * pitch + indent, y, line, n.span)
          })
        }
      })
      return items
    },
  }
}

/** Indices of the notes by column, in order, so that the tallest column is as low as may be. */
function inColumns(lines: readonly number[], columns: number): number[][] {
  const fill = (most: number): number[][] => {
    const out: number[][] = [[]]
    let used = 0
    lines.forEach((n, i) => {
      if (used > 0 && used + n > most) {
        out.push([])
        used = 0
      }
      out.at(-1)!.push(i)
      used += n
    })
    return out
  }
  let most = Math.max(...lines, Math.ceil(lines.reduce((a, b) => a + b, 0) / columns))
  while (fill(most).length > columns) most++
  return fill(most)
}
