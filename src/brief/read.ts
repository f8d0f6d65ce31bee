import type {
  Acceptance,
  Brief,
  Comment,
  Feature,
  Name,
  PlaceRequest,
  SchemeRequest,
  ShowRequest,
  Stock,
  ViewRequest,
  Words,
} from './brief.ts'
import { type Cursor, type Setting, show } from './cursor.ts'
import type { DatumFeature, FaceTexture, FrameStatement } from './geometric.ts'
import { withoutIndented } from './indented-keyword.ts'
import { keywordMeant } from './keyword-meant.ts'
import { type Cut, cut, type Statement } from './lexeme.ts'
import { locate } from './locate.ts'
import type { Mark } from './mark.ts'
import { notSaidSo } from './not-said-so.ts'
import { ownNames } from './own-names.ts'
import { readAcceptance } from './read-acceptance.ts'
import { readNotch, readPocket, readSlot, readStep } from './read-cuts.ts'
import { readDatumFeature, readFrameStatement } from './read-geometric.ts'
import { HeaderReader } from './read-header.ts'
import { readHole } from './read-hole.ts'
import { readMended } from './read-mended.ts'
import { readPlace, readScheme, readShow, readViews } from './read-requests.ts'
import { readFlat, readGroove, readKeyseat } from './read-round-cuts.ts'
import { readStack } from './read-stack.ts'
import { readStock } from './read-stock.ts'
import { readBoss, readEdge } from './read-surface.ts'
import { isFaceTexture, readFaceTexture } from './read-texture.ts'
import type { StackStatement } from './stack.ts'
import { inTradeWords } from './trade-words.ts'
import {
  choiceKeywords,
  type FeatureKeyword,
  featureKeywords,
  type Keyword,
  keywordSpellings,
  keywords,
  type StockKeyword,
  stockKeywords,
  textKeywords,
} from './vocabulary.ts'
import { inOtherOrder } from './word-order.ts'

/** A brief longer than this (in UTF-16 code units) is not read at all. */
const longestBrief = 200_000
/** Statements beyond this many are not read. */
const mostStatements = 4000
/** Words, numbers and signs of one statement beyond this many are not read. */
const longestStatement = 2000
/** Marks beyond this many are only counted. */
const mostMarks = 200

/**
 * Reads a brief. Never throws: what cannot be read is marked, with its place, what was expected and what to write
 * instead, and everything else stands.
 */
export function readBrief(text: string): Brief {
  const marks: Mark[] = []
  let unsaid = 0
  const mark = (m: Mark) => {
    if (marks.length < mostMarks) marks.push(m)
    else unsaid++
  }
  if (text.length > longestBrief) return tooLong(text)
  markOddCharacters(text, mark)
  const brief = new Reader(text, mark).read()
  if (unsaid > 0) {
    marks.push({ rule: 'too-many-marks', weight: 'remark', text: `${unsaid} more of the kind are not listed` })
  }
  return { ...brief, marks: marks.sort((a, b) => (a.span?.from ?? text.length) - (b.span?.from ?? text.length)) }
}

function tooLong(text: string): Brief {
  const header = new HeaderReader('', () => {}).finish({ from: 0, to: 0 })
  const mark: Mark = {
    rule: 'brief-too-long',
    weight: 'must change',
    text: `${text.length} characters are no brief`,
    span: { from: 0, to: 1 },
    expected: `a brief of at most ${longestBrief} characters`,
  }
  return { text, header, features: [], shows: [], places: [], schemes: [], comments: [], marks: [mark] }
}

/** Control characters and torn surrogates: one mark for the first, with how many there are. */
function markOddCharacters(text: string, mark: (mark: Mark) => void): void {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const odd = /[\u0000-\u0008\u000e-\u001f\u007f-\u0084\u0086-\u009f\ufffd\ufffe\uffff\p{Cs}]/gu
  let first: number | undefined
  let count = 0
  for (const found of text.matchAll(odd)) {
    first ??= found.index
    count++
  }
  if (first === undefined) return
  mark({
    rule: 'odd-characters',
    weight: 'must change',
    text: `${count === 1 ? 'a character here is' : `${count} characters, the first here, are`} no text`,
    span: { from: first, to: first + 1 },
    expected: 'plain text in UTF-8; was the file saved in another encoding?',
  })
}

interface Known {
  readonly statement: Statement
  readonly keyword: Keyword
  /** Words of the statement used up by a keyword of two words. */
  readonly skip: number
}

class Reader {
  private readonly text: string
  private readonly mark: (mark: Mark) => void
  private readonly header: HeaderReader
  private stock: Stock | undefined
  private stockSpan: Statement['span'] | undefined
  private readonly features: Feature[] = []
  private views: ViewRequest[] | undefined
  private readonly shows: ShowRequest[] = []
  private readonly places: PlaceRequest[] = []
  private readonly schemes: SchemeRequest[] = []
  private readonly acceptances: Acceptance[] = []
  private readonly datums: DatumFeature[] = []
  private readonly frames: FrameStatement[] = []
  private readonly stacks: StackStatement[] = []
  private readonly textures: FaceTexture[] = []

  constructor(text: string, mark: (mark: Mark) => void) {
    this.text = text
    this.mark = mark
    this.header = new HeaderReader(text, mark)
  }

  read(): Brief {
    const { text, header } = this
    const comma = /^\s{0,20}decimal\s+comma\b/im.test(text)
    const pieces = cut(text, comma)
    if (pieces.statements.length > mostStatements) {
      const { span } = pieces.statements[mostStatements]!
      this.mark({
        rule: 'too-many-statements',
        weight: 'must change',
        text: `only the first ${mostStatements} statements are read`,
        span,
        expected: 'one part a brief',
      })
    }
    const said = withoutIndented(text, pieces.statements.slice(0, mostStatements), comma, this.mark)
    const known = said.flatMap((s) => this.recognise(s))
    for (const { statement, keyword } of known) {
      if (isOneOf(choiceKeywords, keyword)) header.choice(statement, keyword)
      else if (keyword === 'texture' && isFaceTexture(statement)) continue
      else if (keyword === 'accept') push(this.acceptances, readAcceptance(statement, this.mark))
      else if (isOneOf(textKeywords, keyword)) header.item(statement, keyword)
    }
    const setting: Setting = {
      text,
      unit: header.unit,
      practice: header.practice,
      ownNames: ownNames(known),
      mark: this.mark,
    }
    const body = known.filter((k) => !isOneOf(choiceKeywords, k.keyword) && !isOneOf(textKeywords, k.keyword))
    for (const k of body.filter((b) => isOneOf(stockKeywords, b.keyword))) this.takeStock(k, setting)
    for (const k of body) this.take(k, setting)
    for (const { statement, keyword } of known)
      if (keyword === 'texture' && isFaceTexture(statement)) push(this.textures, readFaceTexture(statement, setting))
    if (!this.stockSpan) {
      this.mark({
        rule: 'stock-not-said',
        weight: 'must change',
        text: 'the brief does not say what the part is made from',
        expected: `one of: ${stockKeywords.join(', ')}`,
      })
    }
    return {
      text,
      header: header.finish({ from: 0, to: text.length }),
      ...(this.stock ? { stock: this.stock } : {}),
      features: this.features,
      ...(this.views ? { views: this.views } : {}),
      shows: this.shows,
      places: this.places,
      schemes: this.schemes,
      ...(this.acceptances.length > 0 ? { acceptances: this.acceptances } : {}),
      ...(this.datums.length > 0 ? { datums: this.datums } : {}),
      ...(this.frames.length > 0 ? { frames: this.frames } : {}),
      ...(this.stacks.length > 0 ? { stacks: this.stacks } : {}),
      ...(this.textures.length > 0 ? { textures: this.textures } : {}),
      comments: placeComments(text, pieces),
      marks: [],
    }
  }

  private recognise(statement: Statement): Known[] {
    if (statement.stray) {
      this.mark({
        rule: 'indented-first-line',
        weight: 'must change',
        text: 'this line is indented, but there is no statement above it',
        span: statement.span,
        expected: 'the statement at the left margin',
      })
      return []
    }
    const found = keywordOf(statement)
    if (found) return [this.shortened(found)]
    const { text, span } = statement.keyword
    const advice = notSaidSo(text)
    if (advice) {
      this.mark({ rule: 'unknown-word', weight: 'must change', ...advice.mark, span })
      if (advice.stock) this.stockSpan ??= statement.span
      return []
    }
    const turned = inOtherOrder(this.text, span.from)
    if (turned) {
      const { mend, ...mark } = turned
      this.mark({ rule: 'word-order', weight: 'must change', ...mark, span: mend.span, mends: [mend] })
      return []
    }
    // What begins with no letter is a size or a count of the statement above, at the margin by mistake.
    const goesOn = !/^\p{L}/u.test(text) && statement.span.from > 0
    const { near, begun } = goesOn ? { near: undefined, begun: false } : keywordMeant(text)
    this.mark({
      rule: 'unknown-word',
      weight: 'must change',
      text: `no statement begins with “${show(text)}”${near ? `; did you mean “${near}”?` : ''}`,
      span,
      expected: goesOn
        ? 'blanks before it, where it goes on with the statement above; else a statement such as note, hole or views'
        : 'a statement such as part, material, plate, hole or views',
      ...(goesOn
        ? {
            mends: [
              { label: 'join it to the line above', span: { from: span.from, to: span.from }, text: ' '.repeat(10) },
            ],
          }
        : {}),
      ...(near ? { mends: [{ label: `write ${near}`, span, text: near }] } : {}),
    })
    // Read on as if it had been spelt right. A word alone that is only begun is not: what it is to say comes yet.
    const meant =
      near &&
      (!begun || statement.span.to > span.to) &&
      keywordOf({ ...statement, keyword: { text: near, span }, lines: textLines(this.text, statement) })
    return meant ? [this.shortened(meant)] : []
  }

  private shortened(known: Known): Known {
    const { lexemes } = known.statement
    if (lexemes.length <= longestStatement) return known
    const from = lexemes[longestStatement]!.from
    this.mark({
      rule: 'statement-too-long',
      weight: 'must change',
      text: `the ${known.keyword} statement is not read beyond here`,
      span: { from, to: lexemes[longestStatement]!.to },
      expected: `at most ${longestStatement} words, numbers and signs a statement`,
    })
    return { ...known, statement: { ...known.statement, lexemes: lexemes.slice(0, longestStatement) } }
  }

  private takeStock({ statement, keyword, skip }: Known, setting: Setting): void {
    if (this.stockSpan) {
      const { line } = locate(this.text, this.stockSpan.from)
      this.mark({
        rule: 'stated-twice',
        weight: 'must change',
        text: `the stock is stated here and in line ${line}; line ${line} stands`,
        span: statement.span,
        expected: 'one stock a part',
      })
      return
    }
    this.stockSpan = statement.span
    const pieces = inTradeWords(statement.lexemes.slice(skip), setting)
    this.stock = readMended(statement, setting, pieces, (c) => readStock(c, keyword as StockKeyword))
  }

  private take({ statement, keyword, skip }: Known, setting: Setting): void {
    const pieces = inTradeWords(statement.lexemes.slice(skip), setting)
    const read = <T>(by: (c: Cursor) => T) => readMended(statement, setting, pieces, by)
    if (isOneOf(featureKeywords, keyword)) {
      const feature = read((c) => readFeature(c, keyword, boreFace(this.stock, statement)))
      push(this.features, feature)
    } else if (keyword === 'datum') push(this.datums, read(readDatumFeature))
    else if (keyword === 'stack') push(this.stacks, read(readStack))
    else if (keyword === 'frame') push(this.frames, read(readFrameStatement))
    else if (keyword === 'views' || keyword === 'section' || keyword === 'pictorial') {
      const views = read((c) => readViews(c, keyword)) ?? []
      if (views.length > 0) this.views = [...(this.views ?? []), ...views]
    } else if (keyword === 'show') push(this.shows, read(readShow))
    else if (keyword === 'place') push(this.places, read(readPlace))
    else if (keyword === 'sizes') push(this.schemes, read(readScheme))
  }
}

function push<T>(list: T[], value: T | undefined): void {
  if (value) list.push(value)
}

function isOneOf<T extends string>(list: readonly T[], word: string): word is T {
  return (list as readonly string[]).includes(word)
}

function keywordOf(statement: Statement): Known | undefined {
  const word = statement.keyword.text.toLowerCase()
  if (word === 'flat bar' || word === 'round bar') return { statement, keyword: word, skip: 0 }
  const second = statement.lexemes[0]?.text.toLowerCase()
  if ((word === 'flat' || word === 'round') && (second === 'bar' || second === 'bars')) {
    return { statement, keyword: word === 'flat' ? 'flat bar' : 'round bar', skip: 1 }
  }
  if (word === 'edge' && second === 'break') return { statement, keyword: 'edges', skip: 0 }
  const keyword = isOneOf(keywords, word)
    ? word
    : Object.hasOwn(keywordSpellings, word)
      ? keywordSpellings[word]
      : undefined
  return keyword && { statement, keyword, skip: 0 }
}

/** The pieces of a statement as lines of free text. */
function textLines(text: string, statement: Statement): Words[] {
  const lines: Words[] = []
  let from: number | undefined
  let to = 0
  const put = () => {
    if (from !== undefined) lines.push({ text: text.slice(from, to), span: { from, to } })
    from = undefined
  }
  for (const piece of statement.lexemes) {
    if (piece.kind === 'line') put()
    else {
      from ??= piece.from
      to = piece.to
    }
  }
  put()
  return lines
}

function readFeature(c: Cursor, keyword: FeatureKeyword, face: Name): Feature | undefined {
  switch (keyword) {
    case 'hole':
    case 'bore':
      return readHole(c, keyword, face)
    case 'slot':
      return readSlot(c)
    case 'pocket':
      return readPocket(c)
    case 'step':
      return readStep(c)
    case 'notch':
      return readNotch(c)
    case 'chamfer':
    case 'round':
    case 'fillet':
      return readEdge(c, keyword)
    case 'boss':
    case 'spigot':
      return readBoss(c, keyword)
    case 'groove':
      return readGroove(c)
    case 'flat':
      return readFlat(c)
    case 'keyseat':
      return readKeyseat(c)
  }
}

/** Where a bore is worked from when nothing is said: a disc's outer face, the left face of what is turned. */
function boreFace(stock: Stock | undefined, statement: Statement): Name {
  return { text: stock?.kind === 'disc' ? 'outer face' : 'left face', span: statement.keyword.span }
}

function placeComments(text: string, { statements, comments }: Cut): Comment[] {
  const sorted = [...comments].sort((a, b) => a.span.from - b.span.from)
  let next = 0
  return sorted.map((words: Words): Comment => {
    while (next < statements.length && statements[next]!.span.to <= words.span.from) next++
    const before = statements[next - 1]
    const within = statements[next] && statements[next]!.span.from < words.span.from ? statements[next] : undefined
    const owner = within ?? before
    if (owner && !/[\r\n]/.test(text.slice(owner.span.from, words.span.from))) {
      return { ...words, place: 'beside', of: owner.span.from }
    }
    if (within) return { ...words, place: 'above', of: within.span.from }
    const alone = isAlone(text, words.span.from)
    if (!alone && before) return { ...words, place: 'above', of: before.span.from }
    const following = statements[next]
    return following ? { ...words, place: 'above', of: following.span.from } : { ...words, place: 'end' }
  })
}

/** True where only blanks stand before the place on its line. */
function isAlone(text: string, at: number): boolean {
  let i = at - 1
  while (i >= 0 && (text[i] === ' ' || text[i] === '\t')) i--
  return i < 0 || text[i] === '\n' || text[i] === '\r' || text[i] === '\ufeff'
}
