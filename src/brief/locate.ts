/** A place in a text, both counted from 1; columns in UTF-16 code units, a tab being one. */
export interface Location {
  readonly line: number
  readonly column: number
}

/** Line and column of `offset`. Lines end at LF, CR LF or a lone CR; an offset beyond the text is taken as its end. */
export function locate(text: string, offset: number): Location {
  const end = Math.max(0, Math.min(offset, text.length))
  let line = 1
  let start = 0
  for (let i = 0; i < end; i++) {
    const c = text.charCodeAt(i)
    if (c === 10 || (c === 13 && text.charCodeAt(i + 1) !== 10)) {
      line++
      start = i + 1
    }
  }
  return { line, column: end - start + 1 }
}
