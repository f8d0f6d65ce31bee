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

/** Numbered notes wrapped to a width; undefined when there are none. */
export function notesBlock(
  heading: string,
  notes: readonly Note[],
  width: number,
  figures: PracticeFigures,
): NotesBlock | undefined {
  if (notes.length === 0) return undefined
  const h = figures.lettering.note
  const step = h * figures.lettering.lineRatio
  const indent = INDENT * h
  const wrapped = notes.map((n) => ({
    ...n,
    lines: n.text.split('\n').flatMap((t) => wrap(t.trim(), width - indent, h, {}, true)!),
  }))
  const count = 1 + wrapped.reduce((n, w) => n + w.lines.length, 0)
  return {
    width,
    height: h + (count - 1) * step + 0.3 * h,
    at(left, top) {
      const items: SheetItem[] = []
      let y = top - h
      const put = (x: number, text: string, span?: Span) =>
        items.push(...lettering(text, { at: [x, y], height: h, role: 'note', ...(span ? { tie: { span } } : {}) }))
      put(left, heading)
      wrapped.forEach((n, i) => {
        y -= step
        put(left, `${i + 1}.`, n.span)
        n.lines.forEach((line, k) => {
          if (k > 0) y -= step
          put(left + indent, line, n.span)
        })
      })
      return items
    },
  }
}
