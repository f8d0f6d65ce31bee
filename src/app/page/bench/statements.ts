/** The brief with a statement put behind its last line. */
export const withStatement = (text: string, statement: string): string => `${text.replace(/\s*$/, '')}\n${statement}\n`

/** Free text as a statement takes it: one line, in quotation marks where a # in it would begin a comment. */
export function asText(words: string): string {
  const line = words.replace(/\s+/g, ' ').trim()
  return /(?:^|\s)#/.test(line) || /^"/.test(line) ? `"${line.replaceAll('"', '""')}"` : line
}

/** The brief signed by its checker: in the place of an earlier signature, else below who drew it, else at its end. */
export function withChecker(text: string, name: string, date: string): string {
  const statement = `checked   ${asText(name)}, ${asText(date)}`
  const lines = text.split('\n')
  const begins = (keyword: string) => lines.findIndex((line) => new RegExp(`^${keyword}(?:\\s|$)`, 'i').test(line))
  const older = begins('checked')
  const after = (at: number) => {
    let end = at + 1
    while (end < lines.length && /^\s+\S/.test(lines[end]!)) end++
    return end
  }
  if (older >= 0) lines.splice(older, after(older) - older, statement)
  else {
    const drawn = begins('drawn')
    if (drawn < 0) return withStatement(text, statement)
    lines.splice(after(drawn), 0, statement)
  }
  return lines.join('\n')
}
