import type { EditorState } from '@codemirror/state'
import type { EditorView } from '@codemirror/view'
import type { ReactNode, RefObject } from 'react'
import type { EngineState } from '../engine/engine.ts'
import { Margin } from '../margin/margin.tsx'
import { type SheetHandle, SheetView } from '../sheet/sheet-view.tsx'
import type { Kept } from '../shelf/shelf.ts'
import { Slip } from '../slip/slip.tsx'
import { PictorialInHand } from '../solid/pictorial-in-hand.tsx'
import { BlankPaper } from './blank-paper.tsx'
import { NO_MARKS } from './by-weight.ts'
import type { Edits } from './edits.ts'
import type { Room } from './room.ts'
import { RoutingSlip } from './routing-slip.tsx'
import { saysNoStock } from './standing.ts'
import type { Drawing } from './use-drawing.ts'
import type { useIssue } from './use-issue.ts'
import type { Lifting } from './use-lifted.ts'
import type { Lights } from './use-lights.ts'
import type { Printed } from './use-printed.ts'
import { showsOnPictorial, WhyNote } from './why-note.tsx'

interface BriefDeskProps {
  readonly active: Kept
  readonly drawing: Drawing
  readonly engineState: EngineState
  readonly lights: Lights
  readonly edits: Edits
  readonly lifting: Pick<Lifting, 'lifted' | 'putBack' | 'drop'>
  readonly issue: ReturnType<typeof useIssue>
  /** The check print in the place of the sheet. */
  readonly printed: Printed | undefined
  readonly checkPrint: boolean
  readonly slip: EditorState | undefined
  readonly view: RefObject<EditorView | undefined>
  readonly sheet: RefObject<SheetHandle | null>
  readonly room: Room
  readonly pixelsPerMm: number
  readonly openMark: number | undefined
  readonly folded: boolean
  /** A second sheet beside the one that is worked on. */
  readonly beside: ReactNode
  readonly children?: ReactNode
  readonly onOpenMark: (mark: number | undefined) => void
  readonly onFold: () => void
  readonly onLaid: (view: EditorView) => void
  readonly onTakenOff: (state: EditorState) => void
  readonly onLift: () => void
  readonly onShelf: () => void
  readonly newButton: RefObject<HTMLButtonElement | null>
  readonly onNew: () => void
  readonly onSave: () => void
  readonly onSign: () => void
  readonly onMarks: () => void
  readonly onCheckPrint: () => void
}

const OLDER = 'The check print is of the brief before. The new one is on its way.'

/** One brief at work: its sheet, its slip, the marks, and the routing slip below. */
export function BriefDesk(props: BriefDeskProps) {
  const { active, drawing, lights, edits, lifting, printed, room, openMark, onOpenMark, onLift, onNew } = props
  const { mine, good, ties, marks, stale, standing } = drawing
  const { why } = lights
  const hasNoStock = mine !== undefined && saysNoStock(mine.drawn)
  const says = (rule: string) => marks.some((m) => m.rule === rule)
  return (
    <>
      <main
        aria-label="Sheet"
        aria-busy={mine?.drawn.brief.text !== active.text}
        style={props.beside && room.upright ? { bottom: room.covered.bottom - 20 } : {}}
      >
        {good && ties ? (
          <SheetView
            key={active.id}
            drawn={printed?.drawn ?? good}
            ties={printed?.ties ?? ties}
            marks={stale || printed ? NO_MARKS : marks}
            stale={stale || printed?.older === true}
            light={lights.light}
            covered={
              props.beside ? { ...room.covered, right: 20, ...(room.upright ? { bottom: 20 } : {}) } : room.covered
            }
            pixelsPerMm={props.pixelsPerMm}
            openMark={openMark}
            handle={props.sheet}
            onLight={lights.pointAtSheet}
            onChoose={lights.choose}
            onSize={printed?.older ? () => OLDER : edits.onSize}
            onDrag={printed?.older ? () => {} : edits.onDrag}
            onMark={onOpenMark}
            onLift={onLift}
          />
        ) : (
          <BlankPaper
            covered={room.covered}
            words={mine ? (standing ?? '') : 'Drawing the sheet'}
            onStart={hasNoStock ? onNew : undefined}
          />
        )}
        {props.beside}
      </main>
      {props.slip ? (
        <Slip
          place={room.slip}
          title={drawing.brief?.header.part?.text ?? 'Untitled'}
          folded={props.folded}
          onFold={props.onFold}
          onView={props.onLaid}
          onTakenOff={props.onTakenOff}
          state={props.slip}
          marks={marks}
          marksOf={mine?.drawn.brief.text ?? active.text}
          lit={lights.litWords}
          chosen={lights.chosenWords}
        >
          <button type="button" onClick={props.onShelf}>
            Shelf
          </button>
          <button ref={props.newButton} type="button" onClick={onNew}>
            New
          </button>
        </Slip>
      ) : null}
      <Margin
        marks={props.beside || printed ? NO_MARKS : marks}
        open={openMark}
        place={room.margin}
        standing={good ? standing : undefined}
        onStart={hasNoStock ? onNew : undefined}
        onOpen={onOpenMark}
        onMend={(mend) => edits.onMend(mend) && onOpenMark(undefined)}
        onAccept={(mark, reason) => edits.onAccept(mark, reason) && onOpenMark(undefined)}
        onShow={(mark) => {
          const view = props.view.current
          if (!mark.span || !view) return
          const at = Math.min(mark.span.from, view.state.doc.length)
          view.dispatch({ selection: { anchor: at }, scrollIntoView: true })
        }}
      />
      {lifting.lifted && good && ties ? (
        <PictorialInHand
          lifted={lifting.lifted}
          lifting={lifting}
          drawn={good}
          ties={ties}
          light={lights.light}
          words={lights.whyHere}
          onPick={lights.pick}
        />
      ) : null}
      {why && !lifting.lifted ? (
        <WhyNote
          words={why}
          room={room}
          marks={marks.length}
          shows={good !== undefined && showsOnPictorial(good, lights.chosenLight)}
          onLift={onLift}
          onClose={lights.letGo}
        />
      ) : null}
      {props.children}
      <RoutingSlip
        drawn={mine?.drawn}
        marks={marks}
        state={props.engineState}
        saved={active.saved === active.text}
        busy={props.issue.busy}
        onIssue={(kind) => void props.issue.onIssue(kind)}
        onPrint={() => print()}
        onSave={props.onSave}
        onCheck={props.onMarks}
        settled={drawing.check.settled}
        checkPrint={props.checkPrint}
        onCheckPrint={props.onCheckPrint}
        onSign={props.onSign}
        lapsed={says('signature-lapsed')}
      />
    </>
  )
}
