import { bad, good, type Outcome, type Problem } from '../outcome.ts'
import type { Num } from '../size.ts'
import { nearestWord } from '../spelling.ts'
import { type Characteristic, characteristics, type DatumReference, type Frame, type FrameRow } from './frame.ts'
import { numberOf, type Token, tokens } from './tokens.ts'

// The words a drafter uses for a characteristic, beside the characteristic's own name.
const spoken: Readonly<Record<string, Characteristic>> = {
  roundness: 'circularity',
  'line profile': 'profile of a line',
  'profile line': 'profile of a line',
  'surface profile': 'profile of a surface',
  'profile surface': 'profile of a surface',
  profile: 'profile of a surface',
  squareness: 'perpendicularity',
  'true position': 'position',
  concentricity: 'coaxiality',
  runout: 'circular runout',
  'run-out': 'circular runout',
  'circular run-out': 'circular runout',
  'total run-out': 'total runout',
}
const names: ReadonlyMap<string, Characteristic> = new Map([
  ...(Object.keys(characteristics) as Characteristic[]).map((name) => [name, name] as const),
  ...Object.entries(spoken),
])
const symbols: ReadonlyMap<string, Characteristic> = new Map([
  ...(Object.keys(characteristics) as Characteristic[]).map((name) => [characteristics[name].symbol, name] as const),
  ['◯', 'circularity'],
  ['⊥', 'perpendicularity'],
  ['⫽', 'parallelism'],
  ['⊕', 'position'],
])

// Words for the state of the surface, and short ones, that stand where the characteristic's name should.
const adjectives: Readonly<Record<string, Characteristic>> = {
  flat: 'flatness',
  straight: 'straightness',
  round: 'circularity',
  circular: 'circularity',
  cylindrical: 'cylindricity',
  cyl: 'cylindricity',
  square: 'perpendicularity',
  perpendicular: 'perpendicularity',
  perp: 'perpendicularity',
  parallel: 'parallelism',
  par: 'parallelism',
  angular: 'angularity',
  pos: 'position',
  tp: 'position',
  concentric: 'coaxiality',
  coaxial: 'coaxiality',
  symmetric: 'symmetry',
  symmetrical: 'symmetry',
}

/** Plain words for the modifiers of a tolerance. */
const modifierWords: Readonly<Record<string, string>> = {
  mmc: 'M',
  mmb: 'M',
  lmc: 'L',
  lmb: 'L',
  rfs: 'S',
  rmb: 'S',
  proj: 'P',
  projected: 'P',
  unequal: 'U',
  uz: 'UZ',
  cz: 'CZ',
  sz: 'SZ',
  max: 'MAX',
}

/** Thrown and caught inside this file only, to leave a deep read at the first fault. */
class Fault extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(problem.text)
    this.problem = problem
  }
}

/**
 * Reads a geometric tolerance frame as a drafter would write it: `⌖ ⌀.010 Ⓜ A B C`, `position dia .010 MMC A B C`,
 * `perpendicularity .005 A`. Compartments may be parted by strokes, rows by a semicolon or a new line: a row that begins
 * with a value continues a composite frame, one that repeats the characteristic is a single segment.
 * @param offset place of `text` in the brief; spans count from there
 */
export function readFrame(text: string, offset = 0): Outcome<Frame> {
  try {
    return good(new Reader(tokens(text, offset), text, offset).frame())
  } catch (fault) {
    if (fault instanceof Fault) return bad(fault.problem)
    throw fault
  }
}

class Reader {
  private at = 0
  private readonly pieces: readonly Token[]
  private readonly text: string
  private readonly offset: number

  constructor(pieces: readonly Token[], text: string, offset: number) {
    this.pieces = pieces
    this.text = text
    this.offset = offset
  }

  frame(): Frame {
    this.skipRows()
    const characteristic = this.characteristic()
    const rows = [this.row()]
    let segments = 0
    for (this.skipRows(); this.peek(); this.skipRows()) {
      const next = this.peek()!
      if (next.kind === 'symbol' || (next.kind === 'word' && this.isName(next))) {
        const repeated = this.characteristic()
        if (repeated !== characteristic) {
          this.fail(next, `A frame stacked under ${characteristic} cannot turn to ${repeated}.`, 'a frame of its own')
        }
        segments++
      }
      rows.push(this.row())
    }
    if (segments !== 0 && segments !== rows.length - 1) {
      this.fail(
        this.pieces[0]!,
        'Some rows repeat the symbol and some do not.',
        'one symbol for all rows, or one for each',
      )
    }
    const stacking = rows.length === 1 ? 'single' : segments === 0 ? 'composite' : 'segments'
    return { characteristic, rows, stacking, span: { from: this.pieces[0]!.from, to: this.pieces.at(-1)!.to } }
  }

  private characteristic(): Characteristic {
    const first = this.take('a characteristic such as position, flatness or ⌖')
    if (first.kind === 'symbol') return symbols.get(first.text)!
    if (first.kind !== 'word')
      this.fail(first, `"${first.text}" is no characteristic.`, 'a characteristic such as position or ⌖')
    // The longest run of words that is a name wins: "profile of a surface" before "profile".
    const run = [first]
    let best: { name: Characteristic; length: number } | undefined
    for (let i = 0; i < 4; i++) {
      const found = names.get(run.map((each) => each.value).join(' '))
      if (found) best = { name: found, length: run.length }
      const next = this.pieces[this.at + i]
      if (next?.kind !== 'word') break
      run.push(next)
    }
    if (best) {
      this.at += best.length - 1
      return best.name
    }
    const meant = Object.hasOwn(adjectives, first.value) ? adjectives[first.value] : undefined
    if (meant)
      this.fail(
        first,
        `"${first.text}" is not the name of a geometric characteristic.`,
        `${meant}, or its symbol ${characteristics[meant].symbol}`,
        meant,
      )
    const near = nearestWord(first.value, [...names.keys()])
    return this.fail(
      first,
      `"${first.text}" is no geometric characteristic.`,
      [...characteristicNames].join(', '),
      near,
    )
  }

  private isName(piece: Token): boolean {
    return [...names.keys()].some((name) => name.split(' ')[0] === piece.value)
  }

  private row(): FrameRow {
    const start = this.peek()
    const zone = this.zone()
    const number = this.take('a tolerance value')
    if (number.kind !== 'number')
      this.fail(number, `"${number.text}" stands where the tolerance should.`, 'a tolerance value such as .010')
    const value = numberOf(number)
    if (value.value < 0) this.fail(number, 'A tolerance cannot be negative.', 'zero or more', number.text.slice(1))
    const draft: Draft = { freeState: false, tangentPlane: false }
    while (this.modifier(draft)) {}
    const datums: DatumReference[] = []
    for (let next = this.peek(); next && next.kind !== 'row'; next = this.peek()) datums.push(this.datum())
    const last = this.pieces[this.at - 1]!
    return { zone, value, ...draft, datums, span: { from: start!.from, to: last.to } }
  }

  private zone(): FrameRow['zone'] {
    const piece = this.peek()
    if (piece?.kind === 'zone') {
      this.at++
      return piece.text.startsWith('S') ? 'spherical diameter' : 'diameter'
    }
    if (piece?.kind === 'word' && (piece.value === 'spherical' || piece.value === 'sdia')) {
      this.at += this.pieces[this.at + 1]?.value === 'dia' && piece.value === 'spherical' ? 2 : 1
      return 'spherical diameter'
    }
    if (piece?.kind === 'word' && (piece.value === 'dia' || piece.value === 'diameter')) {
      this.at++
      return 'diameter'
    }
    return 'width'
  }

  /** Takes one modifier of the tolerance compartment; false when the next piece is none. */
  private modifier(draft: Draft): boolean {
    const piece = this.peek()
    if (!piece) return false
    const letter =
      piece.kind === 'modifier' ? piece.value : piece.kind === 'word' ? this.modifierWord(piece) : undefined
    // `.015 MAX`: the number stands before the word.
    if (piece.kind === 'number' && this.pieces[this.at + 1]?.value === 'max') {
      draft.most = numberOf(piece)
      this.at += 2
      return true
    }
    if (letter === undefined) return false
    this.at++
    if (letter === 'M' || letter === 'L') {
      if (draft.material) this.fail(piece, 'The tolerance already has a material condition.', 'one of Ⓜ and Ⓛ')
      draft.material = letter
    } else if (letter === 'P') {
      const height = this.number()
      draft.projected = { ...(height ? { height } : {}), span: { from: piece.from, to: height?.span.to ?? piece.to } }
    } else if (letter === 'U' || letter === 'UZ') {
      const value =
        this.number() ?? this.fail(piece, `${piece.text} needs a value.`, 'the part of the zone outside the material')
      draft.unequal = { form: letter, value, span: { from: piece.from, to: value.span.to } }
    } else if (letter === 'F') draft.freeState = true
    else if (letter === 'T') draft.tangentPlane = true
    else if (letter === 'CZ' || letter === 'SZ') draft.combined = letter
    else if (letter === 'MAX') draft.most = this.number() ?? this.fail(piece, 'MAX needs a value.', 'a number')
    return true
  }

  private modifierWord(piece: Token): string | undefined {
    const next = this.pieces[this.at + 1]?.value
    if (piece.value === 'free' && next === 'state') {
      this.at++
      return 'F'
    }
    if (piece.value === 'tangent' && next === 'plane') {
      this.at++
      return 'T'
    }
    return modifierWords[piece.value]
  }

  private number(): Num | undefined {
    const piece = this.peek()
    if (piece?.kind !== 'number') return undefined
    this.at++
    return numberOf(piece)
  }

  private datum(): DatumReference {
    const piece = this.take('a datum letter')
    const letters = piece.text.toUpperCase().split('-')
    if (piece.kind !== 'word' || letters.some((letter) => letter.length > 2)) {
      const near = piece.kind === 'word' ? nearestWord(piece.value, Object.keys(modifierWords)) : undefined
      this.fail(
        piece,
        `"${piece.text}" is neither a modifier nor a datum.`,
        'a datum letter such as A, or A-B',
        near?.toUpperCase(),
      )
    }
    const next = this.peek()
    const letter =
      next?.kind === 'modifier' ? next.value : next?.kind === 'word' ? modifierWords[next.value] : undefined
    if (next && (letter === 'M' || letter === 'L' || letter === 'S')) {
      this.at++
      return { letters, ...(letter === 'S' ? {} : { material: letter }), span: { from: piece.from, to: next.to } }
    }
    return { letters, span: { from: piece.from, to: piece.to } }
  }

  private peek(): Token | undefined {
    return this.pieces[this.at]
  }

  private take(expected: string): Token {
    const piece = this.pieces[this.at]
    if (!piece) {
      const end = this.offset + this.text.length
      throw new Fault({ text: 'The frame ends too soon.', expected, span: { from: end, to: end } })
    }
    this.at++
    return piece
  }

  private skipRows(): void {
    while (this.peek()?.kind === 'row') this.at++
  }

  private fail(piece: Token, text: string, expected: string, instead?: string): never {
    throw new Fault({ text, expected, span: { from: piece.from, to: piece.to }, ...(instead ? { instead } : {}) })
  }
}

/** Modifiers as they are gathered. */
interface Draft {
  material?: 'M' | 'L'
  most?: Num
  projected?: NonNullable<FrameRow['projected']>
  unequal?: NonNullable<FrameRow['unequal']>
  combined?: 'CZ' | 'SZ'
  freeState: boolean
  tangentPlane: boolean
}

const characteristicNames = Object.keys(characteristics)
