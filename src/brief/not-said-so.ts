import { stockKeywords } from './vocabulary.ts'

/** What is told of a word that opens no statement though a drafter may well look for one. */
interface Advice {
  readonly mark: { readonly text: string; readonly expected: string }
  /** It was meant as the stock: that no stock is stated need not be said again. */
  readonly stock?: boolean
}

/** Advice for words that stand for something this language says elsewhere, or not at all. */
export function notSaidSo(word: string): Advice | undefined {
  switch (word.toLowerCase()) {
    case 'thread':
    case 'threads':
    case 'tap':
    case 'tapped':
      return {
        mark: {
          text: `“${word}” is no statement: a thread stands in the callout of its hole or in its step of a turned part`,
          expected: 'hole top: M6 ↧ 12, or a step such as: screw M20 × 1.5 - 6g, 30 long',
        },
      }
    case 'strip':
    case 'bent':
    case 'bend':
    case 'sheetmetal':
      return {
        mark: {
          text: `“${word}” is no stock: parts bent from strip or sheet cannot be drawn, but for an angle`,
          expected: `one of: ${stockKeywords.join(', ')}`,
        },
        stock: true,
      }
    default:
      return undefined
  }
}
