import type { EditorView } from '@codemirror/view'
import type { RefObject } from 'react'
import { changeSizes, replaceSpan } from '../../../brief/edit.ts'
import type { Mend } from '../../../brief/mark.ts'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Drawn, PageMark } from '../engine/messages.ts'
import { REASON } from '../engine/reason.ts'
import { type Placing, sizePlacing, viewPlacing, withPlacing } from '../sheet/drag.ts'
import { rowStep, viewStep } from '../sheet/step.ts'
import { isLength, type Touched } from '../sheet/touch.ts'
import type { Drag } from '../sheet/use-hands.ts'
import { replace, replaceAll } from '../slip/editor.ts'
import { carriedMend } from './carried-marks.ts'
import { asText, withChecker, withStatement } from './statements.ts'

interface EditsContext {
  readonly slip: RefObject<EditorView | undefined>
  /** The drawing whose sheet is shown. */
  readonly good: Drawn | undefined
  /** The newest drawing, whose marks are shown. */
  readonly drawn: Drawn | undefined
  readonly tell: (text: string) => void
  /** Something was put elsewhere by hand, on this sheet. */
  readonly placed: (statement: string, on: Sheet) => void
}

/** Changes of the brief that begin on the sheet or in the margin. Places in a text that has moved on are never used. */
export function editsOf({ slip, good, drawn, tell, placed }: EditsContext) {
  /** The slip's editor, where the drawing is of what is written there now. */
  const editorOf = (drawing: Drawn | undefined): EditorView | undefined =>
    slip.current?.state.doc.toString() === drawing?.brief.text ? slip.current : undefined
  return {
    /** Returns why the size was refused, or undefined. */
    onSize: (touched: Touched, typed: string): string | undefined => {
      const view = editorOf(good)
      if (!view || !good) return 'The brief is ahead of this sheet. Mend it, or undo, then try again.'
      const { text } = good.brief
      if (!isLength(touched.size)) {
        if (touched.size.rate) {
          if (!/^\s*(?:\d+|\d*\.\d+):(?:\d+|\d*\.\d+)\s*$/.test(typed))
            return 'A taper or slope is written as a rate, such as 1:10.'
        } else if (!/^\s*\d+(?:\.\d+)?\s*°?\s*$/.test(typed))
          return 'An angle is written in degrees, such as 45 or 82.5.'
        replaceAll(view, replaceSpan(text, touched.size.span, typed.replace('°', '').trim()))
        return undefined
      }
      const change = changeSizes(text, [touched.size, ...touched.alike], typed)
      const [refused] = change.marks
      if (refused) return `${capital(refused.text)}. Expected: ${refused.expected ?? 'a size'}.`
      replaceAll(view, change.text)
      return undefined
    },
    /** True where the mend was made. */
    onMend: (offered: Mend): boolean => {
      const view = slip.current
      // Who reads faster than the sheet follows mends the text as it is.
      const mend = view && drawn && carriedMend(offered, drawn.brief.text, view.state.doc.toString())
      if (!view || !mend) return false
      if (view.state.sliceDoc(mend.span.from, mend.span.to) !== mend.text) replace(view, mend.span, mend.text)
      // A statement that is only begun waits for the rest.
      if (/\s$/.test(mend.text)) {
        view.dispatch({
          selection: { anchor: mend.span.from + mend.text.replace(/\n$/, '').length },
          scrollIntoView: true,
        })
        view.focus()
      }
      return true
    },
    /** Writes into the brief that the mark stands as it is, and why. True where it was written. */
    onAccept: (mark: PageMark, reason: string): boolean => {
      const view = editorOf(drawn)
      if (!view || !drawn || !mark.accept) return false
      const [, keyword, words] = /^(\S+\s+)(.*)$/s.exec(mark.accept.replace(REASON, () => reason.trim()))!
      replaceAll(view, withStatement(drawn.brief.text, keyword! + asText(words!)))
      tell('Accepted. The brief now says so, with the reason.')
      return true
    },
    /** Writes the checker's name and date into the brief. */
    onSign: (name: string, date: string): void => {
      const view = slip.current
      if (view) replaceAll(view, withChecker(view.state.doc.toString(), name, date))
    },
    onDrag: (drag: Drag) => {
      const view = editorOf(good)
      if (!view || !good) return tell('The brief is ahead of this sheet. Mend it first.')
      const placing = placingOf(good, drag)
      if (!placing) return tell(STAYS[drag.what])
      const said = `Written into the brief: ${placing.statement.replace(/\s+/g, ' ')}`
      if (good.sheet) placed(said, good.sheet)
      replaceAll(view, withPlacing(good.brief.text, placing))
      return tell(said)
    },
  }
}

/** Why a thing stays where it is. */
const STAYS: Readonly<Record<Drag['what'], string>> = {
  size: 'This size cannot be put elsewhere.',
  view: 'This view cannot be put elsewhere.',
  row: 'This size has no row on that side of its view.',
  'next view': 'No other view shows this size true.',
}

function placingOf(drawn: Drawn, drag: Drag): Placing | undefined {
  switch (drag.what) {
    case 'size':
      return sizePlacing(drawn, drag.dimension, drag.to)
    case 'view':
      return viewPlacing(drawn, drag.view, drag.by)
    case 'row':
      return rowStep(drawn, drag.dimension, drag.way)
    case 'next view':
      return viewStep(drawn, drag.dimension)
  }
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

export type Edits = ReturnType<typeof editsOf>
