import type { Acceptance } from './brief.ts'
import type { Statement } from './lexeme.ts'
import type { Mark } from './mark.ts'
import { readText } from './read-text.ts'

const form = /^([a-z]+(?:-[a-z]+)*)(?:\s+at\s+(.+?))?(?:\s+with\s+(.+?))?\s+because\s+(\S.*)$/is

/** An acceptance longer than this is not read: nobody's reason takes a page. */
const LONGEST = 1000

/** `hole-near-edge at hole 1 with 1.2 mm, 9 mm because the web carries nothing` */
export function readAcceptance(s: Statement, mark: (mark: Mark) => void): Acceptance | undefined {
  const text = readText(s)
  const found = text && text.text.length <= LONGEST ? form.exec(text.text) : undefined
  if (!text || !found) {
    mark({
      rule: 'acceptance-incomplete',
      weight: 'must change',
      text: text ? 'an acceptance names the rule and gives a reason' : 'accept says nothing',
      span: text?.span ?? s.keyword.span,
      expected: 'accept    hole-near-edge at hole 1 with 1.2 mm because the web carries no load',
    })
    return undefined
  }
  const [, rule, at, numbers, because] = found
  // Where the text is one line as typed, its words have places of their own.
  const plain = text.text.length === text.span.to - text.span.from
  const place = (part: string, from: number) => ({
    text: part,
    span: plain ? { from: text.span.from + from, to: text.span.from + from + part.length } : text.span,
  })
  return {
    rule: place(rule!.toLowerCase(), 0),
    ...(at ? { at: place(at, found[0].indexOf(at, rule!.length)) } : {}),
    ...(numbers ? { numbers: numbers.split(/,\s+/).map((n) => n.trim()) } : {}),
    because: place(because!, found[0].length - because!.length),
    span: s.span,
  }
}

/** The text of the statement, after its keyword. */
export function printAcceptance(a: Pick<Acceptance, 'rule' | 'at' | 'numbers' | 'because'>): string {
  const at = a.at ? ` at ${a.at.text}` : ''
  const numbers = a.numbers && a.numbers.length > 0 ? ` with ${a.numbers.join(', ')}` : ''
  return `${a.rule.text}${at}${numbers} because ${a.because.text}`
}
