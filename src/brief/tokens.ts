import { ExternalTokenizer, type InputStream } from '@lezer/lr'
import { Comment, Continue, Keyword, Text, TextKeyword } from './grammar.terms.js'
import { keywordSpellings, textKeywords } from './vocabulary.ts'

const lf = 10
const cr = 13
const space = 32
const tab = 9
const hash = 35
const quote = 34
const end = -1
const mark = 0xfeff

const isBlank = (c: number) => c === space || c === tab || c === 0xa0 || c === mark
const isEnd = (c: number) => c === lf || c === cr || c === end
const isDigit = (c: number) => c >= 48 && c <= 57

const free = new Set<string>(textKeywords)
for (const [spelling, keyword] of Object.entries(keywordSpellings)) {
  if ((textKeywords as readonly string[]).includes(keyword)) free.add(spelling)
}
const longest = 24

/** A `#` opens a comment at the margin, or after a blank unless a digit follows (`#10-32` is a screw). */
function atComment(input: InputStream): boolean {
  if (input.next !== hash) return false
  const before = input.peek(-1)
  return isEnd(before) || before === mark || (isBlank(before) && !isDigit(input.peek(1)))
}

/** The word at the margin that opens a statement, or the indent of a line that continues one. */
export const lineStart = new ExternalTokenizer((input, stack) => {
  const before = input.peek(-1)
  if (!isEnd(before) && !(before === mark && isEnd(input.peek(-2)))) return
  if (input.next === space || input.next === tab) {
    if (!stack.canShift(Continue)) return
    while (input.next === space || input.next === tab) input.advance()
    if (!isEnd(input.next) && !(input.next === hash && !isDigit(input.peek(1)))) input.acceptToken(Continue)
    return
  }
  if (isEnd(input.next) || isBlank(input.next) || atComment(input)) return
  let word = ''
  const wordEnd = (c: number) => isEnd(c) || isBlank(c) || c === 58 || c === 44 || c === 59
  do {
    if (word.length < longest) word += String.fromCharCode(input.next)
    input.advance()
  } while (!wordEnd(input.next))
  input.acceptToken(free.has(word.toLowerCase()) ? TextKeyword : Keyword)
})

/** Free text to the end of the line or to its comment, without the blanks about it. */
export const restOfLine = new ExternalTokenizer((input) => {
  if (isEnd(input.next) || isBlank(input.next) || atComment(input)) return
  const quotable = input.next === quote
  let quoted = quotable
  let last = 0
  let length = 0
  while (!isEnd(input.next)) {
    if (!quoted && length > 0 && atComment(input)) break
    if (quotable && length > 0 && input.next === quote) quoted = !quoted
    const blank = isBlank(input.next)
    input.advance()
    length++
    if (!blank) last = length
  }
  input.acceptToken(Text, last - length)
})

export const comment = new ExternalTokenizer((input) => {
  if (!atComment(input)) return
  while (!isEnd(input.next)) input.advance()
  input.acceptToken(Comment)
})
