import type { EditorState } from '@codemirror/state'
import type { EditorView } from '@codemirror/view'
import { type RefObject, useMemo, useRef } from 'react'
import type { Kept } from '../shelf/shelf.ts'
import { replaceAll, type SlipHandlers, slipState } from '../slip/editor.ts'

export interface SlipUse {
  /** The editor's state for the brief on the bench. */
  readonly slip: EditorState | undefined
  readonly view: RefObject<EditorView | undefined>
  /** Before another brief comes to the bench: keeps this one's cursor and history. */
  readonly leaveSlip: () => void
  /** Writing goes on at the end of the brief that comes to the bench next. */
  readonly writeOn: () => void
  /** Another tab wrote into a brief: where it lies in the slip, the editor goes along. */
  readonly followed: (brief: Kept) => void
  /** The editor shows the state. */
  readonly laid: (view: EditorView) => void
  /** The slip is taken off the bench: something else lies there for a while. */
  readonly takenOff: (state: EditorState) => void
}

/** The editor of the brief on the bench. Each brief has one state; its text lives in it from then on. */
export function useSlip(active: Kept | undefined, handlers: (id: string) => SlipHandlers): SlipUse {
  const view = useRef<EditorView>(undefined)
  const states = useRef(new Map<string, EditorState>())
  const goesOn = useRef(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: one state a brief
  const slip = useMemo(() => {
    if (!active) return undefined
    const { id, text } = active
    const old = states.current.get(id)
    return old && old.doc.toString() === text ? old : slipState(text, handlers(id))
  }, [active?.id])
  const followed = (brief: Kept) => {
    const editor = view.current
    if (brief.id !== active?.id || !editor?.dom.isConnected) return
    if (editor.state.doc.toString() !== brief.text) replaceAll(editor, brief.text)
  }
  return {
    slip,
    view,
    followed,
    leaveSlip: () => {
      if (active && view.current) states.current.set(active.id, view.current.state)
    },
    writeOn: () => {
      goesOn.current = true
    },
    takenOff: (state) => {
      if (active) states.current.set(active.id, state)
    },
    laid: (laid) => {
      view.current = laid
      // Laid again after something else lay there: as it was left.
      const left = active && states.current.get(active.id)
      if (left && left !== laid.state) laid.setState(left)
      if (active && laid.state.doc.toString() !== active.text) replaceAll(laid, active.text)
      if (!goesOn.current) return
      goesOn.current = false
      laid.dispatch({ selection: { anchor: endToWrite(laid.state) }, scrollIntoView: true })
      laid.focus()
    },
  }
}

/** Where one writes on: behind a first line that is only begun, else at the end. */
function endToWrite({ doc }: EditorState): number {
  const first = doc.line(1)
  return /^part\s+$/.test(first.text) ? first.to : doc.length
}
