import type { Header, Signature } from '../../brief/brief.ts'
import type { Mark } from '../../brief/mark.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { boxOf } from '../arrange/boxes.ts'
import { wrap } from '../lettering/fit.ts'
import { textWidth } from '../lettering/lettering.ts'
import type { SheetItem } from '../sheet.ts'
import { CellWriter } from './cell-writer.ts'
import { type GeneralLine, generalLines } from './general-tolerances.ts'
import { projectionSymbol } from './projection-symbol.ts'
import { titleWords } from './title-words.ts'
import { weightText } from './weight.ts'

/** ISO 7200:2004 §5: 180 mm wide, so that it fits A4 upright. */
export const TITLE_BLOCK_WIDTH = 180
export const TITLE_BLOCK_HEIGHT = 60

export interface TitleFacts {
  readonly header: Header
  /** kg */
  readonly mass?: number
  readonly scale: string
  readonly format: string
  readonly sheet: number
  readonly sheets: number
}

/** Columns of the block: what holds unless otherwise said; the making; the identity. */
const COLUMN = [0, 50, 112, TITLE_BLOCK_WIDTH] as const

/**
 * The title block with the data fields of ISO 7200:2004 (ASME Y14.1 and Y14.100 ask for the same under other names).
 * Fields that the brief leaves open stay empty.
 */
export function titleBlock(
  facts: TitleFacts,
  box: Box2,
  figures: PracticeFigures,
): { readonly items: readonly SheetItem[]; readonly marks: readonly Mark[] } {
  const { header } = facts
  const words = titleWords(header.practice)
  const { title, value, heading } = figures.lettering
  const write = new CellWriter(figures)
  const [x0, y0] = box.min
  const cell = (left: number, bottom: number, right: number, top: number): Box2 =>
    boxOf(x0 + left, y0 + bottom, x0 + right, y0 + top)
  const field = (
    b: Box2,
    name: string,
    said: Parameters<CellWriter['value']>[1],
    height: number = value,
    style: { bold?: boolean; align?: 'start' | 'middle' } = {},
  ) => write.value(write.heading(b, name), said, { height, ...style })

  const [c0, c1, c2, c3] = COLUMN
  const H = TITLE_BLOCK_HEIGHT

  // What holds unless otherwise said.
  const left = c0 + 1.6
  const step = heading * 1.62
  let y = H - 1.6 - heading
  const line = (text: string, at: number, width: number, span?: Parameters<CellWriter['line']>[4]) =>
    write.line([x0 + at, y0 + y], width, text, heading, span)
  line(words.unless, left, c1 - left - 1.4)
  y -= step
  const lines = generalLines(header, words)
  const names = Math.max(0, ...lines.filter((l) => l.value && l.name).map((l) => textWidth(l.name, heading)))
  const tab = left + Math.min(names, 24) + 3
  // The last line of the box is kept for the warning not to scale.
  let room = Math.floor((y - 1.6 - step) / step + 1)
  const unsaid: GeneralLine[] = []
  for (const l of lines) {
    const width = l.value && l.name ? c1 - tab - 1.4 : c1 - left - 1.4
    const text = wrap(l.value || l.name, width / SLIGHTLY_NARROWED, heading, {}, true)!
    if (text.length > room) {
      unsaid.push(l)
      continue
    }
    room -= text.length
    if (l.value && l.name) line(l.name, left, tab - left - 2, l.span)
    for (const t of text) {
      line(t, l.value && l.name ? tab : left, width, l.span)
      y -= step
    }
  }
  y = 1.8
  line(words.doNotScale, left, c1 - left - 1.4)

  // The making.
  field(cell(c1, 43, c2, H), words.material, header.material)
  field(cell(c1, 29.5, c2, 43), words.coating, header.coating)
  const weight = facts.mass === undefined ? undefined : weightText(facts.mass, header)
  const rows: [name: string, signature: Signature | undefined][] = [
    [words.drawn, header.drawn],
    [words.checked, header.checked],
    [words.approved, header.approved],
  ]
  const inline = (bottom: number, top: number, name: string) => {
    const middle = y0 + (bottom + top) / 2
    write.line([x0 + c1 + 1.4, middle - heading / 2], NAME_COLUMN - 2, name, heading)
  }
  inline(22.5, 29.5, words.weight)
  write.value(cell(c1 + NAME_COLUMN, 22.5, c2, 29.5), weight, { height: heading })
  rows.forEach(([name, signature], i) => {
    const [bottom, top] = [22.5 - (i + 1) * 7.5, 22.5 - i * 7.5]
    inline(bottom, top, name)
    write.value(cell(c1 + NAME_COLUMN, bottom, c2 - DATE_COLUMN, top), signature?.name, {
      height: heading,
      single: true,
    })
    write.value(cell(c2 - DATE_COLUMN, bottom, c2, top), signature?.date, { height: heading, single: true })
    write.rule([x0 + c1, y0 + top], [x0 + c2, y0 + top])
  })
  write.rule([x0 + c1, y0 + 29.5], [x0 + c2, y0 + 29.5])
  write.rule([x0 + c1, y0 + 43], [x0 + c2, y0 + 43])

  // The identity.
  field(cell(c2, 47, c3, H), words.firm, header.firm, value)
  write.rule([x0 + c2, y0 + 47], [x0 + c3, y0 + 47])
  const titleBox = write.heading(cell(c2, 27.5, c3, 47), words.title)
  const kind = header.documentType
  const under = kind ? 5 : 0
  write.value(boxOf(titleBox.min[0], titleBox.min[1] + under, titleBox.max[0], titleBox.max[1]), header.part, {
    height: title,
    bold: true,
  })
  if (kind) {
    write.value(boxOf(titleBox.min[0], titleBox.min[1] + 0.6, titleBox.max[0], titleBox.min[1] + under + 0.6), kind, {
      height: heading,
    })
  }
  write.rule([x0 + c2, y0 + 27.5], [x0 + c3, y0 + 27.5])
  const rev = c3 - 15
  field(cell(c2, 14, rev, 27.5), words.number, header.number, title, { bold: true })
  field(cell(rev, 14, c3, 27.5), words.revision, header.revision, title, { bold: true, align: 'middle' })
  write.rule([x0 + rev, y0 + 14], [x0 + rev, y0 + 27.5])
  write.rule([x0 + c2, y0 + 14], [x0 + c3, y0 + 14])
  const small = [c2, c2 + 15, c2 + 30, c2 + 42, c3] as const
  field(cell(small[0], 0, small[1], 14), words.scale, facts.scale, value, { align: 'middle' })
  field(cell(small[1], 0, small[2], 14), words.sheet, words.sheetOf(facts.sheet, facts.sheets), value, {
    align: 'middle',
  })
  field(cell(small[2], 0, small[3], 14), words.size, facts.format, value, { align: 'middle' })
  for (const x of small.slice(1, 4)) write.rule([x0 + x, y0], [x0 + x, y0 + 14])
  write.items.push(
    ...projectionSymbol(header.projection, [x0 + (small[3] + small[4]) / 2, y0 + 7], 3.5, figures.widths),
  )

  write.rule([x0 + c1, y0], [x0 + c1, y0 + H])
  write.rule([x0 + c2, y0], [x0 + c2, y0 + H])
  write.outline(box, 'thick')
  const marks = write.cut.map(
    (c): Mark => ({
      rule: 'title-block-text-cut',
      weight: 'must change',
      text: `“${c.text.slice(0, 60)}” does not fit its field in the title block and is cut short.`,
      expected: 'a shorter text',
      source: 'common practice, no source',
      ...(c.span ? { span: c.span } : {}),
    }),
  )
  for (const l of unsaid) {
    marks.push({
      rule: 'title-block-text-cut',
      weight: 'must change',
      text: `The general statement “${`${l.name} ${l.value}`.trim()}” finds no room in the title block.`,
      expected: 'fewer general statements, or the statement as a note',
      source: 'common practice, no source',
      ...(l.span ? { span: l.span } : {}),
    })
  }
  return { items: write.items, marks }
}

/** Lines of general statements may be narrowed by so much before they wrap. */
const SLIGHTLY_NARROWED = 0.82
/** Width of the names in front of weight and signatures, and of the dates behind. */
const NAME_COLUMN = 18
const DATE_COLUMN = 20.5
