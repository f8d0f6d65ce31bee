import type { Num } from '../size.ts'

/** A piece of a frame's text. */
export interface Token {
  readonly kind: 'symbol' | 'zone' | 'number' | 'modifier' | 'word' | 'row'
  readonly text: string
  /** Modifiers: the letter in the circle. Words: small letters. */
  readonly value: string
  readonly from: number
  readonly to: number
}

// Order matters: a bracketed letter before a word, a spherical zone before a word.
const pattern =
  /(?<row>[;\n]+)|(?<symbol>[⏤⏥○◯⌭⌒⌓∠⟂⊥∥⫽⌖⊕◎⌯↗⌰])|(?<zone>S?[⌀Øø∅])|(?<modifier>\([MLPFTUS]\)|[ⓂⓁⓅⒻⓉⓊⓈ])|(?<number>[+\-−]?(?:\d+[.,]?\d*|[.,]\d+))|(?<word>[A-Za-z]+(?:-[A-Za-z]+)*)|(?<gap>(?:[^\S\n]|\|)+)|(?<other>.)/gu

const circledLetters: Readonly<Record<string, string>> = {
  'Ⓜ': 'M',
  'Ⓛ': 'L',
  'Ⓟ': 'P',
  'Ⓕ': 'F',
  'Ⓣ': 'T',
  'Ⓤ': 'U',
  'Ⓢ': 'S',
}

/** Splits the text of a frame; what is none of the known kinds comes as a word. */
export function tokens(text: string, offset: number): readonly Token[] {
  const found: Token[] = []
  for (const match of text.matchAll(pattern)) {
    const groups = match.groups!
    if (groups.gap !== undefined) continue
    const kind =
      (['row', 'symbol', 'zone', 'modifier', 'number'] as const).find((name) => groups[name] !== undefined) ?? 'word'
    const piece = match[0]
    const value = kind === 'modifier' ? (circledLetters[piece] ?? piece[1]!) : piece.toLowerCase()
    found.push({ kind, text: piece, value, from: offset + match.index, to: offset + match.index + piece.length })
  }
  return found
}

/** A number token as the brief keeps numbers, digits as typed. */
export function numberOf(token: Token): Num {
  const plain = token.text.replace(',', '.').replace('−', '-')
  const point = plain.indexOf('.')
  return {
    text: token.text,
    value: Number(plain),
    form: point < 0 ? 'whole' : 'decimal',
    decimals: point < 0 ? 0 : plain.length - point - 1,
    span: { from: token.from, to: token.to },
  }
}
