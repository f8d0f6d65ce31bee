import type { Brief } from '../../../brief/brief.ts'
import type { Mark, Mend } from '../../../brief/mark.ts'
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
  const at = endOfHeader(brief)
  const mend: Mend = {
    label: usual ? `write ${keyword} ${usual.replace(/\s+/g, ' ')}` : `begin the statement ${keyword}`,
    span: { from: at, to: at },
    text: `${at === 0 ? '' : '\n'}${keyword.padEnd(10)}${usual}${at === 0 ? '\n' : ''}`,
  }
  return { ...mark, mends: [mend] }
}

/** Behind the last line above the stock, or behind the last of all. */
function endOfHeader({ text, stock }: Brief): number {
  return text.slice(0, stock?.span.from ?? text.length).trimEnd().length
}
