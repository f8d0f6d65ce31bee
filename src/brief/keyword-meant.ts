import { nearestWord } from './spelling.ts'
import { keywordSpellings, keywords } from './vocabulary.ts'

/** The keyword that a word which is none most likely stands for, and whether the word is only its beginning. */
export function keywordMeant(text: string): { readonly near: string | undefined; readonly begun: boolean } {
  const begun = keywords.filter((word) => text.length > 1 && word.startsWith(text.toLowerCase()))
  if (begun.length === 0)
    return { near: nearestWord(text, [...keywords, ...Object.keys(keywordSpellings)]), begun: false }
  return { near: begun.find((word) => begun.every((other) => other.startsWith(word))), begun: true }
}
