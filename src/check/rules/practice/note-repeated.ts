import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'note-repeated',
  weight: 'look again',
  source: 'ISO 129-1:2018, 4.1: nothing is stated more than once (from memory)',
  about: 'What is said twice will one day be changed once.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const plain = (text: string) =>
      text
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]+/gu, ' ')
        .trim()
    return header.notes.flatMap(({ text, span }, i) => {
      const first = header.notes.findIndex((n) => plain(n.text) === plain(text))
      return first < i
        ? [{ text: `Note ${i + 1} says what note ${first + 1} says.`, span, expected: 'one of the two' }]
        : []
    })
  },
}
