import type { Span } from '../../src/brief/span.ts'
import type { Mutation } from './mutate.ts'

/**
 * Faults put into the text by someone who knows nothing of briefs: figures, letters, words and lines as they stand, no
 * statement understood. Not one of them is made with a rule of the checker in mind.
 */
type Slip = (text: string, random: () => number) => { readonly span: Span; readonly text: string } | undefined

const pick = <T>(list: readonly T[], random: () => number): T | undefined => list[Math.floor(random() * list.length)]

/** Places of a pattern, comments and quoted names left out. */
function places(text: string, pattern: RegExp): { readonly span: Span; readonly text: string }[] {
  return [...text.matchAll(pattern)].flatMap((m) => {
    const before = text.slice(text.lastIndexOf('\n', m.index) + 1, m.index)
    if (before.includes('#') && !/#\d/.test(before)) return []
    return [{ span: { from: m.index, to: m.index + m[0].length }, text: m[0] }]
  })
}

const NUMBER = /(?<![\w./-])(?:\d+(?:[.,]\d+)?|\.\d+)(?![\w/])/g
const lines = (text: string) => places(text, /[^\n]*\n/g).filter((l) => l.text.trim() !== '')

const slips: Readonly<Record<string, Slip>> = {
  'two numbers swapped': (text, random) => {
    const line = pick(
      lines(text).filter((l) => [...l.text.matchAll(NUMBER)].length > 1),
      random,
    )
    if (!line) return undefined
    const found = [...line.text.matchAll(NUMBER)]
    const i = Math.floor(random() * (found.length - 1))
    const [a, b] = [found[i]!, found[i + 1]!]
    const middle = line.text.slice(a.index + a[0].length, b.index)
    const from = line.span.from + a.index
    return { span: { from, to: line.span.from + b.index + b[0].length }, text: b[0] + middle + a[0] }
  },
  'a statement dropped': (text, random) =>
    pick(
      places(text, /^[a-z][^\n]*\n(?:[ \t][^\n]*\n)*/gm).map(({ span }) => ({ span, text: '' })),
      random,
    ),
  'a line dropped': (text, random) =>
    pick(
      places(text, /^[ \t]+\S[^\n]*\n/gm).map(({ span }) => ({ span, text: '' })),
      random,
    ),
  'a digit changed': (text, random) => {
    const digit = pick(places(text, /\d/g), random)
    return digit && { span: digit.span, text: String((Number(digit.text) + 1 + Math.floor(9 * random())) % 10) }
  },
  'a number ten times as large': (text, random) => {
    const number = pick(places(text, NUMBER), random)
    if (!number) return undefined
    const value = Number(number.text.replace(',', '.')) * 10
    return { span: number.span, text: String(Number(value.toFixed(6))) }
  },
  'a decimal point dropped': (text, random) => {
    const point = pick(places(text, /(?<=\d)[.,](?=\d)|(?<=[^\w])\.(?=\d)/g), random)
    return point && { span: point.span, text: '' }
  },
  'a decimal dropped': (text, random) => {
    const last = pick(places(text, /(?<=\.\d+)\d(?!\d)/g), random)
    return last && { span: last.span, text: '' }
  },
  'letters of a fit changed': (text, random) => {
    const fit = pick(
      places(text, /(?<=[\d ])[A-Za-z]{1,2}(?=\d{1,2}\b(?![\w×.]))/g).filter((p) =>
        /^(?:[hHkfgnprsjmFGKNPR]|js)$/.test(p.text),
      ),
      random,
    )
    if (!fit) return undefined
    const other = pick(
      ['h', 'f', 'k', 'n', 'p', 'H', 'N', 'F'].filter((l) => l !== fit.text),
      random,
    )!
    return { span: fit.span, text: other }
  },
  'a unit changed': (text, random) => {
    const said = places(text, /(?<=^units +)(?:mm|inch)/gm)[0]
    if (said && random() < 0.5) return { span: said.span, text: said.text === 'mm' ? 'inch' : 'mm' }
    const number = pick(places(text, NUMBER), random)
    const other = said?.text === 'mm' ? 'in' : 'mm'
    return number && { span: number.span, text: `${number.text} ${other}` }
  },
  'a datum dropped': (text, random) =>
    pick(
      [
        ...places(text, /^datum [^\n]*\n/gm),
        ...places(text, /(?<=^frame [^\n]*)(?<= )[A-Z](?:-[A-Z])?(?=[ \n])/gm),
      ].map(({ span }) => ({ span, text: '' })),
      random,
    ),
  'a word dropped': (text, random) =>
    pick(
      places(text, /(?<=[ \t])[a-z]{3,}(?=[ ,;:\n])/g).map(({ span }) => ({ span, text: '' })),
      random,
    ),
  'a side taken for the other': (text, random) => {
    const side = pick(places(text, /\b(?:left|right|top|bottom|front|rear|across|up)\b/g), random)
    const other: Readonly<Record<string, string>> = {
      left: 'right',
      right: 'left',
      top: 'bottom',
      bottom: 'top',
      front: 'rear',
      rear: 'front',
      across: 'up',
      up: 'across',
    }
    return side && { span: side.span, text: other[side.text]! }
  },
  'a count changed': (text, random) => {
    const count = pick(places(text, /\b\d+(?=X\b)|(?<=^ +|; )\d+(?= (?:across|up)\b)/gm), random)
    return count && { span: count.span, text: String(Number(count.text) + (random() < 0.5 ? 1 : -1)) }
  },
  'a sign changed': (text, random) => {
    const sign = pick(places(text, /[+-](?=\.\d)/g), random)
    return sign && { span: sign.span, text: sign.text === '+' ? '-' : '+' }
  },
}

/** One slip of the pen in a brief. Undefined where the kinds tried did not apply. */
export function slip(text: string, random: () => number): Mutation | undefined {
  const kinds = Object.keys(slips)
  for (let tries = 0; tries < 60; tries++) {
    const kind = kinds[Math.floor(random() * kinds.length)]!
    const edit = slips[kind]!(text, random)
    if (!edit) continue
    const after = text.slice(0, edit.span.from) + edit.text + text.slice(edit.span.to)
    if (after === text) continue
    const line = (at: number) => after.slice(0, at).split('\n').length
    const whole = edit.text === '' && text.slice(edit.span.from, edit.span.to).endsWith('\n')
    return {
      kind,
      text: after,
      change: `${text.slice(edit.span.from, edit.span.to).trim()} → ${edit.text.trim() || 'nothing'}`,
      ...(whole || kind === 'a unit changed'
        ? {}
        : { lines: [line(edit.span.from), line(edit.span.from + edit.text.length)] as const }),
    }
  }
  return undefined
}
