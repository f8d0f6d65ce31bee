import { acceptCompletion, autocompletion, closeCompletion, currentCompletions } from '@codemirror/autocomplete'
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands'
import { indentUnit } from '@codemirror/language'
import { type Diagnostic, lintKeymap, setDiagnostics } from '@codemirror/lint'
import { EditorState, type Extension, Prec } from '@codemirror/state'
import { EditorView, hoverTooltip, keymap, tooltips } from '@codemirror/view'
import type { Brief } from '../../../brief/brief.ts'
import type { Mark } from '../../../brief/mark.ts'
import { sentence } from '../../../brief/sentence.ts'
import type { Span } from '../../../brief/span.ts'
import { type Keyword, keywordSpellings } from '../../../brief/vocabulary.ts'
import type { Drawn, PageMark } from '../engine/messages.ts'
import { completeBrief } from './complete.ts'
import { statementHelp } from './help.ts'
import { briefLanguage } from './language.ts'
import { COLUMN, endLine } from './line-end.ts'
import { litWords } from './lit-words.ts'
import { pictureFor } from './pictures.ts'
import { whatNext } from './what-next.ts'

/** What the slip tells the bench, and asks of it. */
export interface SlipHandlers {
  /** `undone`: undo or redo brought the text back. */
  readonly changed: (text: string, undone: boolean) => void
  /** The cursor or the pointer stands at these words. */
  readonly at: (span: Span | undefined) => void
  readonly brief: () => Brief | undefined
  readonly marks: () => readonly PageMark[]
  /** The drawing of a brief of its own, for the small picture beside an explanation. */
  readonly draw: (text: string) => Promise<Drawn>
}

/** The editor's state for one brief; its history is its own. */
export function slipState(text: string, handlers: SlipHandlers): EditorState {
  return EditorState.create({ doc: text, extensions: extensions(handlers) })
}

function extensions(handlers: SlipHandlers): Extension[] {
  return [
    history(),
    briefLanguage(),
    litWords,
    whatNext(),
    EditorState.tabSize.of(COLUMN),
    // Backspace takes an indentation away whole.
    indentUnit.of(' '.repeat(COLUMN)),
    EditorView.lineWrapping,
    // What is written stands clear of the slip's lower edge, where the text fades.
    EditorView.scrollMargins.of(() => ({ bottom: 30 })),
    EditorView.contentAttributes.of({ 'aria-label': 'Brief', tabindex: '0', spellcheck: 'false', autocorrect: 'off' }),
    // Before the list's own keys.
    Prec.highest(keymap.of([{ key: 'Escape', run: closeUnseen }])),
    autocompletion({
      override: [completeBrief(handlers.brief, handlers.marks)],
      icons: false,
      activateOnTypingDelay: 60,
    }),
    // On the slip: a card over the sheet would cover what is being written about.
    tooltips({ tooltipSpace: spaceOf }),
    keymap.of([
      { key: 'Tab', run: acceptCompletion },
      { key: 'Enter', run: endLine },
      ...defaultKeymap.filter((k) => k.key !== 'Mod-i'),
      ...historyKeymap,
      ...lintKeymap.filter((k) => k.key === 'F8'),
      {
        key: 'Tab',
        // Only inside a line: at its start the key goes on through the page.
        run: (view) => indent(view),
      },
    ]),
    EditorView.updateListener.of((update) => {
      if (update.docChanged) {
        const undone = update.transactions.some((t) => t.isUserEvent('undo') || t.isUserEvent('redo'))
        handlers.changed(update.state.doc.toString(), undone)
      }
      if (update.selectionSet || update.docChanged) {
        const { from, to } = update.state.selection.main
        handlers.at(update.view.hasFocus ? { from, to } : undefined)
      }
    }),
    EditorView.domEventHandlers({
      mousemove: (event, view) => {
        const pos = view.posAtCoords({ x: event.clientX, y: event.clientY })
        handlers.at(pos === null ? undefined : { from: pos, to: pos })
      },
      mouseleave: () => handlers.at(undefined),
    }),
    hoverTooltip((view, pos) => helpAt(view, pos, handlers.draw), { hoverTime: 500 }),
  ]
}

/** The slip as far as it is in the window, clear of its edge by the border of a card. */
function spaceOf(view: EditorView) {
  const { left, top, right, bottom } = (view.dom.closest('.slip-body') ?? view.dom).getBoundingClientRect()
  return { left, top: Math.max(0, top), right: right - 2, bottom: Math.min(innerHeight, bottom) }
}

/** A list still being looked up ends unseen: the Escape is then left to let Tab out of the brief. */
function closeUnseen(view: EditorView): boolean {
  if (currentCompletions(view.state).length === 0) closeCompletion(view)
  return false
}

/** Blanks to the column in which statements are written. */
function indent(view: EditorView): boolean {
  const { from, to } = view.state.selection.main
  const line = view.state.doc.lineAt(from)
  const column = from - line.from
  if (from !== to || column >= COLUMN || (column === 0 && line.text !== '')) return false
  view.dispatch(view.state.replaceSelection(' '.repeat(COLUMN - column)))
  return true
}

function helpAt(view: EditorView, pos: number, draw: SlipHandlers['draw']) {
  const line = view.state.doc.lineAt(pos)
  const word = /^[\p{L}-]+( bar)?/u.exec(line.text)?.[0].toLowerCase()
  if (!word || pos > line.from + word.length) return null
  const keyword = (keywordSpellings[word] ?? word) as Keyword
  const help = statementHelp[keyword]
  if (!help) return null
  return {
    pos: line.from,
    end: line.from + word.length,
    above: false,
    create: () => {
      const dom = document.createElement('div')
      dom.className = 'help-card'
      const place = document.createElement('div')
      place.className = 'help-picture'
      pictureFor(keyword, draw).then(
        (picture) => place.replaceChildren(picture),
        // The words say it too.
        () => place.remove(),
      )
      dom.append(place)
      const text = document.createElement('p')
      text.textContent = help.text
      const example = document.createElement('pre')
      example.textContent = help.example
      dom.append(text, example)
      return { dom }
    },
  }
}

/** Shows the marks at their words, each with its mends. */
export function showMarks(view: EditorView, marks: readonly Mark[]): void {
  const end = view.state.doc.length
  const diagnostics = marks.flatMap((mark): Diagnostic[] => {
    if (!mark.span) return []
    const from = Math.min(mark.span.from, end)
    const whole = view.state.sliceDoc(from, Math.min(Math.max(mark.span.to, from), end))
    // A mark about a whole statement stands at its first word.
    const to = from + (whole.includes('\n') ? /^\S*/.exec(whole)![0].length : whole.length)
    return [
      {
        from,
        to,
        severity: mark.weight === 'must change' ? 'error' : mark.weight === 'look again' ? 'warning' : 'info',
        message: sentence(mark.text) + (mark.expected ? `\nExpected: ${mark.expected}` : ''),
        actions: (mark.mends ?? []).map((mend) => ({
          name: mend.label,
          apply: (v) => replace(v, mend.span, mend.text),
        })),
      },
    ]
  })
  view.dispatch(setDiagnostics(view.state, diagnostics))
}

/** One change that undo takes back by itself. */
export function replace(view: EditorView, span: Span, text: string): void {
  const end = view.state.doc.length
  view.dispatch({
    changes: { from: Math.min(span.from, end), to: Math.min(span.to, end), insert: text },
    userEvent: 'input.replace',
    scrollIntoView: false,
  })
}

/** Replaces the whole text by its smallest change, so that cursor and history stay. */
export function replaceAll(view: EditorView, text: string): void {
  const old = view.state.doc.toString()
  let head = 0
  while (head < old.length && head < text.length && old[head] === text[head]) head++
  let tail = 0
  while (tail < Math.min(old.length, text.length) - head && old[old.length - 1 - tail] === text[text.length - 1 - tail])
    tail++
  replace(view, { from: head, to: old.length - tail }, text.slice(head, text.length - tail))
}
