import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { boxOf, heightOf } from '../arrange/boxes.ts'
import { textWidth } from '../lettering/lettering.ts'
import type { SheetItem } from '../sheet.ts'

/** Lettering heights of the stamp, mm: as wished, and where there is little room. */
export const STAMP_LETTERS = [5, 3.5] as const
const PAD = 2.5
/** From the title block and the frame, mm. */
const BESIDE = 4
/** Over the frame and its centring mark, mm. */
const OVER_MARK = 8
/** Thick enough to be seen across the room, and at half size. */
const RULE = 0.7

/** Sizes of the stamp on one line and on two, with the text it carries. */
export function stampShapes(
  words: readonly [string, string],
  letters: number = STAMP_LETTERS[0],
): { readonly lines: readonly string[]; readonly width: number; readonly height: number }[] {
  const shape = (lines: readonly string[]) => ({
    lines,
    width: Math.max(...lines.map((l) => textWidth(l, letters, { bold: true }))) + 2 * PAD,
    height: letters * (1 + 1.5 * (lines.length - 1)) + 2 * PAD,
  })
  return [shape([`${words[0]} – ${words[1]}`]), shape(words)]
}

/** Where a stamp is looked for: over the title block at the right, else at its left on the frame; both clear of views. */
export function stampWishes(
  title: Box2,
  { width, height }: { readonly width: number; readonly height: number },
): Vec2[] {
  return [
    [title.max[0] - BESIDE - width / 2, title.max[1] + BESIDE + height / 2],
    [title.min[0] - BESIDE - width / 2, title.min[1] + OVER_MARK + height / 2],
  ]
}

/** A framed statement, in the box found for it. */
export function stamp(lines: readonly string[], box: Box2, letters: number = STAMP_LETTERS[0]): SheetItem[] {
  const middle = (box.min[0] + box.max[0]) / 2
  const b = boxOf(box.min[0] + RULE / 2, box.min[1] + RULE / 2, box.max[0] - RULE / 2, box.max[1] - RULE / 2)
  const corners = [b.min, [b.max[0], b.min[1]], b.max, [b.min[0], b.max[1]]] as const
  const items = corners.map(
    (a, i): SheetItem => ({
      item: 'stroke',
      kind: 'frame',
      curve: { kind: 'line', a, b: corners[(i + 1) % 4]! },
      width: RULE,
    }),
  )
  const deep = letters * (1 + 1.5 * (lines.length - 1))
  const top = b.max[1] - (heightOf(b) - deep) / 2 - letters
  lines.forEach((text, i) => {
    items.push({
      item: 'text',
      role: 'stamp',
      text,
      at: [middle, top - i * letters * 1.5],
      height: letters,
      anchor: 'middle',
      angle: 0,
      bold: true,
    })
  })
  return items
}
