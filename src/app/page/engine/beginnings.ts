import type { Brief } from '../../../brief/brief.ts'
import type { Mark, Mend } from '../../../brief/mark.ts'
import type { Span } from '../../../brief/span.ts'
import { textKeywords } from '../../../brief/vocabulary.ts'

/** Statements whose usual words may be written for the drafter; of the others only the keyword is. */
const USUAL: ReadonlySet<string> = new Set(['general', 'texture', 'standard'])

/** The mark with a mend that begins the statement it misses, where it misses one of the header and says which. */
export function withBeginning(mark: Mark, brief: Brief): Mark {
  if (mark.span || mark.mends || !mark.expected) return mark
  const said = /(?:^|: )([a-z]+)\s{2,}(\S.*)$/.exec(mark.expected)
  const keyword = textKeywords.find((k) => k === said?.[1])
  if (!said || !keyword) return mark
  const usual = USUAL.has(keyword) ? said[2]! : ''
  const begun = begunLine(brief.text, keyword)
  if (begun) {
    const label = usual ? labelOf(keyword, usual) : `go on with the statement ${keyword}`
    return { ...mark, mends: [{ label, span: begun, text: `${keyword.padEnd(10)}${usual}` }] }
  }
  const at = endOfHeader(brief)
  const mend: Mend = {
    label: usual ? labelOf(keyword, usual) : `begin the statement ${keyword}`,
    span: { from: at, to: at },
    text: `${at === 0 ? '' : '\n'}${keyword.padEnd(10)}${usual}${at === 0 ? '\n' : ''}`,
  }
  return { ...mark, mends: [mend] }
}

const labelOf = (keyword: string, usual: string): string => `write ${keyword} ${usual.replace(/\s+/g, ' ')}`

/** The line that has nothing but the keyword: a mend made once already, or the drafter's own beginning. */
function begunLine(text: string, keyword: string): Span | undefined {
  const found = new RegExp(`^${keyword}[ \\t]*$`, 'im').exec(text)
  return found ? { from: found.index, to: found.index + found[0].length } : undefined
}

/** Behind the last line above the stock, or behind the last of all. */
function endOfHeader({ text, stock }: Brief): number {
  return text.slice(0, stock?.span.from ?? text.length).trimEnd().length
}
