import { undo } from '@codemirror/commands'
import { useEffect, useRef, useState } from 'react'
import { readBrief } from '../../../brief/read.ts'
import { ModelDesk } from '../model/model-desk.tsx'
import { useKeptModels } from '../model/use-kept-models.ts'
import type { SheetHandle } from '../sheet/sheet-view.tsx'
import { takeDrawing } from '../shelf/shelf.ts'
import { ShelfPanel } from '../shelf/shelf-panel.tsx'
import { Starter } from '../starter/starter.tsx'
import { AskingSlip, useAsk } from './asking-slip.tsx'
import { BesideSheet } from './beside-sheet.tsx'
import { BriefDesk } from './brief-desk.tsx'
import { editsOf } from './edits.ts'
import { Papers } from './papers.tsx'
import { RealSize, screenPixelsPerMm } from './real-size.tsx'
import { ScaleRule } from './scale-rule.tsx'
import { signAsChecker } from './sign.ts'
import { useBriefs } from './use-briefs.ts'
import { useDrawing } from './use-drawing.ts'
import { useEngine } from './use-engine.ts'
import { useIssue } from './use-issue.ts'
import { useKeptDrawing } from './use-kept-drawing.ts'
import { useKeys } from './use-keys.ts'
import { useLifted } from './use-lifted.ts'
import { useLights } from './use-lights.ts'
import { useNotice } from './use-notice.ts'
import { useOpenMark } from './use-open-mark.ts'
import { usePrint } from './use-print.ts'
import { usePrinted } from './use-printed.ts'
import { useRelaid } from './use-relaid.ts'
import { useReturn } from './use-return.ts'
import { beginsFolded, useRoom } from './use-room.ts'
import { useSaving } from './use-saving.ts'
import { useSlip } from './use-slip.ts'
import { writtenWords } from './written-words.ts'

/** Paper before there is a sheet: as wide to its height as the smaller formats, mm. */
const BLANK = { width: 297, height: 210 }

/** The whole page: a sheet on a bench, the brief's slip over its edge, marks beside it, the routing slip below. */
export function Bench() {
  const { notice, tell, putAway } = useNotice()
  const briefs = useBriefs(tell)
  const { active } = briefs
  const [checkPrint, setCheckPrint] = useState(false)
  const sheetHandle = useRef<SheetHandle>(null)
  const engines = useEngine(
    // The check print lies in the place of the sheet that comes.
    (part, drawn) => part === active?.id && !checkPrint && sheetHandle.current?.paintAhead(drawn) === true,
  )
  const { shown, draw, lay, engine } = engines
  const { ask, asked } = useAsk()
  const { lifted, lift, putBack, drop } = useLifted(engine)
  const onLift = () => active && lift(active.text)
  const models = useKeptModels(tell, briefs.ready, Boolean(briefs.desk?.open))
  const { model } = models
  const { save, openFile } = useSaving(briefs, tell, ask, models.open)
  const [folded, setFolded] = useState(beginsFolded)
  const [shelfOpen, setShelfOpen] = useState(false)
  const [starting, setStarting] = useState(false)
  const [measuring, setMeasuring] = useState(false)
  const [pixelsPerMm, setPixelsPerMm] = useState(screenPixelsPerMm)
  const [besideId, setBesideId] = useState<string>()

  const drawing = useDrawing(engines, active, checkPrint)
  const { mine, good, marks, stale } = drawing
  // Before the solid below: what is lit on it is of the drawing that is there.
  const lights = useLights(drawing)
  const [openMark, setOpenMark] = useOpenMark(marks)
  const current = useRef({ drawing, lights })
  current.current = { drawing, lights }
  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn once when a brief comes to the bench, then at each change
  useEffect(() => {
    if (active) {
      const { id, text } = active
      draw(id, text)
      if (!shown.has(id)) void takeDrawing(id, text).then((drawn) => drawn && lay(id, drawn))
    }
    lights.clear()
    setOpenMark(undefined)
    drop()
    setCheckPrint(false)
  }, [active?.id])
  useKeptDrawing(active?.id, stale ? undefined : good)

  const { slip, view, leaveSlip, writeOn, followed, laid, takenOff } = useSlip(active, (id) => ({
    changed: (next, undone) => {
      draw(id, next)
      briefs.write(id, next, undone)
    },
    at: (span) => {
      const now = current.current
      now.lights.pointAtWords(span, now.drawing.stale ? undefined : now.drawing.ties)
    },
    brief: () => current.current.drawing.mine?.drawn.brief,
    marks: () => current.current.drawing.marks,
    draw: (text) => engine.draw('an explanation', text),
  }))
  briefs.onFollow.current = followed
  const take = (id: string) => {
    leaveSlip()
    briefs.take(id)
    if (id === besideId) setBesideId(active?.id)
  }

  const placed = useRelaid(stale ? undefined : good, tell)
  const edits = editsOf({ slip: view, good, drawn: mine?.drawn, tell, placed })
  const written = (name: string) => writtenWords(name, marks, mine?.drawn)
  const issue = useIssue(engine, active?.text, good?.sheet, written, tell)
  const printed = usePrinted(active?.id, good, stale ? undefined : drawing.check.print, checkPrint)
  usePrint(sheetHandle, (printed?.drawn ?? good)?.sheet)
  // The solid in the hand follows the brief.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again for each new drawing
  useEffect(() => {
    if (lifted?.solid && good && !stale) onLift()
  }, [good])

  const onMarks = () => {
    setCheckPrint(false)
    setOpenMark(0)
  }
  const onSave = () => active && void save(active)
  useKeys({
    save: onSave,
    shelf: () => setShelfOpen((now) => !now),
    print: () => print(),
    fold: () => setFolded((now) => !now),
    undo: () => view.current && undo(view.current),
    whole: () => sheetHandle.current?.showWhole(),
    realSize: () => sheetHandle.current?.realSize(),
    pan: (dx, dy) => sheetHandle.current?.pan(dx, dy),
    zoom: (factor) => sheetHandle.current?.zoom(factor),
    marks: () => {
      const first = document.querySelector<HTMLElement>('.margin .mark')
      if (first) first.focus()
      else onMarks()
    },
    escape: () => {
      putAway()
      putBack()
      lights.letGo()
      setOpenMark(undefined)
    },
  })
  const newButton = useRef<HTMLButtonElement>(null)
  useReturn(starting || model !== undefined, newButton)
  const beside = besideId && besideId !== active?.id ? shown.get(besideId)?.good : undefined
  const room = useRoom({
    folded,
    paper: (printed?.drawn ?? good)?.sheet ?? BLANK,
    // The check print tells them itself.
    withoutMargin: beside !== undefined || checkPrint,
  })
  const others = briefs.all.filter((k) => k.open && k.id !== active?.id)

  if (!briefs.ready && !active) return <p className="waiting">Laying out the bench</p>
  const sure = async (title: string) =>
    (await ask({ title: `Throw away ${title}?`, words: 'It cannot be brought back.', yes: 'Throw away' })) !== undefined
  const beginWith = (text: string) => {
    leaveSlip()
    writeOn()
    briefs.begin(text)
    models.putBack()
    setStarting(false)
    setFolded(false)
  }
  return (
    <div
      className={`bench${beside ? ' two' : ''}${room.narrow ? ' narrow' : ''}${room.slim ? ' slim' : ''}${room.low ? ' low' : ''}${room.upright ? ' upright' : ''}`}
    >
      {model ? (
        <ModelDesk
          engine={engine}
          model={model}
          pixelsPerMm={pixelsPerMm}
          sheet={sheetHandle}
          tell={tell}
          onBrief={beginWith}
          onPutBack={models.putBack}
        >
          <ScaleRule sheet={sheetHandle} onMeasure={() => setMeasuring(true)} />
        </ModelDesk>
      ) : starting || !active ? (
        <Starter
          onModel={() => void openFile(true)}
          onBegin={beginWith}
          onLeave={active ? () => setStarting(false) : undefined}
        />
      ) : (
        <BriefDesk
          active={active}
          drawing={drawing}
          engineState={engines.state}
          lights={lights}
          edits={edits}
          lifting={{ lifted, putBack, drop }}
          issue={issue}
          printed={printed}
          checkPrint={checkPrint}
          slip={slip}
          view={view}
          sheet={sheetHandle}
          room={room}
          pixelsPerMm={pixelsPerMm}
          openMark={openMark}
          folded={folded}
          onOpenMark={setOpenMark}
          onFold={() => setFolded(!folded)}
          onLaid={laid}
          onTakenOff={takenOff}
          onLift={onLift}
          onShelf={() => setShelfOpen(true)}
          newButton={newButton}
          onNew={() => setStarting(true)}
          onSave={onSave}
          onSign={() => void signAsChecker(ask, { marks, ...edits })}
          onMarks={onMarks}
          onCheckPrint={() => setCheckPrint((now) => !now)}
          beside={
            beside && besideId ? (
              <BesideSheet
                key={besideId}
                drawn={beside}
                covered={{ ...room.covered, left: 20, ...(room.upright ? { top: 44, bottom: 20 } : {}) }}
                pixelsPerMm={pixelsPerMm}
                onTake={() => take(besideId)}
                onPutAway={() => {
                  setBesideId(undefined)
                  setFolded(false)
                }}
              />
            ) : null
          }
        >
          <ScaleRule sheet={sheetHandle} onMeasure={() => setMeasuring(true)} />
          <Papers
            papers={others.map((k) => {
              const { part, number } = (shown.get(k.id)?.drawn.brief ?? readBrief(k.text)).header
              return { id: k.id, name: part?.text ?? 'Untitled', number: number?.text }
            })}
            onTake={take}
            onPutBack={briefs.close}
          />
        </BriefDesk>
      )}
      <div className="notice" role="status">
        {notice ? (
          <>
            <p>{notice}</p>
            <button type="button" aria-label="Put the notice away" onClick={putAway}>
              ×
            </button>
          </>
        ) : null}
      </div>
      <ShelfPanel
        open={shelfOpen}
        kept={briefs.all}
        desk={briefs.desk}
        active={active?.id}
        onClose={() => setShelfOpen(false)}
        models={models.models}
        onModel={(id) => {
          leaveSlip()
          void models.take(id)
          setShelfOpen(false)
        }}
        onThrowModel={async (id, name) => {
          if (await sure(name)) models.throwAway(id)
        }}
        onTake={(id) => {
          take(id)
          models.putBack()
          setShelfOpen(false)
          setStarting(false)
        }}
        onBeside={(id) => {
          const other = briefs.all.find((k) => k.id === id)
          if (other) draw(other.id, other.text)
          setBesideId(id)
          setFolded(true)
          setShelfOpen(false)
        }}
        onLetGo={async (id, title) => {
          if (await sure(title)) briefs.throwAway(id)
        }}
        onDesk={(from, name) => {
          leaveSlip()
          void briefs.openFrom(from, name)
          setShelfOpen(false)
          setStarting(false)
        }}
        onFile={() => {
          leaveSlip()
          void openFile()
          setShelfOpen(false)
        }}
        onNew={() => {
          setStarting(true)
          setShelfOpen(false)
        }}
      />
      <RealSize
        open={measuring}
        pixelsPerMm={pixelsPerMm}
        onMeasure={(value) => {
          setPixelsPerMm(value)
          setMeasuring(false)
        }}
        onClose={() => setMeasuring(false)}
      />
      <AskingSlip asked={asked} />
    </div>
  )
}
