import type { Brief } from '../../../brief/brief.ts'
import { readBrief } from '../../../brief/read.ts'

/** What the reader says to a word at the end of an unfinished statement. */
export interface Fit {
  readonly word: string
  /** How much less is missing with it; negative where it opens what must be closed. */
  readonly gain: number
}

/**
 * The words that the reader takes at the end of a statement, by trying each: it knows best what may stand where. Those
 * that it marks themselves are left out; where it would mark them all, each is as good as another and all are given.
 */
export function fitting(brief: Brief | undefined, statement: string, words: readonly string[]): Fit[] {
  const base = groundFor(brief, statement) + statement
  const faults = (text: string) => readBrief(text).marks.filter((m) => m.weight === 'must change')
  const before = faults(base).length
  const from = base.length
  const tried = words.map((word) => {
    const found = faults(`${base}${word}\n`)
    return {
      word,
      gain: before - found.length,
      refused: found.some((m) => m.span && m.span.from >= from && m.span.to > from && !OPENS.test(m.rule)),
    }
  })
  const taken = tried.filter((t) => !t.refused)
  return (taken.length > 0 ? taken : tried.map((t) => ({ ...t, gain: 0 }))).map(({ word, gain }) => ({ word, gain }))
}

/** Marks of what a word only opens: its number or name is yet to come. */
const OPENS = /^(?:missing|empty)-/

/** The least of the brief that the reader needs for the statement: units and practice, the stock, labelled features. */
function groundFor(brief: Brief | undefined, statement: string): string {
  if (!brief) return ''
  const { header, stock, features, text } = brief
  const decimal = /^decimal[^\n]*$/im.exec(text)?.[0]
  const lines = [
    `units ${header.units}`,
    `practice ${header.practice}`,
    ...(decimal ? [decimal] : []),
    ...(stock ? [text.slice(stock.span.from, stock.span.to)] : []),
    ...features.filter((f) => f.label).map((f) => text.slice(f.span.from, f.span.to)),
  ].filter((line) => !line.includes(statement.trim()) || statement.trim() === '')
  return `${lines.join('\n')}\n`
}
