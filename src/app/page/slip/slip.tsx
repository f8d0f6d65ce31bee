import { redo, redoDepth, undo, undoDepth } from '@codemirror/commands'
import { EditorSelection, type EditorState } from '@codemirror/state'
import { EditorView } from '@codemirror/view'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { Mark } from '../../../brief/mark.ts'
import type { Span } from '../../../brief/span.ts'
import { type Room, slipStyle } from '../bench/room.ts'
import { showMarks } from './editor.ts'
import { type LitWords, setLitWords } from './lit-words.ts'

interface SlipProps {
  readonly title: string
  readonly folded: boolean
  /** Its place, px; absent: along the window's left edge. */
  readonly place: Room['slip']
  readonly onFold: () => void
  /** Gives the view to whoever changes the brief from elsewhere. */
  readonly onView: (view: EditorView) => void
  /** The slip is taken off the bench, this being its last state. */
  readonly onTakenOff: (state: EditorState) => void
  /** State of the brief that lies in the slip; another object is another brief. */
  readonly state: EditorState
  readonly marks: readonly Mark[]
  /** Marks belong to this text and are shown only while it stands. */
  readonly marksOf: string
  readonly lit: LitWords | undefined
  /** What was chosen on the sheet is written here: it is brought into sight. */
  readonly chosen: Span | undefined
  readonly children?: ReactNode
}

/** Px that a line keeps from the edges when it is brought into sight. */
const IN_SIGHT = { y: 'nearest', yMargin: 30 } as const

/** The brief as a slip of paper that lies over the sheet's edge and folds away. */
export function Slip(props: SlipProps) {
  const { title, folded, onFold, onView, state, marks, marksOf, lit, chosen, children } = props
  const takenOff = useRef(props.onTakenOff)
  takenOff.current = props.onTakenOff
  const writing = useRef<HTMLDivElement>(null)
  const view = useRef<EditorView>(undefined)
  const [, setLaid] = useState(0)
  useEffect(() => {
    const made = new EditorView({ parent: writing.current! })
    view.current = made
    // The sheet's format may change with a word, and the slip's height with it: where one writes stays in sight.
    const sized = new ResizeObserver(() => {
      if (made.hasFocus) made.dispatch({ effects: EditorView.scrollIntoView(made.state.selection.main, IN_SIGHT) })
    })
    sized.observe(writing.current!)
    return () => {
      sized.disconnect()
      takenOff.current(made.state)
      made.destroy()
    }
  }, [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new state is a new brief; whoever takes the view may change
  useEffect(() => {
    view.current!.setState(state)
    onView(view.current!)
    // What can be taken back is that of the state which lies there now.
    setLaid((n) => n + 1)
  }, [state])
  useEffect(() => {
    if (view.current && view.current.state.doc.toString() === marksOf) showMarks(view.current, marks)
  }, [marks, marksOf])
  useEffect(() => {
    view.current?.dispatch({ effects: setLitWords.of(lit ?? { words: [] }) })
  }, [lit])
  const [from, to] = [chosen?.from, chosen?.to]
  useEffect(() => {
    const editor = view.current
    if (!editor || from === undefined || to === undefined) return
    const end = editor.state.doc.length
    const range = EditorSelection.range(Math.min(from, end), Math.min(to, end))
    editor.dispatch({ effects: EditorView.scrollIntoView(range, IN_SIGHT) })
  }, [from, to])
  const laid = folded || !props.place ? {} : slipStyle(props.place)
  // The bench lays the slip anew with every keystroke.
  const now = view.current?.state
  return (
    <section className={`slip${folded ? ' folded' : ''}`} aria-label="Brief" style={laid}>
      <button type="button" className="fold" aria-expanded={!folded} aria-controls="slip-body" onClick={onFold}>
        {folded ? 'Brief' : 'Fold'}
      </button>
      <div id="slip-body" className="slip-body" inert={folded}>
        <header>
          <h2 title={title}>{title}</h2>
          {children}
        </header>
        <div className="writing" ref={writing} />
        <div className="taking-back">
          <button type="button" disabled={!now || undoDepth(now) === 0} onClick={() => undo(view.current!)}>
            Undo
          </button>
          <button type="button" disabled={!now || redoDepth(now) === 0} onClick={() => redo(view.current!)}>
            Redo
          </button>
        </div>
      </div>
    </section>
  )
}
