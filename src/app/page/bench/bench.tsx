import { undo } from '@codemirror/commands'
import { useEffect, useMemo, useRef, useState } from 'react'
import { readBrief } from '../../../brief/read.ts'
import { Margin } from '../margin/margin.tsx'
import { ModelDesk } from '../model/model-desk.tsx'
import { type Light, lightOfFeatures, lightOfWords, tiesOf } from '../sheet/light.ts'
import { type SheetHandle, SheetView } from '../sheet/sheet-view.tsx'
import { whyIsIt } from '../sheet/why.ts'
import { takeDrawing } from '../shelf/shelf.ts'
import { ShelfPanel } from '../shelf/shelf-panel.tsx'
import { Slip } from '../slip/slip.tsx'
import { Lifted } from '../solid/lifted.tsx'
import { Starter } from '../starter/starter.tsx'
import { AskingSlip, useAsk } from './asking-slip.tsx'
import { BesideSheet } from './beside-sheet.tsx'
import { BlankPaper } from './blank-paper.tsx'
import { byWeight, NO_MARKS } from './by-weight.ts'
import { editsOf } from './edits.ts'
import { Papers } from './papers.tsx'
import { RealSize, screenPixelsPerMm } from './real-size.tsx'
import { RoutingSlip } from './routing-slip.tsx'
import { ScaleRule } from './scale-rule.tsx'
import { signWords, standingOf } from './standing.ts'
import { useBriefs } from './use-briefs.ts'
import { useCheck } from './use-check.ts'
import { useCovered } from './use-covered.ts'
import { useEngine } from './use-engine.ts'
import { useIssue } from './use-issue.ts'
import { useKeptDrawing } from './use-kept-drawing.ts'
import { useKeys } from './use-keys.ts'
import { useLifted } from './use-lifted.ts'
import { useMarginRoom } from './use-margin-room.ts'
import { useNotice } from './use-notice.ts'
import { useOpenMark } from './use-open-mark.ts'
import { usePrint } from './use-print.ts'
import { usePrinted } from './use-printed.ts'
import { useSaving } from './use-saving.ts'
import { useSlip } from './use-slip.ts'
import { WhyNote } from './why-note.tsx'
import { writtenWords } from './written-words.ts'

/** The whole page: a sheet on a bench, the brief's slip over its edge, marks beside it, the routing slip below. */
export function Bench() {
  const { notice, tell } = useNotice()
  const briefs = useBriefs(tell)
  const { active } = briefs
  const [checkPrint, setCheckPrint] = useState(false)
  const sheetHandle = useRef<SheetHandle>(null)
  const engines = useEngine(
    // The check print lies in the place of the sheet that comes.
    (part, drawn) => part === active?.id && !checkPrint && sheetHandle.current?.paintAhead(drawn) === true,
  )
  const { state: engineState, shown, faults, draw, lay, engine } = engines
  const { ask, asked } = useAsk()
  const { lifted, lift, putBack } = useLifted(engine)
  const onLift = () => active && lift(active.text)
  const { save, openFile, model, setModel } = useSaving(briefs, tell, ask)
  const [folded, setFolded] = useState(false)
  const [shelfOpen, setShelfOpen] = useState(false)
  const [starting, setStarting] = useState(false)
  const [measuring, setMeasuring] = useState(false)
  const [pixelsPerMm, setPixelsPerMm] = useState(screenPixelsPerMm)
  const [besideId, setBesideId] = useState<string>()
  const [hover, setHover] = useState<{ light: Light | undefined; from: 'sheet' | 'brief' }>()
  const [chosen, setChosen] = useState<{ item: number | undefined; light: Light | undefined }>()

  const mine = active && shown.get(active.id)
  const good = mine?.good
  const ties = useMemo(() => good && tiesOf(good), [good])
  const read = useMemo(() => (active && !mine ? readBrief(active.text) : undefined), [mine, active])
  const check = useCheck(
    engines,
    { part: active?.id, text: active?.text, drawn: mine?.drawn, signed: active?.signed },
    checkPrint,
  )
  const early = useMemo(() => byWeight(read?.marks ?? NO_MARKS), [read])
  const marks = mine ? check.marks : early
  const [openMark, setOpenMark] = useOpenMark(marks)
  const stale = mine !== undefined && good !== undefined && good !== mine.drawn
  const current = useRef({ ties, stale, mine, active, marks })
  current.current = { ties, stale, mine, active, marks }
  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn once when a brief comes to the bench, then at each change
  useEffect(() => {
    if (active) {
      const { id, text } = active
      draw(id, text)
      if (!shown.has(id)) void takeDrawing(id, text).then((drawn) => drawn && lay(id, drawn))
    }
    setChosen(undefined)
    setHover(undefined)
    setOpenMark(undefined)
    putBack()
    setCheckPrint(false)
  }, [active?.id])

  useKeptDrawing(active?.id, stale ? undefined : good)

  const { slip, view, leaveSlip, writeOn, followed, laid } = useSlip(active, (id) => ({
    changed: (next) => {
      draw(id, next)
      briefs.write(id, next)
    },
    at: (span) => {
      const { ties: now, stale: old } = current.current
      const light = span && now && !old ? lightOfWords(now, span) : undefined
      setHover(light ? { light, from: 'brief' } : undefined)
    },
    brief: () => current.current.mine?.drawn.brief,
    marks: () => current.current.marks,
    draw: (text) => engine.draw('an explanation', text),
  }))
  briefs.onFollow.current = followed
  const take = (id: string) => {
    leaveSlip()
    briefs.take(id)
    if (id === besideId) setBesideId(active?.id)
  }

  const { onSize, onMend, onAccept, onSign, onDrag } = editsOf({ slip: view, good, drawn: mine?.drawn, tell })
  const written = (name: string) => writtenWords(name, marks, mine?.drawn)
  const { busy, onIssue } = useIssue(engine, active?.text, good?.sheet, written, tell)
  const onPrint = () => print()
  const printed = usePrinted(good, stale ? undefined : check.print)
  usePrint(sheetHandle, (printed?.drawn ?? good)?.sheet)
  const sign = async () => {
    const said = await ask({
      title: 'Sign as its checker',
      words: signWords(marks),
      line: { name: 'Name', text: '' },
      below: { name: 'Date', text: new Date().toLocaleDateString('sv') },
      yes: 'Sign',
    })
    const [name, date] = said?.split('\n') ?? []
    const lapsed = marks.find((m) => m.rule === 'signature-lapsed')?.mends?.[0]
    if (name && date && (!lapsed || onMend(lapsed))) onSign(name, date)
  }
  // The solid in the hand follows the brief.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again for each new drawing
  useEffect(() => {
    if (lifted?.solid && good && !stale) onLift()
    // Items of the old sheet are not those of the new one.
    setChosen(undefined)
    setHover((now) => (now?.from === 'sheet' ? undefined : now))
  }, [good])

  useKeys({
    save: () => active && void save(active),
    shelf: () => setShelfOpen((now) => !now),
    print: onPrint,
    fold: () => setFolded((now) => !now),
    undo: () => view.current && undo(view.current),
    whole: () => sheetHandle.current?.showWhole(),
    realSize: () => sheetHandle.current?.realSize(),
    pan: (dx, dy) => sheetHandle.current?.pan(dx, dy),
    zoom: (factor) => sheetHandle.current?.zoom(factor),
    marks: () => document.querySelector<HTMLElement>('.margin .mark')?.focus(),
    escape: () => {
      putBack()
      setChosen(undefined)
      setOpenMark(undefined)
    },
  })
  const room = useMarginRoom(active?.id, marks.length > 0 || stale)

  const beside = besideId && besideId !== active?.id ? shown.get(besideId)?.good : undefined
  const covered = useCovered(folded, room && !beside)
  const light = hover?.light ?? chosen?.light
  const litWords = useMemo(
    () =>
      hover?.from === 'brief' || stale || !light
        ? undefined
        : { words: light.words, ...(light.statement ? { statement: light.statement } : {}) },
    [hover, light, stale],
  )
  const whyOf = (item: number | undefined) => (good && item !== undefined ? whyIsIt(good, item) : undefined)
  const why = whyOf(chosen?.item)
  const fault = active && faults.get(active.id)
  const standing = standingOf(mine, fault)
  const others = briefs.all.filter((k) => k.open && k.id !== active?.id)
  const title = (mine?.drawn.brief ?? read)?.header.part?.text ?? 'Untitled'

  if (!briefs.ready && !active) return <p className="waiting">Laying out the bench</p>
  const beginWith = (text: string) => {
    leaveSlip()
    writeOn()
    briefs.begin(text)
    setModel(undefined)
    setStarting(false)
    setFolded(false)
  }
  return (
    <div className={`bench${beside ? ' two' : ''}`}>
      {model ? (
        <ModelDesk
          engine={engine}
          model={model}
          pixelsPerMm={pixelsPerMm}
          tell={tell}
          onBrief={beginWith}
          onPutAway={() => setModel(undefined)}
        />
      ) : starting || !active ? (
        <Starter
          onModel={() => void openFile(true)}
          onBegin={beginWith}
          onLeave={active ? () => setStarting(false) : undefined}
        />
      ) : (
        <>
          <main aria-label="Sheet" aria-busy={mine?.drawn.brief.text !== active.text}>
            {good && ties ? (
              <SheetView
                key={active.id}
                drawn={printed?.drawn ?? good}
                ties={printed?.ties ?? ties}
                marks={stale || printed ? NO_MARKS : marks}
                stale={stale}
                light={light}
                covered={beside ? { ...covered, right: 20 } : covered}
                pixelsPerMm={pixelsPerMm}
                openMark={openMark}
                handle={sheetHandle}
                onLight={(l) => setHover(l ? { light: l, from: 'sheet' } : undefined)}
                onChoose={(item, l) => setChosen({ item, light: l })}
                onSize={onSize}
                onDrag={onDrag}
                onMark={setOpenMark}
                onLift={onLift}
              />
            ) : (
              <BlankPaper
                covered={covered}
                words={mine ? (standing ?? '') : 'Drawing the sheet'}
                onStart={mine && !mine.drawn.brief.stock ? () => setStarting(true) : undefined}
              />
            )}
            {beside && besideId ? (
              <BesideSheet
                key={besideId}
                drawn={beside}
                covered={{ left: 20, right: covered.right, top: covered.top, bottom: covered.bottom }}
                pixelsPerMm={pixelsPerMm}
                onTake={() => take(besideId)}
                onPutAway={() => {
                  setBesideId(undefined)
                  setFolded(false)
                }}
              />
            ) : null}
          </main>
          {slip ? (
            <Slip
              title={title}
              folded={folded}
              onFold={() => setFolded(!folded)}
              onView={laid}
              state={slip}
              marks={marks}
              marksOf={mine?.drawn.brief.text ?? active.text}
              lit={litWords}
              chosen={stale ? undefined : (chosen?.light?.words[0] ?? chosen?.light?.statement)}
            >
              <button type="button" onClick={() => setShelfOpen(true)}>
                Shelf
              </button>
              <button type="button" onClick={() => setStarting(true)}>
                New
              </button>
            </Slip>
          ) : null}
          <Margin
            marks={beside ? [] : marks}
            open={openMark}
            standing={good ? standing : undefined}
            onStart={mine?.drawn.brief.stock ? undefined : () => setStarting(true)}
            onOpen={setOpenMark}
            onMend={(mend) => onMend(mend) && setOpenMark(undefined)}
            onAccept={(mark, reason) => onAccept(mark, reason) && setOpenMark(undefined)}
            onShow={(mark) => {
              if (mark.span && view.current) {
                const end = view.current.state.doc.length
                view.current.dispatch({
                  selection: { anchor: Math.min(mark.span.from, end) },
                  scrollIntoView: true,
                })
              }
            }}
          />
          {lifted ? (
            <Lifted
              solid={lifted.solid}
              fault={lifted.fault}
              light={light}
              words={hover?.light ? whyOf(hover.light.item) : why}
              onFace={(face) => {
                if (!ties || !good) return
                const owner = good.features.find(
                  (f) => face !== undefined && f.faces.includes(face) && f.id !== 'stock',
                )
                const found = owner ? lightOfFeatures(ties, [owner.id]) : undefined
                const faces = new Set(face === undefined ? [] : [face])
                setChosen({
                  item: undefined,
                  light: found ?? { items: new Set(), beside: new Set(), words: [], faces, edges: new Set() },
                })
              }}
              onPutBack={putBack}
            />
          ) : null}
          {why && !lifted ? (
            <WhyNote words={why} light={chosen?.light} onLift={onLift} onClose={() => setChosen(undefined)} />
          ) : null}
          <ScaleRule sheet={sheetHandle} onMeasure={() => setMeasuring(true)} />
          <Papers
            papers={others.map((k) => ({
              id: k.id,
              name: (shown.get(k.id)?.drawn.brief ?? readBrief(k.text)).header.part?.text ?? 'Untitled',
            }))}
            onTake={take}
            onPutBack={briefs.close}
          />
          <RoutingSlip
            drawn={mine?.drawn}
            marks={marks}
            state={engineState}
            saved={active.saved === active.text}
            busy={busy}
            onIssue={(kind) => void onIssue(kind)}
            onPrint={onPrint}
            onSave={() => void save(active)}
            onCheck={() => setOpenMark(0)}
            settled={check.settled}
            checkPrint={checkPrint}
            onCheckPrint={() => setCheckPrint((now) => !now)}
            onSign={() => void sign()}
            lapsed={marks.some((m) => m.rule === 'signature-lapsed')}
          />
        </>
      )}
      {notice ? (
        <p className="notice" role="status">
          {notice}
        </p>
      ) : null}
      <ShelfPanel
        open={shelfOpen}
        kept={briefs.all}
        desk={briefs.desk}
        active={active?.id}
        onClose={() => setShelfOpen(false)}
        onTake={(id) => {
          take(id)
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
          const sure = await ask({
            title: `Throw away ${title}?`,
            words: 'It cannot be brought back.',
            yes: 'Throw away',
          })
          if (sure !== undefined) briefs.throwAway(id)
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
