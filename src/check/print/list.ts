import { locate } from '../../brief/locate.ts'
import { sentence } from '../../brief/sentence.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { wrap } from '../../sheet/lettering/fit.ts'
import { lettering } from '../../sheet/lettering/lettering.ts'
import type { Pencil, Sheet, SheetItem } from '../../sheet/sheet.ts'
import type { Subject } from '../rule.ts'
import type { Pencilled } from './pencilled.ts'
import { balloon, changeStrokes, frame, stroke, tint } from './strokes.ts'

/** One column of the strip, paper mm. */
const COLUMN = 95
const MARGIN = 8
const HEIGHT = 2.5
const LINE = 4
const INDENT = 9

/** The strip beside the sheet: heading, legend, the marks in words, and the place for the checker's hand. */
export function strip(
  { brief }: Pick<Subject, 'brief'>,
  pencilled: readonly Pencilled[],
  sheet: Sheet,
): { readonly items: SheetItem[]; readonly width: number } {
  const items: SheetItem[] = []
  let column = 0
  let y = sheet.height - MARGIN
  const left = () => sheet.width + MARGIN + column * COLUMN
  const room = COLUMN - MARGIN
  const feed = (height: number) => {
    if (y - height < MARGIN && y < sheet.height - MARGIN) {
      column++
      y = sheet.height - MARGIN
    }
  }
  const line = (text: string, more: { pencil?: Pencil; bold?: boolean; height?: number; indent?: number } = {}) => {
    const { indent = 0, height = HEIGHT, bold, pencil } = more
    y -= height
    const made = lettering(text, { at: [left() + indent, y], height, role: 'note', ...(bold ? { bold } : {}) })
    items.push(...made.map((i): SheetItem => (pencil ? { ...i, pencil } : i)))
    y -= LINE - HEIGHT
  }

  line('CHECK PRINT', { bold: true, height: 5 })
  y -= 2
  const { number, revision, part } = brief.header
  line([number?.text, revision && `rev ${revision.text}`, part?.text].filter(Boolean).join('  '))
  y -= 3
  for (const row of LEGEND) {
    items.push(...row.draw([left(), y - 3]))
    line(row.text, { indent: 16 })
    y -= 3
  }
  y -= 1
  line('Yellow says that the program found the figure consistent.')
  line('That it is intended is the checker’s to say:')
  y -= 11
  items.push(
    stroke([left(), y], [left() + 50, y], 'blue', 0.25),
    stroke([left() + 56, y], [left() + room, y], 'blue', 0.25),
  )
  const { checked } = brief.header
  // As on the sheet: who checked it did not sign what must change.
  const isSentBack = pencilled.some(({ mark }) => mark.weight === 'must change' && mark.accepted === undefined)
  if (checked && !isSentBack) {
    items.push(...tick([left(), y + 1]), ...hand(checked.name.text, left() + 8, y + 1.2))
    if (checked.date) items.push(...hand(checked.date.text, left() + 56, y + 1.2))
  }
  y -= 1
  line('stroke and signature', { pencil: 'blue' })
  y += LINE
  line('date', { indent: 56, pencil: 'blue' })
  y -= 4
  if (pencilled.length === 0) line('Nothing to mark.', { bold: true })
  for (const { number: n, mark, pencil, box } of pencilled) {
    const place = mark.span ? `line ${locate(brief.text, mark.span.from).line}` : 'whole part'
    const said = [
      sentence(mark.text),
      ...(mark.accepted !== undefined
        ? [`Accepted because ${mark.accepted}`]
        : mark.expected
          ? [`Wanted: ${mark.expected}`]
          : []),
      `${mark.weight}; ${place}${box ? '' : ', not on the sheet'}; ${mark.rule}`,
    ].flatMap((t) => wrap(t.replace(/\s+/g, ' '), room - INDENT, HEIGHT, {}, true)!)
    feed(said.length * LINE + 2)
    items.push(...balloon([left() + 3, y - 2.2], String(n), pencil, 2.6))
    for (const t of said) line(t, { indent: INDENT, pencil })
    y -= 2.5
  }
  const width = (column + 1) * COLUMN + MARGIN
  items.push(stroke([sheet.width, 0], [sheet.width, sheet.height], 'blue', 0.25))
  return { items, width }
}

const box = ([x, y]: Vec2) => ({ min: [x, y], max: [x + 10, y + 4] }) as const

/** Offices differ in their colours, so every print says what its own mean. */
const LEGEND: readonly { readonly text: string; readonly draw: (at: Vec2) => SheetItem[] }[] = [
  { text: 'yellow: found consistent', draw: (at) => [tint(box(at), 'yellow')] },
  { text: 'red, full frame: must change', draw: (at) => frame(box(at), 'red', 0.6) },
  {
    text: 'red, with a cross: delete',
    draw: (at) => [...frame(box(at), 'red', 0.6), ...changeStrokes('delete', box(at), 'red')],
  },
  {
    text: 'red, with a caret: add',
    draw: (at) => [...frame(box(at), 'red', 0.6), ...changeStrokes('add', box(at), 'red')],
  },
  { text: 'red, broken frame: look again', draw: (at) => frame(box(at), 'red', 0.4, 1.6) },
  { text: 'blue, dotted frame, square number: remark', draw: (at) => frame(box(at), 'blue', 0.4, 0.7) },
]

/** The checker's stroke, 6 mm high. */
const tick = ([x, y]: Vec2): SheetItem[] => [
  stroke([x, y + 2.5], [x + 2, y], 'blue', 0.5),
  stroke([x + 2, y], [x + 6, y + 6], 'blue', 0.5),
]

/** What the checker wrote, in the checker's pencil. */
const hand = (text: string, x: number, y: number): SheetItem[] =>
  lettering(text, { at: [x, y], height: 3, role: 'note' }).map((i): SheetItem => ({ ...i, pencil: 'blue' }))
