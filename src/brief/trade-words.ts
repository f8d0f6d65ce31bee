import { type Cursor, spanOf } from './cursor.ts'
import type { Lexeme, LexemeKind } from './lexeme.ts'

type Setting = Pick<Cursor['setting'], 'mark' | 'text'>

/** Pieces that stand for others: how many, and what is read in their place. */
interface Read {
  readonly take: number
  readonly put: readonly Lexeme[]
}

/** Words that mean one of the language's own wherever they stand. */
const sameWord: Readonly<Record<string, readonly [LexemeKind, string]>> = {
  diam: ['word', 'dia'],
  thk: ['word', 'thick'],
  equispaced: ['word', 'equal'],
  evenly: ['word', 'equal'],
  horizontally: ['word', 'across'],
  vertically: ['word', 'up'],
  crs: ['word', 'apart'],
  ctrs: ['word', 'apart'],
}

/**
 * The pieces of a statement with the trade's other spellings put into this language's words: `c/bore`, `PCD 80`,
 * `4 holes`, `EQ SP`, `40 c/c`, `t = 10`. Places stay those of what is typed, so marks still point there. Where the
 * trade's word says too little (`TYP`, `in a row`) it is marked, with what to write.
 */
export function inTradeWords(pieces: readonly Lexeme[], setting: Setting): Lexeme[] {
  const line = new Line(pieces, setting)
  const out: Lexeme[] = []
  for (let i = 0; i < pieces.length; ) {
    const read = line.at(i, out[out.length - 1])
    out.push(...(read?.put ?? [pieces[i]!]))
    i += Math.max(1, read?.take ?? 1)
  }
  return out
}

/** Words by which a place is said. */
const PLACED = /\b(from|cent(re|er)d|on axis)\b/i

const NUMERALS = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight']

class Line {
  private readonly pieces: readonly Lexeme[]
  private readonly setting: Setting

  constructor(pieces: readonly Lexeme[], setting: Setting) {
    this.pieces = pieces
    this.setting = setting
  }

  at(i: number, before: Lexeme | undefined): Read | undefined {
    return (
      this.slashed(i) ??
      this.circle(i, before) ??
      this.equal(i) ??
      this.count(i, before) ??
      this.thickness(i) ??
      this.apart(i) ??
      this.middle(i) ??
      this.centreLine(i) ??
      this.coordinates(i) ??
      this.letterDia(i, before) ??
      this.row(i) ??
      this.rows(i) ??
      this.typical(i) ??
      this.radius(i) ??
      this.same(i)
    )
  }

  private is(i: number, ...words: readonly string[]): boolean {
    const piece = this.pieces[i]
    return piece?.kind === 'word' && words.includes(piece.text.toLowerCase())
  }

  private kind(i: number, ...kinds: readonly LexemeKind[]): boolean {
    const piece = this.pieces[i]
    return piece !== undefined && kinds.includes(piece.kind)
  }

  private isDia = (i: number) => this.kind(i, 'diameter') || this.is(i, 'dia', 'diameter', 'diam')

  /** One piece in place of those from `i` to `j`. */
  private piece(kind: LexemeKind, text: string, i: number, j = i): Lexeme {
    return { kind, text, from: this.pieces[i]!.from, to: this.pieces[j]!.to, gap: this.pieces[i]!.gap }
  }

  /** `c/bore`, `c/sink`, `40 c/c`. */
  private slashed(i: number): Read | undefined {
    if (!this.is(i, 'c') || !this.kind(i + 1, 'slash')) return undefined
    const word = this.is(i + 2, 'bore', 'bored')
      ? 'cbore'
      : this.is(i + 2, 'sink', 'sunk')
        ? 'csk'
        : this.is(i + 2, 'c') && this.kind(i - 1, 'number')
          ? 'apart'
          : undefined
    return word ? { take: 3, put: [this.piece('word', word, i, i + 2)] } : undefined
  }

  /** How many pieces from `i` name a bolt circle: `PCD`, `P.C.D.`, `BCD`, `pitch circle`. */
  private circleWords(i: number): number {
    if (this.is(i, 'pcd', 'bcd', 'bc')) return this.pieces[i + 1]?.text === '.' && !this.pieces[i + 1]!.gap ? 2 : 1
    const letters = [0, 2, 4].map((k) => this.pieces[i + k]?.text.toLowerCase() ?? '').join('')
    if (/^[pb]cd$/.test(letters) && [1, 3].every((k) => this.pieces[i + k]?.text === '.'))
      return this.pieces[i + 5]?.text === '.' ? 6 : 5
    return this.is(i, 'pitch', 'bolt') && this.is(i + 1, 'circle') ? 2 : 0
  }

  /** `PCD 80`, `on a 80 PCD`, `⌀80 P.C.D.`, `on pitch circle ⌀80`: on ⌀80 bolt circle. */
  private circle(i: number, before: Lexeme | undefined): Read | undefined {
    const on = before?.kind === 'word' && before.text.toLowerCase() === 'on'
    if (
      on &&
      this.is(i, 'a', 'an', 'the') &&
      (this.kind(i + 1, 'number') || this.isDia(i + 1) || this.circleWords(i + 1))
    )
      return { take: 1, put: [] }
    const bolt = (a: number, b: number) => [this.piece('word', 'bolt', a, b), this.piece('word', 'circle', a, b)]
    const { isOn, isSized } = this.said(i)
    const named = this.circleWords(i)
    if (isOn && isSized) return named > 0 ? { take: named, put: bolt(i, i + named - 1) } : undefined
    const asOn: Lexeme[] = isOn ? [] : [{ ...this.piece('word', 'on', i), to: this.pieces[i]!.from }]
    if (named > 0) {
      let at = i + named
      if (this.is(at, 'of')) at++
      if (this.isDia(at)) at++
      if (!this.kind(at, 'number')) return undefined
      return { take: at + 1 - i, put: [...asOn, this.piece('number', this.pieces[at]!.text, at), ...bolt(i, at)] }
    }
    const number = this.isDia(i) ? i + 1 : i
    if (isOn || !this.kind(number, 'number') || this.kind(i - 1, 'number', 'diameter')) return undefined
    const words = this.is(number + 1, 'dia', 'diameter', 'diam', 'mm', 'in') ? number + 2 : number + 1
    const length = this.circleWords(words)
    if (length === 0) return undefined
    return {
      take: words + length - i,
      put: [...asOn, ...this.pieces.slice(i, words), ...bolt(words, words + length - 1)],
    }
  }

  /** Whether the phrase that `i` stands in says `on`, and a number after it. */
  private said(i: number): { readonly isOn: boolean; readonly isSized: boolean } {
    let isSized = false
    for (let k = i - 1; k >= 0 && !this.kind(k, 'comma', 'semicolon', 'line', 'colon'); k--) {
      if (this.is(k, 'on')) return { isOn: true, isSized }
      isSized ||= this.kind(k, 'number')
    }
    return { isOn: false, isSized }
  }

  /** `EQ SP`, `eq. spaced`. */
  private equal(i: number): Read | undefined {
    if (!this.is(i, 'eq')) return undefined
    let at = i + 1
    if (this.pieces[at]?.text === '.') at++
    if (this.is(at, 'sp', 'spaced')) {
      at++
      if (this.pieces[at]?.text === '.') at++
    }
    return { take: at - i, put: [this.piece('word', 'equal', i, at - 1)] }
  }

  /** `4 holes`, `4 off`, `4 places`: 4X. */
  private count(i: number, before: Lexeme | undefined): Read | undefined {
    if (!this.kind(i, 'number') || !/^\d+$/.test(this.pieces[i]!.text)) return undefined
    if (before && (before.kind === 'diameter' || before.kind === 'times')) return undefined
    const [next, after] = [this.pieces[i + 1], this.pieces[i + 2]]
    if (!this.is(i + 1, 'holes', 'off', 'places', 'place', 'plcs', 'pl', 'nos')) return undefined
    if (!next || (after?.kind === 'number' && !after.gap)) return undefined
    const stop = after?.text === '.' && !after.gap ? 1 : 0
    const times: Lexeme = { ...this.piece('times', 'X', i + 1, i + 1 + stop), gap: false }
    return { take: 2 + stop, put: [this.pieces[i]!, times] }
  }

  /** `t = 10`, `thk 10`: 10 thick. */
  private thickness(i: number): Read | undefined {
    const equals = this.is(i, 't') && this.pieces[i + 1]?.text === '='
    const number = equals ? i + 2 : this.is(i, 'thk') ? i + 1 : undefined
    if (number === undefined || !this.kind(number, 'number')) return undefined
    return {
      take: number + 1 - i,
      put: [this.pieces[number]!, this.piece('word', 'thick', i, number)],
    }
  }

  /** `pitch 15`, `spacing 15`: 15 apart. */
  private apart(i: number): Read | undefined {
    if (!this.is(i, 'pitch', 'spacing') || !this.kind(i + 1, 'number')) return undefined
    if (this.kind(i - 1, 'number') && this.pieces[i - 1]!.gap) return undefined
    return { take: 2, put: [this.pieces[i + 1]!, this.piece('word', 'apart', i, i + 1)] }
  }

  /** `in the middle`, `in centre`. */
  private middle(i: number): Read | undefined {
    if (!this.is(i, 'in')) return undefined
    const at = this.is(i + 1, 'the') ? i + 2 : i + 1
    // `30 in centre to centre`: inches
    if (!this.is(at, 'middle', 'centre', 'center') || (at === i + 1 && this.kind(i - 1, 'number', 'slash')))
      return undefined
    const put = ['centred', 'both', 'ways'].map((word) => this.piece('word', word, i, at))
    return { take: at + 1 - i, put }
  }

  /** `on centre line`: which one is asked for where nothing else is said of the place. */
  private centreLine(i: number): Read | undefined {
    if (!this.is(i, 'on')) return undefined
    const at = this.is(i + 1, 'the') ? i + 2 : i + 1
    const words = this.is(at, 'cl', 'centreline', 'centerline')
      ? 1
      : this.is(at, 'centre', 'center') && this.is(at + 1, 'line', 'lines')
        ? 2
        : 0
    if (words === 0) return undefined
    const end = at + words - 1
    const span = { from: this.pieces[i]!.from, to: this.pieces[end]!.to }
    const centred = this.piece('word', 'centred', i, end)
    if (this.pieces.some((p) => p.kind === 'word' && /^(from|cent(re|er)d)$/i.test(p.text)))
      return { take: end + 1 - i, put: [centred] }
    this.setting.mark({
      rule: 'missing-place',
      weight: 'must change',
      text: 'on which centre line, and where on it?',
      span,
      expected: 'centred both ways; or centred across, and a distance from front; or centred up, and one from left',
      mends: [{ label: 'centre it both ways', span, text: 'centred both ways' }],
    })
    return { take: end + 1 - i, put: ['centred', 'both', 'ways'].map((w) => this.piece('word', w, i, end)) }
  }

  /** `x 20, y 15`: counted from where is asked for, and read as from left and from the near side. */
  private coordinates(i: number): Read | undefined {
    const named = (k: number, letter: string) =>
      this.pieces[k]?.text.toLowerCase() === letter ? (this.pieces[k + 1]?.text === '=' ? 2 : 1) : 0
    const x = named(i, 'x')
    if (x === 0 || !this.kind(i + x, 'number') || this.kind(i - 1, 'number')) return undefined
    const next = this.kind(i + x + 1, 'comma', 'semicolon') ? i + x + 2 : i + x + 1
    const y = named(next, 'y')
    const end = next + y
    if (y === 0 || !this.kind(end, 'number')) return undefined
    const upright = this.pieces.slice(0, i).some((p) => /^(front|rear|back|left|right)$/i.test(p.text))
    const [a, b] = [this.pieces[i + x]!, this.pieces[end]!]
    const low = upright ? 'bottom' : 'front'
    const span = { from: this.pieces[i]!.from, to: b.to }
    const write = `${a.text} from left, ${b.text} from ${low}`
    this.setting.mark({
      rule: 'missing-name',
      weight: 'must change',
      text: 'from where are x and y counted?',
      span,
      expected: write,
      mends: [{ label: `write ${write}`, span, text: write }],
    })
    const from = (side: string) => ['from', side].map((w) => this.piece('word', w, i, end))
    const comma: Lexeme = this.piece('comma', ',', i, end)
    return { take: end + 1 - i, put: [a, ...from('left'), comma, b, ...from(low)] }
  }

  /** `D6`: ⌀6, at the beginning of a callout. */
  private letterDia(i: number, before: Lexeme | undefined): Read | undefined {
    const piece = this.pieces[i]!
    if (piece.kind !== 'word' || !/^D\d+$/.test(piece.text) || !before || !['colon', 'times'].includes(before.kind))
      return undefined
    const { from, to, text } = piece
    const point = /^D\d+([.,]\d+)?/.exec(this.setting.text.slice(from, from + 20))![0]
    if (point !== text) return undefined
    return {
      take: 1,
      put: [
        { kind: 'diameter', text: 'D', from, to: from + 1, gap: piece.gap },
        { kind: 'number', text: text.slice(1), from: from + 1, to, gap: false },
      ],
    }
  }

  /** `4X ⌀6 in a row 20 apart`: which way the row runs is asked for, and read as across. */
  private row(i: number): Read | undefined {
    if (!this.is(i, 'in')) return undefined
    let at = this.is(i + 1, 'a', 'one') ? i + 2 : i + 1
    if (!this.is(at, 'row', 'line')) return undefined
    const count = this.pieces.findIndex((p, k) => p.kind === 'number' && this.pieces[k + 1]?.kind === 'times')
    if (count < 0) return undefined
    const end = at
    if (this.kind(at + 1, 'comma')) at++
    const n = this.pieces[count]!.text
    const span = { from: this.pieces[i]!.from, to: this.pieces[at]!.to }
    const rest = this.setting.text.slice(span.to, this.pieces[this.pieces.length - 1]!.to)
    const isPlaced = PLACED.test(rest)
    const last = this.pieces[this.pieces.length - 1]!
    const whole = { from: span.from, to: last.to }
    const write = (way: string, cross: string) => `${n} ${way}${rest}${isPlaced ? '' : `, centred; centred ${cross}`}`
    this.setting.mark({
      rule: 'row-way-not-said',
      weight: 'must change',
      text: 'which way does the row run?',
      span,
      expected: `${n} across, or ${n} up, how far apart, and from where: ${n} across … apart, leftmost … from left; … from front`,
      mends: [
        { label: 'let it run across', span: whole, text: write('across', 'up') },
        { label: 'let it run up', span: whole, text: write('up', 'across') },
      ],
    })
    const across = [this.piece('number', n, i, end), this.piece('word', 'across', i, end)]
    // as the first mend would have it, so that nothing else is asked of the place
    const centred = this.piece('word', 'centred', i, end)
    const first = [centred, this.piece('word', 'up', i, end), this.piece('semicolon', ';', i, end)]
    return { take: at + 1 - i, put: isPlaced ? across : [...first, ...across, centred] }
  }

  /** `two rows of 3, 20 apart, 15 apart`: which way the rows run is asked for. */
  private rows(i: number): Read | undefined {
    const many = NUMERALS.indexOf(this.pieces[i]?.text.toLowerCase() ?? '')
    const m = this.kind(i, 'number') ? this.pieces[i]!.text : many < 0 ? undefined : String(many)
    const n = this.pieces[i + 3]
    if (!m || !this.is(i + 1, 'rows', 'row') || !this.is(i + 2, 'of') || n?.kind !== 'number') return undefined
    const last = this.pieces[this.pieces.length - 1]!
    const span = { from: this.pieces[i]!.from, to: last.to }
    const rest = this.setting.text.slice(n.to, last.to)
    const apart = [...rest.matchAll(/([\d.,/-]+)[ \t]+apart\b/g)].map((found) => found[1]!.replace(/^,/, ''))
    const [along = '?', between = '?'] = apart
    // other places are the drafter's to write
    const isPlaced = PLACED.test(rest)
    const write = (own: string, other: string) =>
      `${n.text} ${own} ${along} apart, centred; ${m} ${other} ${between} apart, centred`
    this.setting.mark({
      rule: 'row-way-not-said',
      weight: 'must change',
      text: 'which way do the rows run?',
      span,
      expected: `${n.text} across … apart, centred; ${m} up … apart, centred, or the other way round`,
      ...(isPlaced
        ? {}
        : {
            mends: [
              { label: 'let the rows run across', span, text: write('across', 'up') },
              { label: 'let the rows run up', span, text: write('up', 'across') },
            ],
          }),
    })
    // as the first mend would have it, so that nothing else is asked of the place
    const end = this.pieces.length - 1
    const said = this.pieces.filter((p, k) => k > i + 3 && p.kind === 'number' && this.is(k + 1, 'apart'))
    const lone = (count: string, way: string, size: Lexeme = this.piece('unknown', '?', i, end)): Lexeme[] => [
      this.piece('number', count, i, end),
      this.piece('word', way, i, end),
      size,
      this.piece('word', 'apart', i, end),
      this.piece('word', 'centred', i, end),
    ]
    const stop = this.piece('semicolon', ';', i, end)
    return {
      take: end + 1 - i,
      put: [...lone(n.text, 'across', said[0]), stop, ...lone(m, 'up', said[1])],
    }
  }

  /** `TYP` counts nothing: ASME Y14.5-2018 writes how many places, 4X (from memory). */
  private typical(i: number): Read | undefined {
    if (!this.is(i, 'typ', 'typical')) return undefined
    const stop = this.pieces[i + 1]?.text === '.' && !this.pieces[i + 1]!.gap ? 1 : 0
    const span = { from: this.pieces[i]!.from, to: this.pieces[i + stop]!.to }
    this.setting.mark({
      rule: 'out-of-place',
      weight: 'must change',
      text: `“${this.pieces[i]!.text}” does not say of how many`,
      span,
      expected: 'the number of places before the size, as in 4X; a name such as corners counts by itself',
      mends: [{ label: 'take it out', span: { from: this.pieces[i - 1]?.to ?? span.from, to: span.to }, text: '' }],
    })
    return { take: 1 + stop, put: [] }
  }

  /** `radius 5`: R5. */
  private radius(i: number): Read | undefined {
    if (!this.is(i, 'radius', 'rad') || !this.kind(i + 1, 'number')) return undefined
    return { take: 1, put: [{ ...spanOf(this.pieces[i]!), kind: 'R', text: 'R', gap: this.pieces[i]!.gap }] }
  }

  private same(i: number): Read | undefined {
    const piece = this.pieces[i]!
    const word = piece.kind === 'word' && Object.hasOwn(sameWord, piece.text.toLowerCase())
    const to = word ? sameWord[piece.text.toLowerCase()] : undefined
    return to && { take: 1, put: [this.piece(to[0], to[1], i)] }
  }
}
