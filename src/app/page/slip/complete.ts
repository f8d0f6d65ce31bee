import {
  type Completion,
  type CompletionContext,
  type CompletionResult,
  pickedCompletion,
  startCompletion,
} from '@codemirror/autocomplete'
import type { EditorView } from '@codemirror/view'
import type { Brief } from '../../../brief/brief.ts'
import { keywordSpellings, keywords, phraseWords, stockNames } from '../../../brief/vocabulary.ts'
import type { PageMark } from '../engine/messages.ts'
import { REASON } from '../engine/reason.ts'
import { fitting } from './fitting.ts'
import { statementHelp } from './help.ts'
import { nextHoleWords } from './hole-words.ts'
import { COLUMN } from './line-end.ts'
import { namesOf } from './names.ts'

/** Statements of the header that can stand only once; they are not offered again. */
const ONCE = new Set([
  'part',
  'number',
  'units',
  'practice',
  'material',
  'firm',
  'document',
  'standard',
  'sheet',
  'scale',
])

/** Usual words after a keyword whose rest is free. */
const CHOICES: Readonly<Record<string, readonly string[]>> = {
  units: ['inch', 'mm'],
  practice: ['ASME', 'ISO, first angle', 'ISO, third angle'],
  decimal: ['comma', 'point'],
  sheet: ['A4', 'A3', 'A2', 'A1', 'A0', 'A', 'B', 'C', 'D', 'E'],
  scale: ['1:1', '1:2', '1:5', '2:1'],
  general: ['ISO 2768-mK', '.XX ±.01   .XXX ±.005   angles ±1/2°', 'fractions ±1/64'],
  standard: ['ASME Y14.5-2018', 'ISO 129-1:2018'],
  document: ['Detail drawing'],
  edges: ['edges broken 0.2 to 0.5', 'break edges .015 max'],
}

/** Faces that are worked most often, the first of them most (common practice, no source). */
const WORKED: readonly string[] = ['upright', 'base', 'web', 'top', 'front', 'right', 'left']
const usual = (face: string): number => (WORKED.includes(face) ? 1 - WORKED.indexOf(face) / 10 : 0)

/** What may stand at the cursor: a keyword at the margin, else what the reader takes there and the part's own names. */
export function completeBrief(brief: () => Brief | undefined, marks: () => readonly PageMark[] = () => []) {
  return (context: CompletionContext): CompletionResult | null => {
    const line = context.state.doc.lineAt(context.pos)
    const before = line.text.slice(0, context.pos - line.from)
    const typed = /[\p{L}'-]*$/u.exec(before)![0]
    if (typed === '' && !context.explicit) return null
    const from = context.pos - typed.length
    if (/^[\p{L}-]*$/u.test(before))
      return { from: line.from, options: keywordOptions(context, brief()), validFor: /^[\p{L} -]*$/u }
    const keyword = keywordAbove(context, line.number)
    if (!keyword) return null
    if (keyword === 'accept') return accepting(before, line.from, marks())
    const statement = statementBefore(context)
    const options = [
      ...choices(keyword),
      ...fittingOptions(keyword, statement.slice(0, -typed.length || undefined), brief()),
    ]
    const seen = new Set<string>()
    return {
      from,
      options: options.filter((o) => !seen.has(o.label) && seen.add(o.label)),
      validFor: /^[\p{L}' -]*$/u,
    }
  }
}

/** Words of the statement and names of the part, those that the reader takes there; what is still missing comes first. */
function fittingOptions(keyword: string, statement: string, brief: Brief | undefined): Completion[] {
  const known = keyword in phraseWords ? phraseWords[keyword as keyof typeof phraseWords] : []
  // Before the colon of a frame or a texture stands a name, after it what is said of it.
  const named = keyword !== 'frame' || !statement.includes(':')
  const words = keyword === 'frame' && named ? [] : known
  const names = namesOf(keyword, brief).filter(
    (n) => (named || n.of === 'datum') && (n.of !== 'size' || /^place\s*$/i.test(statement)),
  )
  if (keyword === 'frame' && !named) return [...words, ...names.map((n) => n.name)].map((label) => ({ label }))
  const next = keyword === 'hole' ? nextHoleWords(statement) : []
  const details = new Map(names.map((n) => [n.name, n.of]))
  if (words.length + names.length === 0) return []
  return fitting(brief, statement, [...new Set([...words, ...details.keys()])]).map(({ word, gain }) => {
    const rank = next.indexOf(word)
    const boost =
      rank >= 0 ? 40 - rank : Math.max(-20, Math.min(20, 5 * gain + (details.has(word) ? 2 + usual(word) : 0)))
    const detail = rank >= 0 ? 'next' : details.get(word)
    return { label: word, boost, ...(detail ? { detail } : {}) }
  })
}

/** The marks that can be accepted, each as the statement goes on; the reason is left to be written. */
function accepting(before: string, from: number, marks: readonly PageMark[]): CompletionResult | null {
  const written = /^accept\s+/i.exec(before)
  if (!written) return null
  const options = marks.flatMap((m): Completion[] =>
    m.accept ? [{ label: m.accept.replace(/^accept\s+/, '').replace(REASON, ''), detail: m.weight, info: m.text }] : [],
  )
  return { from: from + written[0].length, options, validFor: /^[^\n]*$/ }
}

function keywordOptions(context: CompletionContext, brief: Brief | undefined): Completion[] {
  const text = context.state.doc.toString()
  return keywords
    .filter((k) => !ONCE.has(k) || !new RegExp(`^${k}\\b`, 'im').test(text))
    .filter((k) => !brief?.stock || !(k in stockNames) || k === 'flat')
    .map((k) => ({ label: k, apply: goingOn(k), detail: statementHelp[k].short, info: statementHelp[k].text }))
}

/** Writes the keyword, and offers what may follow it. */
const goingOn = (keyword: string) => (view: EditorView, completion: Completion, from: number, to: number) => {
  const insert = keyword.padEnd(COLUMN)
  view.dispatch({
    changes: { from, to, insert },
    selection: { anchor: from + insert.length },
    annotations: pickedCompletion.of(completion),
    userEvent: 'input.complete',
  })
  startCompletion(view)
}

/** The keyword of the statement that the line belongs to. */
function keywordAbove(context: CompletionContext, number: number): string | undefined {
  for (let n = number; n >= 1; n--) {
    const { text } = context.state.doc.line(n)
    if (/^\s*(#|$)/.test(text) || /^\s/.test(text)) continue
    const lower = text.toLowerCase()
    const found = [...keywords, ...Object.keys(keywordSpellings)]
      .filter((k) => lower.startsWith(k) && !/[\p{L}]/u.test(lower[k.length] ?? ' '))
      .sort((a, b) => b.length - a.length)[0]
    return found && (keywordSpellings[found] ?? found)
  }
  return undefined
}

/** The statement's text up to the cursor. */
function statementBefore(context: CompletionContext): string {
  const { doc } = context.state
  let first = doc.lineAt(context.pos)
  while (first.number > 1 && /^\s/.test(first.text)) first = doc.line(first.number - 1)
  return doc.sliceString(first.from, context.pos)
}

const choices = (keyword: string): Completion[] => (CHOICES[keyword] ?? []).map((label) => ({ label, boost: 5 }))
