import { insertNewline } from '@codemirror/commands'
import { EditorSelection } from '@codemirror/state'
import type { EditorView } from '@codemirror/view'
import { readBrief } from '../../../brief/read.ts'

/** Column in which what a statement says is written. */
export const COLUMN = 10

/** Rules of the reader that ask for more of a statement. */
const ASKS_FOR_MORE = /^missing-|^stack-incomplete$/

/** Whether the statement that ends with the text goes on in the next line: a sign that parts ends it, or something is missing. */
export function goesOn(text: string): boolean {
  if (/[;,:]\s*$/.test(text)) return true
  const lines = text.split('\n')
  const first = lines.findLastIndex((line) => /^[^\s#]/.test(line))
  if (first < 0 || lines.at(-1)!.trim() === '') return false
  const from = lines.slice(0, first).reduce((sum, line) => sum + line.length + 1, 0)
  return readBrief(text).marks.some((m) => ASKS_FOR_MORE.test(m.rule) && m.span !== undefined && m.span.from >= from)
}

/**
 * Enter: within a statement, or behind one that goes on, the new line is indented; behind an indented line as that line
 * is. On a line of blanks it goes back to the margin, where the next statement begins.
 */
export function endLine(view: EditorView): boolean {
  const { state } = view
  const { main, ranges } = state.selection
  if (state.readOnly || ranges.length > 1) return false
  const line = state.doc.lineAt(main.from)
  if (main.empty && line.length > 0 && line.text.trim() === '') {
    view.dispatch({ changes: { from: line.from, to: line.to }, userEvent: 'delete' })
    return true
  }
  const before = line.text.slice(0, main.from - line.from)
  // At the margin a line is put in above the statement, and a comment says nothing that could go on.
  if (before.trim() === '' || before.trimStart().startsWith('#')) return insertNewline(view)
  const own = /^\s+/.exec(before)?.[0]
  const last = state.doc.lineAt(main.to)
  const rest = last.text.slice(main.to - last.from)
  const indented = own ?? (rest.trim() !== '' || goesOn(state.sliceDoc(0, main.from)) ? ' '.repeat(COLUMN) : '')
  const blanks = /^\s*/.exec(rest)![0].length
  view.dispatch(
    state.update({
      changes: { from: main.from, to: main.to + blanks, insert: `${state.lineBreak}${indented}` },
      selection: EditorSelection.cursor(main.from + state.lineBreak.length + indented.length),
      scrollIntoView: true,
      userEvent: 'input',
    }),
  )
  return true
}
