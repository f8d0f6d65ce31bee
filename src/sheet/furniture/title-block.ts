import type { Header, Practice } from '../../brief/brief.ts'
import type { Mark } from '../../brief/mark.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { boxOf } from '../arrange/boxes.ts'
import type { SheetItem } from '../sheet.ts'
import { CellWriter } from './cell-writer.ts'
import { projectionSymbol } from './projection-symbol.ts'
import { type TitleWords, titleWords } from './title-words.ts'
import { writeUnless } from './unless-specified.ts'
import { weightText } from './weight.ts'

export interface TitleFacts {
  readonly header: Header
  /** kg */
  readonly mass?: number
  readonly scale: string
  readonly format: string
  readonly sheet: number
  readonly sheets: number
}

/** Measures of the block, mm. */
interface Shape {
  readonly width: number
  readonly height: number
  /** Right edges of: what holds unless otherwise specified; the making. */
  readonly columns: readonly [number, number]
  /** Widths of the names before weight and signatures, and of the dates behind. */
  readonly names: number
  readonly dates: number
  /** Widths of scale, sheet and size; the projection symbol has the rest. */
  readonly small: readonly [number, number, number]
  /** Lettering height from which the projection symbol is drawn. */
  readonly symbol: number
}

/** ISO 7200:2004 §5: 180 mm wide, so that it fits A4 upright. ASME: about 6¼ in, as on the smaller sheets of Y14.1. */
const SHAPES: Readonly<Record<Practice, Shape>> = {
  ISO: { width: 180, height: 56, columns: [50, 112], names: 18, dates: 20.5, small: [15, 15, 12], symbol: 3.5 },
  ASME: {
    width: 160,
    height: 56,
    columns: [44, 103.5],
    names: 15.6,
    dates: 18.4,
    small: [12.5, 13.5, 11],
    symbol: 2.9,
  },
}

export function titleBlockSize(practice: Practice): { readonly width: number; readonly height: number } {
  return SHAPES[practice]
}

/** Levels between the rows, from the bottom, mm. */
const MAKING = { signature: 6.6, weight: 6.6, coating: 12.8 }
const IDENTITY = { small: 12.5, number: 12.5, title: 20.5 }
const REVISION = 13

/**
 * The title block with the data fields of ISO 7200:2004 (ASME Y14.1 and Y14.100 ask for the same under other names).
 * Fields that the brief leaves open stay empty.
 */
export function titleBlock(
  facts: TitleFacts,
  box: Box2,
  figures: PracticeFigures,
): { readonly items: readonly SheetItem[]; readonly marks: readonly Mark[] } {
  const shape = SHAPES[facts.header.practice]
  const words = titleWords(facts.header.practice)
  const write = new CellWriter(figures)
  const [x0, y0] = box.min
  const [c1, c2] = shape.columns.map((c) => x0 + c) as [number, number]
  const top = y0 + shape.height
  const unsaid = writeUnless(write, boxOf(x0, y0, c1, top), facts.header, words, figures)
  writeMaking(write, boxOf(c1, y0, c2, top), facts, words, shape, figures)
  writeIdentity(write, boxOf(c2, y0, x0 + shape.width, top), facts, words, shape, figures)
  write.rule([c1, y0], [c1, top])
  write.rule([c2, y0], [c2, top])
  write.outline(box, 'thick')
  const mark = (text: string, expected: string, span: Mark['span']): Mark => ({
    rule: 'title-block-text-cut',
    weight: 'must change',
    text,
    expected,
    source: 'common practice, no source',
    ...(span ? { span } : {}),
  })
  const marks = [
    ...write.cut.map((c) =>
      mark(
        `“${c.text.slice(0, 60)}” does not fit its field in the title block and is cut short.`,
        'a shorter text',
        c.span,
      ),
    ),
    ...unsaid.map((l) =>
      mark(
        `The general statement “${`${l.name} ${l.value}`.trim().slice(0, 60)}” finds no room in the title block.`,
        'fewer general statements, or the statement as a note',
        l.span,
      ),
    ),
  ]
  return { items: write.items, marks }
}

/** Material, coating, weight, signatures. */
function writeMaking(
  write: CellWriter,
  box: Box2,
  { header, mass }: TitleFacts,
  words: TitleWords,
  shape: Shape,
  { lettering: { value, heading } }: PracticeFigures,
): void {
  const [left, bottom] = box.min
  const [right, top] = box.max
  const signatures = [
    [words.approved, header.approved],
    [words.checked, header.checked],
    [words.drawn, header.drawn],
  ] as const
  let y = bottom
  const row = (height: number, name: string) => {
    write.line([left + 1.4, y + height / 2 - heading / 2], shape.names - 1.4, name, heading)
    y += height
    write.rule([left, y], [right, y])
  }
  for (const [name, signature] of signatures) {
    const [from, to] = [left + shape.names, right - shape.dates]
    const level = [y, y + MAKING.signature] as const
    write.value(boxOf(from, level[0], to, level[1]), signature?.name, { height: heading, single: true })
    write.value(boxOf(to, level[0], right, level[1]), signature?.date, { height: heading, single: true })
    row(MAKING.signature, name)
  }
  const weight = mass === undefined ? undefined : weightText(mass, header)
  write.value(boxOf(left + shape.names, y, right, y + MAKING.weight), weight, { height: heading, single: true })
  row(MAKING.weight, words.weight)
  const split = y + MAKING.coating
  write.value(write.heading(boxOf(left, y, right, split), words.coating), header.coating, { height: value })
  write.rule([left, split], [right, split])
  write.value(write.heading(boxOf(left, split, right, top), words.material), header.material, { height: value })
}

/** Firm, title, number, revision, scale, sheet, size, projection. */
function writeIdentity(
  write: CellWriter,
  box: Box2,
  facts: TitleFacts,
  words: TitleWords,
  shape: Shape,
  { lettering: { title, value, heading }, widths }: PracticeFigures,
): void {
  const { header } = facts
  const [left, bottom] = box.min
  const [right, top] = box.max
  const a = bottom + IDENTITY.small
  const b = a + IDENTITY.number
  const c = b + IDENTITY.title
  for (const y of [a, b, c]) write.rule([left, y], [right, y])

  let x = left
  for (const [width, name, said] of [
    [shape.small[0], words.scale, facts.scale],
    [shape.small[1], words.sheet, words.sheetOf(facts.sheet, facts.sheets)],
    [shape.small[2], words.size, facts.format],
  ] as const) {
    write.value(write.heading(boxOf(x, bottom, x + width, a), name), said, {
      height: value,
      align: 'middle',
      single: true,
    })
    x += width
    write.rule([x, bottom], [x, a])
  }
  write.items.push(...projectionSymbol(header.projection, [(x + right) / 2, (bottom + a) / 2], shape.symbol, widths))

  const revision = right - REVISION
  const strong = { height: title, bold: true, single: true }
  write.value(write.heading(boxOf(left, a, revision, b), words.number), header.number, strong)
  write.value(write.heading(boxOf(revision, a, right, b), words.revision), header.revision, {
    ...strong,
    align: 'middle',
  })
  write.rule([revision, a], [revision, b])

  const body = write.heading(boxOf(left, b, right, c), words.title)
  const kind = header.documentType ? heading + 1.6 : 0
  write.value(boxOf(left, b + kind, right, body.max[1]), header.part, { height: title, bold: true })
  write.value(boxOf(left, b + 0.4, right, b + kind + 0.8), header.documentType, { height: heading, single: true })
  write.value(write.heading(boxOf(left, c, right, top), words.firm), header.firm, { height: value })
}
