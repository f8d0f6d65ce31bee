import PDFDocument from 'pdfkit'
import type { Curve2 } from '../geometry/curve2.ts'
import { endOf, startOf } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import { bold, EM_OVER_CAPITAL, lettersWidth, regular } from '../sheet/lettering/metrics.ts'
import type { Sheet, SheetItem, StrokeKind } from '../sheet/sheet.ts'
import { cubics } from './beziers.ts'
import { letteringFonts } from './lettering-fonts.ts'
import { unpackWoff } from './woff.ts'

/** PostScript points in a millimetre. */
const PT = 72 / 25.4
/** Where the brief states no date: the same sheet must give the same bytes, so the clock is never asked. */
const NO_DATE = new Date(Date.UTC(2000, 0, 1))

/**
 * The sheet as PDF at its exact size: vector curves, embedded fonts, searchable text. Drawn signs carry a blank glyph
 * of their own character, so a search finds `⌀`. The same sheet gives the same bytes.
 */
export async function writePdf(sheet: Sheet): Promise<Uint8Array> {
  const { about } = sheet
  const fonts = await fontsFor(sheet)
  const doc = new PDFDocument({
    size: [sheet.width * PT, sheet.height * PT],
    margin: 0,
    // No standard font is ever used; in a page there is none.
    font: '',
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    info: {
      Title: sheet.title,
      Creator: 'Sheetwright',
      Producer: 'Sheetwright, PDFKit',
      CreationDate: dateOf(about.date) ?? NO_DATE,
      ...(about.author ? { Author: about.author } : {}),
      ...(about.number ? { Subject: about.revision ? `${about.number} rev ${about.revision}` : about.number } : {}),
      ...(about.firm ? { Keywords: about.firm } : {}),
    },
  })
  // nothing ever follows a text on its line, so that its end need not be found
  doc.widthOfString = () => 0
  const chunks: Uint8Array[] = []
  const done = new Promise<Uint8Array>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    doc.on('error', reject)
    doc.on('end', () => resolve(joined(chunks)))
  })
  const pen = new Pen(doc, sheet.height, fonts)
  for (const item of sheet.items) pen.draw(item)
  doc.end()
  return done
}

/** As dark as pencils are: they must be legible in black and white too. */
const PENCILS = { red: '#a51d16', blue: '#1f4a8a', yellow: '#ffe14d' } as const

type FontName = keyof typeof letteringFonts

/** Draws items in order; repeats no graphics state that already holds. */
class Pen {
  readonly #doc: PDFKit.PDFDocument
  readonly #height: number
  readonly #fonts: ReadonlyMap<FontName, Uint8Array>
  readonly #registered = new Set<FontName>()
  #width = -1
  #dashes = ''
  #cap = ''
  #pencil = 'black'

  constructor(doc: PDFKit.PDFDocument, height: number, fonts: ReadonlyMap<FontName, Uint8Array>) {
    this.#doc = doc
    this.#fonts = fonts
    this.#height = height
    doc.lineJoin('round')
  }

  draw(item: SheetItem): void {
    const pencil = item.pencil ? PENCILS[item.pencil] : 'black'
    if (pencil !== this.#pencil) this.#doc.strokeColor(pencil).fillColor((this.#pencil = pencil))
    switch (item.item) {
      case 'stroke':
        this.#style(item.width, item.dashes, item.dashes ? 'butt' : capOf(item.kind))
        this.#path([item.curve])
        this.#doc.stroke()
        break
      case 'fill':
        this.#path(item.outline)
        this.#doc.closePath().fill(pencil)
        break
      case 'glyph':
        this.#style(item.width, undefined, 'round')
        this.#path(item.strokes)
        this.#doc.stroke()
        this.#text(item.text, 'symbols', item.at, item.height, item.angle, 1)
        break
      case 'text':
        this.#letters(item)
    }
  }

  #style(width: number, dashes: readonly number[] | undefined, cap: 'butt' | 'round' | 'square'): void {
    const doc = this.#doc
    if (width !== this.#width) doc.lineWidth((this.#width = width) * PT)
    if (cap !== this.#cap) doc.lineCap((this.#cap = cap))
    const wanted = (dashes ?? []).filter((d) => d > 0).map((d) => d * PT)
    const key = wanted.join(' ')
    if (key === this.#dashes) return
    this.#dashes = key
    if (wanted.length === 0) doc.undash()
    // pdfkit's dash takes arrays; its types know only one length.
    else doc.addContent(`[${wanted.map((d) => d.toFixed(4)).join(' ')}] 0 d`)
  }

  #path(curves: readonly Curve2[]): void {
    const doc = this.#doc
    let last: Vec2 | undefined
    for (const curve of curves) {
      const start = startOf(curve)
      if (!last || Math.hypot(start[0] - last[0], start[1] - last[1]) > 1e-6) doc.moveTo(...this.#at(start))
      if (curve.kind === 'line') doc.lineTo(...this.#at(curve.b))
      else for (const [, b, c, e] of cubics(curve)) doc.bezierCurveTo(...this.#at(b), ...this.#at(c), ...this.#at(e))
      last = endOf(curve)
    }
  }

  /** Paper mm, y up, to points, y down as pdfkit counts. */
  #at([x, y]: Vec2): [number, number] {
    return [x * PT, (this.#height - y) * PT]
  }

  #letters(item: Extract<SheetItem, { item: 'text' }>): void {
    const weight = item.bold ? bold : regular
    const stretch = item.stretch ?? 1
    const width = lettersWidth(item.text, weight) * item.height * stretch
    const turn = (item.angle * Math.PI) / 180
    let along = item.anchor === 'middle' ? -width / 2 : item.anchor === 'end' ? -width : 0
    for (const run of runs(item.text)) {
      const font = fontOf(run[0]!, item.bold)
      const at: Vec2 = [item.at[0] + along * Math.cos(turn), item.at[1] + along * Math.sin(turn)]
      this.#text(run, font, at, item.height, item.angle, stretch)
      along += lettersWidth(run, weight) * item.height * stretch
    }
  }

  #text(text: string, font: FontName, at: Vec2, height: number, angle: number, stretch: number): void {
    const doc = this.#doc
    if (!this.#registered.has(font)) {
      this.#registered.add(font)
      doc.registerFont(font, this.#fonts.get(font)!)
    }
    doc.font(font).fontSize(height * EM_OVER_CAPITAL * PT)
    const [x, y] = this.#at(at)
    doc.save()
    if (angle) doc.rotate(-angle, { origin: [x, y] })
    if (stretch !== 1) doc.scale(stretch, 1, { origin: [x, y] })
    doc.text(text, x, y, { lineBreak: false, baseline: 'alphabetic', features: ['tnum'] })
    doc.restore()
  }
}

function capOf(kind: StrokeKind): 'butt' | 'round' | 'square' {
  if (kind === 'visible' || kind === 'lettering' || kind === 'symbol') return 'round'
  return kind === 'border' || kind === 'frame' || kind === 'table' ? 'square' : 'butt'
}

/** Split where the font file changes, and inside `fi` and the like, which would otherwise become one glyph. */
function runs(text: string): string[] {
  const out: string[] = []
  let run = ''
  for (const c of text) {
    const last = run.at(-1)
    if (last !== undefined && (regular.file(last) !== regular.file(c) || (last === 'f' && 'fijl'.includes(c)))) {
      out.push(run)
      run = ''
    }
    run += c
  }
  if (run) out.push(run)
  return out
}

/** A date written as in ISO 8601, 2024-05-07; undefined when not understood. */
function dateOf(text: string | undefined): Date | undefined {
  const iso = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text?.trim() ?? '')
  if (!iso) return undefined
  const date = new Date(Date.UTC(Number(iso[1]), Number(iso[2]) - 1, Number(iso[3])))
  return Number.isNaN(date.getTime()) ? undefined : date
}

function fontOf(char: string, isBold: boolean | undefined): FontName {
  const ext = regular.file(char) === 'ext'
  return isBold ? (ext ? 'boldExt' : 'bold') : ext ? 'regularExt' : 'regular'
}

/** The font files that the sheet's text needs, unpacked; each is unpacked once in a process. */
async function fontsFor(sheet: Sheet): Promise<ReadonlyMap<FontName, Uint8Array>> {
  const names = new Set<FontName>()
  for (const item of sheet.items) {
    if (item.item === 'glyph') names.add('symbols')
    else if (item.item === 'text') for (const c of item.text) names.add(fontOf(c, item.bold))
  }
  const fonts = new Map<FontName, Uint8Array>()
  for (const name of names) {
    const ready = unpacked.get(name) ?? unpackWoff(bytes(letteringFonts[name]))
    unpacked.set(name, ready)
    fonts.set(name, await ready)
  }
  return fonts
}

const unpacked = new Map<FontName, Promise<Uint8Array>>()

function bytes(base64: string): Uint8Array {
  const raw = atob(base64)
  const out = new Uint8Array(raw.length)
  for (let i = 0; i < raw.length; i++) out[i] = raw.charCodeAt(i)
  return out
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(chunks.reduce((n, c) => n + c.length, 0))
  let at = 0
  for (const c of chunks) {
    out.set(c, at)
    at += c.length
  }
  return out
}
