import type { Words } from '../../brief/brief.ts'
import type { Span } from '../../brief/span.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { boxOf, heightOf, widthOf } from '../arrange/boxes.ts'
import { type FittedText, fitText } from '../lettering/fit.ts'
import { lettering } from '../lettering/lettering.ts'
import type { SheetItem } from '../sheet.ts'

export interface FieldStyle {
  readonly height: number
  readonly bold?: boolean
  readonly align?: 'start' | 'middle'
  /** Narrowed rather than set on two lines. */
  readonly single?: boolean
}

/** Lettering never shrinks under this: the smallest nominal height of ISO 3098-1:2015 (§4, from memory). */
const LEAST = 1.8
const PAD = 1.4

/** Draws the cells of a table: rules, headings, values; remembers what did not fit. */
export class CellWriter {
  readonly items: SheetItem[] = []
  /** Texts that had to be cut, with their places in the brief. */
  readonly cut: { readonly text: string; readonly span: Span | undefined }[] = []
  readonly #figures: PracticeFigures
  /** ASME Y14.2 gives block headings as the smallest lettering of a drawing; ISO lettering may shrink further. */
  readonly #least: number

  constructor(figures: PracticeFigures) {
    this.#figures = figures
    this.#least = figures.practice === 'ASME' ? figures.lettering.heading : LEAST
  }

  rule(a: Vec2, b: Vec2, weight: 'thick' | 'thin' = 'thin'): void {
    this.items.push({
      item: 'stroke',
      kind: 'frame',
      curve: { kind: 'line', a, b },
      width: this.#figures.widths[weight],
    })
  }

  outline(box: Box2, weight: 'thick' | 'thin'): void {
    const [x0, y0] = box.min
    const [x1, y1] = box.max
    this.rule([x0, y0], [x1, y0], weight)
    this.rule([x1, y0], [x1, y1], weight)
    this.rule([x1, y1], [x0, y1], weight)
    this.rule([x0, y1], [x0, y0], weight)
  }

  /** Heading in the upper left corner of a cell. Returns what is left of the cell below it. */
  heading(box: Box2, text: string): Box2 {
    if (!text) return box
    const h = this.#figures.lettering.heading
    const fit = fitText(text, this.#box(box, h, h))
    this.#set(
      { ...fit, lines: fit.lines.slice(0, 1) },
      [box.min[0] + PAD, box.max[1] - HEAD_PAD - fit.height],
      'start',
      {},
    )
    return boxOf(box.min[0], box.min[1], box.max[0], box.max[1] - HEAD_PAD - h)
  }

  /** A value in a cell, on as many lines as it needs and the cell holds. */
  value(box: Box2, said: Words | string | undefined, style: FieldStyle): void {
    const text = typeof said === 'string' ? said : said?.text
    if (!text) return
    const span = typeof said === 'string' ? undefined : said?.span
    const bold = style.bold ? { bold: true } : {}
    const whole = this.#box(box, style.height, Math.min(this.#least, style.height))
    const fit = fitText(text, style.single ? { ...whole, depth: style.height } : whole, bold)
    if (!fit.whole) this.cut.push({ text, span })
    const step = fit.height * LINE
    const deep = fit.height + (fit.lines.length - 1) * step
    // A little low: the heading above takes part of the white.
    const bottom = (heightOf(box) - deep) * 0.45
    const x = style.align === 'middle' ? (box.min[0] + box.max[0]) / 2 : box.min[0] + PAD
    const top: Vec2 = [x, box.min[1] + bottom + deep - fit.height]
    this.#set(fit, top, style.align ?? 'start', { ...bold, ...(span ? { span } : {}) })
  }

  /** Text on one line from the left, narrowed where it must. */
  line(at: Vec2, width: number, text: string, height: number, span?: Span): void {
    const fit = fitText(text, { width, depth: height, height, least: Math.min(this.#least, height), lineRatio: LINE })
    if (!fit.whole) this.cut.push({ text, span })
    this.#set(fit, at, 'start', span ? { span } : {})
  }

  #box(box: Box2, height: number, least: number) {
    return { width: widthOf(box) - 2 * PAD, depth: heightOf(box) - 1.8, height, least, lineRatio: LINE }
  }

  #set(
    fit: FittedText,
    first: Vec2,
    anchor: 'start' | 'middle',
    more: { readonly bold?: boolean; readonly span?: Span },
  ): void {
    fit.lines.forEach((text, i) => {
      const items = lettering(text, {
        at: [first[0], first[1] - i * fit.height * LINE],
        height: fit.height,
        anchor,
        role: 'title block',
        ...(more.bold ? { bold: true } : {}),
        ...(more.span ? { tie: { span: more.span } } : {}),
      })
      this.items.push(...(fit.stretch === 1 ? items : narrowed(items, fit.stretch, first[0])))
    })
  }
}

/** Base line to base line in a cell, in lettering heights (ASME Y14.2-2014 §4.5: at least half a height between). */
const LINE = 1.5
const HEAD_PAD = 1.2

function narrowed(items: readonly SheetItem[], stretch: number, x0: number): SheetItem[] {
  return items.map((item) =>
    item.item === 'text' ? { ...item, stretch, at: [x0 + (item.at[0] - x0) * stretch, item.at[1]] } : item,
  )
}
