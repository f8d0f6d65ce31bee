import type { Completion, CompletionContext, CompletionResult } from '@codemirror/autocomplete'
import type { Brief } from '../../../brief/brief.ts'
import { keywordSpellings, keywords, phraseWords, stockNames } from '../../../brief/vocabulary.ts'
import { statementHelp } from './help.ts'
import { nextHoleWords } from './hole-words.ts'

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

/** Fixed choices after a keyword. */
const CHOICES: Readonly<Record<string, readonly string[]>> = {
  units: ['inch', 'mm'],
  practice: ['ASME', 'ISO, first angle', 'ISO, third angle'],
  decimal: ['comma', 'point'],
  sheet: ['A4', 'A3', 'A2', 'A1', 'A0', 'A', 'B', 'C', 'D', 'E'],
  scale: ['1:1', '1:2', '1:5', '2:1'],
}

/** What may stand at the cursor: a keyword at the margin, else the words of the statement and the part's own names. */
export function completeBrief(brief: () => Brief | undefined) {
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
    const next = keyword === 'hole' ? nextHoleWords(statementBefore(context)) : []
    const options = [...choices(keyword), ...following(next), ...words(keyword), ...names(keyword, brief())]
    const seen = new Set<string>()
    return {
      from,
      options: options.filter((o) => !seen.has(o.label) && seen.add(o.label)),
      validFor: /^[\p{L}' -]*$/u,
    }
  }
}

function keywordOptions(context: CompletionContext, brief: Brief | undefined): Completion[] {
  const text = context.state.doc.toString()
  return keywords
    .filter((k) => !ONCE.has(k) || !new RegExp(`^${k}\\b`, 'im').test(text))
    .filter((k) => !brief?.stock || !(k in stockNames) || k === 'flat')
    .map((k) => ({ label: k, apply: k.padEnd(10), detail: statementHelp[k]?.short ?? '' }))
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

/** What comes next in the statement's own order, first of all. */
const following = (next: readonly string[]): Completion[] =>
  next.map((label, i) => ({ label, detail: 'next', boost: 20 - i }))

const choices = (keyword: string): Completion[] =>
  (CHOICES[keyword] ?? []).map((label) => ({ label, detail: '', boost: 5 }))

const words = (keyword: string): Completion[] =>
  keyword in phraseWords ? phraseWords[keyword as keyof typeof phraseWords].map((label) => ({ label, detail: '' })) : []

/** Names of the part's faces for what is worked into a face, of its edges for what is worked along them. */
function names(keyword: string, brief: Brief | undefined): Completion[] {
  if (!brief?.stock) return []
  const table = stockNames[brief.stock.kind]
  const alongEdges = ['chamfer', 'round', 'fillet', 'step'].includes(keyword)
  const own =
    brief.stock.kind === 'turned'
      ? brief.stock.steps.flatMap(({ name: { text } }) =>
          alongEdges ? [`${text} left edge`, `${text} right edge`] : [text, `${text} left face`, `${text} right face`],
        )
      : []
  return [
    ...[...own, ...(alongEdges ? table.edges : table.faces)].map((label) => ({
      label,
      detail: alongEdges ? 'edge' : 'face',
      boost: 2,
    })),
    ...brief.features.flatMap((f) => (f.label ? [{ label: f.label.text, detail: f.kind }] : [])),
  ]
}
