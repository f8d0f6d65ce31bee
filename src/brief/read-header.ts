import type { Header, Practice, Projection, Words } from './brief.ts'
import { show } from './cursor.ts'
import type { Statement } from './lexeme.ts'
import { locate } from './locate.ts'
import type { Mark } from './mark.ts'
import { readGeneral, readNotes, readNumber, readScale, readSignature, readText } from './read-text.ts'
import type { Unit } from './size.ts'
import type { Span } from './span.ts'
import { nearestWord } from './spelling.ts'
import type { ChoiceKeyword, TextKeyword } from './vocabulary.ts'

type Draft = { -readonly [K in keyof Header]?: Header[K] }

/** Reads the header's statements one by one; the same item twice is marked, and the first stands. */
export class HeaderReader {
  private readonly draft: Draft = {}
  private readonly general: Header['general'][number][] = []
  private readonly notes: Words[] = []
  private readonly seen = new Map<string, Span>()
  private readonly said: { units?: Span; practice?: Span; decimal?: Span } = {}
  private projectionSpan: Span | undefined
  private readonly text: string
  private readonly mark: (mark: Mark) => void

  constructor(text: string, mark: (mark: Mark) => void) {
    this.text = text
    this.mark = mark
  }

  /** Units and practice as far as read; what is not said follows from the other. */
  get unit(): Unit {
    return this.draft.units ?? (this.draft.practice === 'ASME' ? 'inch' : 'mm')
  }

  get practice(): Practice {
    return this.draft.practice ?? (this.draft.units === 'inch' ? 'ASME' : 'ISO')
  }

  get decimalComma(): boolean {
    return this.draft.decimalSign === ','
  }

  /** False where the item has been stated before. */
  private first(keyword: string, span: Span): boolean {
    const before = this.seen.get(keyword)
    if (!before) {
      this.seen.set(keyword, span)
      return true
    }
    const { line } = locate(this.text, before.from)
    this.mark({
      rule: 'stated-twice',
      weight: 'must change',
      text: `${keyword} is stated here and in line ${line}; line ${line} stands`,
      span,
      expected: `one ${keyword} statement`,
      mends: [{ label: `drop this ${keyword} statement`, span, text: '' }],
    })
    return false
  }

  choice(s: Statement, keyword: ChoiceKeyword): void {
    if (!this.first(keyword, s.span)) return
    this.said[keyword] = s.span
    const words = s.lexemes.filter((l) => l.kind === 'word' || l.kind === 'inch')
    const said = words.map((l) => l.text.toLowerCase())
    if (keyword === 'units') this.units(s, said)
    else if (keyword === 'practice') this.practiceAndProjection(s, said)
    else if (said[0] === 'comma') this.draft.decimalSign = ','
    else if (said[0] === 'point' || said[0] === 'dot') this.draft.decimalSign = '.'
    else if (this.wrong(s, ['comma', 'point'], 'comma, or point') === 'comma') this.draft.decimalSign = ','
    const taken = { units: this.draft.units, practice: this.draft.practice, decimal: this.draft.decimalSign }[keyword]
    // what cannot be read leaves the place free for a statement that can
    if (taken === undefined) this.seen.delete(keyword)
  }

  private units(s: Statement, said: readonly string[]): void {
    if (['inch', 'inches', 'in', '"'].includes(said[0] ?? '')) this.draft.units = 'inch'
    else if (['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'].includes(said[0] ?? ''))
      this.draft.units = 'mm'
    else {
      const near = this.wrong(s, ['inch', 'mm'], 'inch, or mm')
      if (near === 'inch' || near === 'mm') this.draft.units = near
    }
  }

  private practiceAndProjection(s: Statement, said: readonly string[]): void {
    if (said[0] === 'asme') this.draft.practice = 'ASME'
    else if (said[0] === 'iso') this.draft.practice = 'ISO'
    else {
      const near = this.wrong(s, ['ASME', 'ISO'], 'ASME, or ISO')
      if (near !== 'ASME' && near !== 'ISO') return
      this.draft.practice = near
    }
    const rest = said.slice(1).filter((w) => w !== 'angle' && w !== 'projection')
    if (rest.length === 0) return
    let projection: Projection | undefined
    if (['third', '3rd'].includes(rest[0]!)) projection = 'third angle'
    else if (['first', '1st'].includes(rest[0]!)) projection = 'first angle'
    if (projection && rest.length === 1) {
      this.draft.projection = projection
      this.projectionSpan = s.span
    } else this.wrong(s, ['first', 'third'], 'first angle, or third angle', rest[0])
  }

  /** Marks a choice that is none, and gives the nearest that is one: reading goes on with it. */
  private wrong(s: Statement, vocabulary: readonly string[], expected: string, word?: string): string | undefined {
    const piece = s.lexemes.find((l) => l.kind !== 'line' && (!word || l.text.toLowerCase() === word))
    const span = piece ? { from: piece.from, to: piece.to } : s.keyword.span
    const near = piece ? nearestWord(piece.text, vocabulary) : undefined
    this.mark({
      rule: 'unknown-word',
      weight: 'must change',
      text: piece
        ? `“${show(piece.text)}” is no choice for ${s.keyword.text}${near ? `; did you mean “${near}”?` : ''}`
        : `${s.keyword.text} says nothing`,
      span,
      expected,
      ...(near ? { mends: [{ label: `write ${near}`, span, text: near }] } : {}),
    })
    return near
  }

  item(s: Statement, keyword: Exclude<TextKeyword, 'accept'>): void {
    if (s.lines.length === 0) {
      this.mark({
        rule: 'empty-statement',
        weight: 'must change',
        text: `${keyword} says nothing`,
        span: s.keyword.span,
        expected: 'its text on the same line',
      })
      return
    }
    if (keyword === 'general') {
      this.general.push(...readGeneral(s, this.mark))
      return
    }
    if (keyword === 'note' || keyword === 'notes') {
      const words = keyword === 'notes' ? readNotes(s) : [readText(s)]
      this.notes.push(...words.filter((w) => w !== undefined))
      return
    }
    if (keyword !== 'number' && keyword !== 'revision' && !this.first(keyword, s.span)) return
    this.single(s, keyword)
  }

  private single(s: Statement, keyword: Exclude<TextKeyword, 'general' | 'note' | 'notes' | 'accept'>): void {
    if (keyword === 'number') {
      const { number, revision } = readNumber(s)
      if (number && this.first('number', s.span)) this.draft.number = number
      if (revision && this.first('revision', revision.span)) this.draft.revision = revision
      return
    }
    if (keyword === 'scale') {
      const scale = readScale(s)
      if (scale) this.draft.scale = scale
      else {
        this.mark({
          rule: 'scale-not-understood',
          weight: 'must change',
          text: 'this is no scale',
          span: s.lines[0]!.span,
          expected: 'paper : part, such as 1:2 or 5:1',
        })
      }
      return
    }
    if (keyword === 'drawn' || keyword === 'checked' || keyword === 'approved') {
      const signature = readSignature(s)
      if (signature) this.draft[keyword] = signature
      return
    }
    const words = readText(s)
    if (!words) return
    if (keyword === 'revision') {
      if (this.first('revision', s.span)) this.draft.revision = words
    } else if (keyword === 'document') this.draft.documentType = words
    else if (keyword === 'edges') this.draft.edgeBreak = words
    else this.draft[keyword] = words
  }

  /** ISO 80000-1:2009, 7.3.2: one decimal sign on one sheet (from memory). */
  private markPoints(): void {
    if (!this.decimalComma) return
    for (const words of [this.draft.texture, this.draft.edgeBreak]) {
      for (const found of words?.text.matchAll(/(?<![\d.])\d+\.\d+(?![\d.])/g) ?? []) {
        const from = words!.span.from + found.index
        const span = { from, to: from + found[0].length }
        // Text over several lines has no places of its own.
        if (this.text.slice(span.from, span.to) !== found[0]) continue
        const write = found[0].replace('.', ',')
        this.mark({
          rule: 'decimal-comma',
          weight: 'look again',
          text: `${found[0]} has a point, and this sheet writes a comma`,
          span,
          expected: write,
          mends: [{ label: `write ${write}`, span, text: write }],
        })
      }
    }
  }

  finish(whole: Span): Header {
    const { draft } = this
    this.markPoints()
    if (!draft.units) {
      this.mark({
        rule: 'units-not-said',
        weight: 'must change',
        text: `no units are stated; ${this.unit} is taken`,
        span: { from: whole.from, to: whole.from },
        expected: 'units inch, or units mm',
      })
    }
    if (!draft.practice) {
      this.mark({
        rule: 'practice-not-said',
        weight: 'must change',
        text: `no practice is stated; ${this.practice} is taken`,
        span: { from: whole.from, to: whole.from },
        expected: 'practice ASME, or practice ISO',
      })
    }
    if (this.practice === 'ASME' && draft.projection === 'first angle' && this.projectionSpan) {
      this.mark({
        rule: 'contradiction',
        weight: 'look again',
        text: 'ASME sheets are in third angle',
        span: this.projectionSpan,
        expected: 'third angle',
        source: 'ASME Y14.3',
      })
    }
    return {
      ...draft,
      units: this.unit,
      practice: this.practice,
      projection: draft.projection ?? (this.practice === 'ASME' ? 'third angle' : 'first angle'),
      general: this.general,
      notes: this.notes,
      said: this.said,
    }
  }
}
