import { type ReactNode, type RefObject, useEffect, useMemo, useState } from 'react'
import { fileNameOf } from '../../file-name.ts'
import { byWeight, NO_MARKS } from '../bench/by-weight.ts'
import { slipStyle } from '../bench/room.ts'
import { download } from '../bench/save-file.ts'
import { useLifted } from '../bench/use-lifted.ts'
import { useLights } from '../bench/use-lights.ts'
import { useRoom } from '../bench/use-room.ts'
import { showsOnPictorial, WhyNote } from '../bench/why-note.tsx'
import type { Engine } from '../engine/engine.ts'
import { Margin } from '../margin/margin.tsx'
import { tiesOf } from '../sheet/light.ts'
import { type SheetHandle, SheetView } from '../sheet/sheet-view.tsx'
import { PictorialInHand } from '../solid/pictorial-in-hand.tsx'
import { type OpenedModel, useModel } from './use-model.ts'

interface ModelDeskProps {
  readonly engine: Engine
  readonly model: OpenedModel
  readonly pixelsPerMm: number
  readonly sheet: RefObject<SheetHandle | null>
  readonly tell: (text: string) => void
  /** A brief begun from the part that is drawn. */
  readonly onBrief: (text: string) => void
  readonly onPutBack: () => void
  readonly children?: ReactNode
}

const nothing = () => {}
/** Paper before there is a sheet, mm. */
const BLANK = { width: 420, height: 297 }
const WRITTEN = [
  ['pdf', 'application/pdf'],
  ['svg', 'image/svg+xml'],
] as const

/** The sheet of a solid model: measured, stamped preliminary, to look at and to write; a brief may be begun from it. */
export function ModelDesk(props: ModelDeskProps) {
  const { engine, model, pixelsPerMm, tell, onBrief, onPutBack } = props
  const use = useModel(engine, model)
  const { drawn, items, words, fault, stopped, solid } = use
  const sheet = drawn?.sheet
  // what an assembly holds is in the list
  const marks = useMemo(() => byWeight((drawn?.marks ?? NO_MARKS).filter((m) => m.rule !== 'assembly')), [drawn])
  const ties = useMemo(() => drawn && tiesOf(drawn), [drawn])
  const [openMark, setOpenMark] = useState<number>()
  const [busy, setBusy] = useState(false)
  const room = useRoom({ folded: false, paper: sheet ?? BLANK, withoutMargin: false, withoutDesks: true })
  const asked = useMemo(() => (solid === undefined ? {} : { solid }), [solid])
  const lights = useLights({ good: drawn, stale: words !== undefined })
  const { lifted, lift, putBack, drop } = useLifted(engine)
  // Another part of the model: the one in the hand is not on the sheet any more.
  // biome-ignore lint/correctness/useExhaustiveDependencies: for each new drawing
  useEffect(drop, [model, solid, drop])
  const work = async (doing: () => Promise<void>, failed: string) => {
    setBusy(true)
    try {
      await doing()
    } catch (why) {
      tell(`${failed}: ${why instanceof Error ? why.message : String(why)}.`)
    }
    setBusy(false)
  }
  const write = (kind: 'pdf' | 'svg', type: string) =>
    work(async () => {
      const stem = model.name.replace(/\.[^.]*$/, '') + (solid === undefined ? '' : `-${solid}`)
      const name = `${fileNameOf(stem)}.${kind}`
      download(name, await engine.write(model.text, kind, asked), type)
      tell(`${name} written, preliminary: sizes as measured, no tolerances.`)
    }, 'Nothing was written')
  const begin = () =>
    work(async () => {
      const begun = await engine.begin(model.text, model.name, asked)
      if (begun.text === undefined) return tell(begun.sentence)
      onBrief(begun.text)
      tell(begun.sentence)
    }, 'No brief was begun')
  const says = words ?? (stopped ? 'Stopped' : (fault ?? (drawn && !sheet ? 'Nothing could be drawn' : undefined)))
  return (
    <>
      <main className="of-model" aria-label="Sheet" aria-busy={words !== undefined}>
        {drawn && sheet && ties ? (
          <SheetView
            drawn={drawn}
            ties={ties}
            marks={NO_MARKS}
            stale={words !== undefined}
            light={lights.light}
            covered={room.covered}
            pixelsPerMm={pixelsPerMm}
            openMark={undefined}
            handle={props.sheet}
            onLight={lights.pointAtSheet}
            onChoose={lights.choose}
            onSize={() => 'Sizes of a model are measured. Begin a brief from it to say others.'}
            onDrag={nothing}
            onMark={nothing}
            onLift={() => words === undefined && lift(model.text, asked)}
          />
        ) : (
          <div className="sheet-frame">
            <p className="waiting">{says ? capital(says) : ''}</p>
          </div>
        )}
      </main>
      <section className="slip model" aria-label="Model" style={room.slip ? slipStyle(room.slip) : {}}>
        <div className="slip-body">
          <header>
            <h2>{model.name}</h2>
            <button type="button" onClick={onPutBack}>
              Put back
            </button>
          </header>
          <div className="model-says">
            <p role="status">{says ? capital(says) : 'Sizes are measured; tolerances are not stated.'}</p>
            <div className="row">
              {words === undefined ? null : (
                <button type="button" onClick={use.stop}>
                  Stop
                </button>
              )}
              {stopped || fault ? (
                <button type="button" onClick={use.again}>
                  Draw it again
                </button>
              ) : null}
            </div>
            {items.length > 0 ? (
              <fieldset>
                <legend>Draw</legend>
                <label>
                  <input
                    type="radio"
                    name="solid"
                    checked={solid === undefined}
                    onChange={() => use.choose(undefined)}
                  />
                  the whole
                </label>
                {items.map(({ name, quantity }) => (
                  <label key={name}>
                    <input type="radio" name="solid" checked={solid === name} onChange={() => use.choose(name)} />
                    {name}
                    {quantity > 1 ? `, one of ${quantity}` : ''}
                  </label>
                ))}
              </fieldset>
            ) : null}
            <div className="row">
              {WRITTEN.map(([kind, type]) => (
                <button
                  type="button"
                  key={kind}
                  disabled={busy || words !== undefined || !sheet}
                  onClick={() => void write(kind, type)}
                >
                  {kind.toUpperCase()}
                </button>
              ))}
              <button
                type="button"
                disabled={busy || words !== undefined || !sheet || (items.length > 0 && solid === undefined)}
                onClick={() => void begin()}
              >
                Begin a brief from it
              </button>
            </div>
          </div>
        </div>
      </section>
      <Margin
        marks={marks}
        open={openMark}
        place={room.margin}
        standing={undefined}
        onOpen={setOpenMark}
        onMend={nothing}
        onAccept={nothing}
        onShow={nothing}
      />
      {lifted && drawn && ties ? (
        <PictorialInHand
          lifted={lifted}
          lifting={{ putBack, drop }}
          drawn={drawn}
          ties={ties}
          light={lights.light}
          words={lights.whyHere}
          onPick={lights.pick}
        />
      ) : null}
      {lights.why && drawn && !lifted ? (
        <WhyNote
          words={lights.why}
          room={room}
          marks={marks.length}
          shows={showsOnPictorial(drawn, lights.chosenLight)}
          onLift={() => lift(model.text, asked)}
          onClose={lights.letGo}
        />
      ) : null}
      {props.children}
    </>
  )
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
