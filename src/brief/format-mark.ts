import { locate } from './locate.ts'
import type { Mark } from './mark.ts'
import { sentence } from './sentence.ts'

/** Widest piece of a brief's line that is shown beside a mark. */
const widest = 100

/**
 * A mark as plain text: where, how heavy, what; then the line with carets under the place, what was expected, and
 * what to write instead. Ends without a line feed.
 */
export function formatMark(text: string, mark: Mark): string {
  const rows: string[] = []
  if (mark.span) {
    const { line, column } = locate(text, mark.span.from)
    rows.push(`line ${line}, column ${column}: ${mark.weight}: ${sentence(mark.text)}`)
    rows.push(...picture(text, mark.span.from, mark.span.to, column))
  } else rows.push(`${mark.weight}: ${sentence(mark.text)}`)
  if (mark.expected) rows.push(`  expected: ${mark.expected}`)
  for (const mend of mark.mends ?? []) rows.push(`  mend: ${mend.label}`)
  return rows.join('\n')
}

function picture(text: string, from: number, to: number, column: number): string[] {
  const start = Math.min(text.length, from) - (column - 1)
  const rest = text.slice(start).search(/[\r\n]/)
  const end = rest < 0 ? text.length : start + rest
  const left = column > widest - 20 ? column - 1 - 40 : 0
  const shown = text.slice(start + left, Math.min(end, start + left + widest))
  const at = column - 1 - left
  const length = Math.max(1, Math.min(to - from, shown.length - at))
  const clean = (s: string) => s.replace(/[\p{Cc}\p{Cs}]/gu, (c) => (c === '\t' ? ' ' : '\u00b7'))
  return [
    `  | ${left > 0 ? '…' : ''}${clean(shown)}`,
    `  | ${' '.repeat(at + (left > 0 ? 1 : 0))}${'^'.repeat(length)}`,
  ]
}
