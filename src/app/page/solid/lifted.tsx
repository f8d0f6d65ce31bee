import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { EM_OVER_CAPITAL } from '../../../sheet/lettering/metrics.ts'
import { practiceFigures } from '../../../standards/practice-figures.ts'
import type { Drawn, Held, Seen, SolidPicture } from '../engine/messages.ts'
import type { CentreOf } from '../sheet/centre-of.ts'
import { cutReach } from './cut-reach.ts'
import { CuttingHandle } from './cutting-handle.tsx'
import { cuttingLine } from './cutting-line.ts'
import { cutBy, laidAnew, type PlaneInHand, planeWords } from './cutting-plane.ts'
import { EdgeStop } from './edge-stop.tsx'
import { innerLines } from './inner-lines.ts'
import { edgeStops, lineAt } from './pick.ts'
import { between, boardOf, firstScale, HOME, isHome, nearer, type Pose, poseWords, turned } from './pose.ts'
import { SeenLines } from './seen-lines.tsx'
import { TornPaper } from './torn-paper.tsx'
import type { TurningLight } from './turning.ts'
import { useArea } from './use-area.ts'
import { useGrip } from './use-grip.ts'
import { useSeen } from './use-seen.ts'
import { FLIGHT, isStill, useSlipPlace } from './use-slip-place.ts'
import { useTurning } from './use-turning.ts'

interface LiftedProps {
  readonly solid: SolidPicture | undefined
  readonly fault: string | undefined
  readonly drawn: Drawn
  readonly light: TurningLight | undefined
  /** What a lit centre line stands for. */
  readonly centre: CentreOf | undefined
  /** Said under the picture: why the lit line is there. */
  readonly words: string | undefined
  /** On its way back to the sheet. */
  readonly going: boolean
  readonly look: (held: Held) => Promise<Seen>
  readonly onPick: (picked: { readonly edge?: number; readonly face?: number }) => void
  readonly onPutBack: () => void
  readonly onGone: () => void
}

const FIRST_PLANE: PlaneInHand = { side: 'front', depth: 0 }
/** Radians for a px of the hand and for an arrow; px that Shift and an arrow carry the slip. */
const BY_HAND = 0.008
const BY_KEY = Math.PI / 36
const STRIDE = 24
const REACH = { mouse: 7, touch: 16 }

const TURNS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** The pictorial lifted off the sheet, on a slip of its paper laid over it. */
export function Lifted(props: LiftedProps) {
  const { solid, fault, drawn, light, going, look, onPick, onPutBack, onGone } = props
  const slip = useRef<HTMLElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const stage = useRef<HTMLDivElement>(null)
  const { place, carry, fly } = useSlipPlace(slip)
  const area = useArea(stage)
  const [pose, setPose] = useState<Pose>(HOME)
  const [plane, setPlane] = useState<PlaneInHand>(FIRST_PLANE)
  const { units, practice } = drawn.brief.header
  const figures = useMemo(() => practiceFigures(practice), [practice])
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  /** Px of a paper mm on the slip. */
  const px = rem / 6
  const pens = useMemo(
    () => ({
      outline: figures.widths.thick * px,
      cut: figures.widths.thick * px * CUT_WIDER,
      thin: figures.widths.thin * px,
    }),
    [figures, px],
  )
  const box = solid?.box
  const board = useMemo(() => (box && area.width > 0 ? boardOf(pose, box, area) : undefined), [pose, box, area])
  const cut = box && cutBy(plane, box)
  const key = `${pose.yaw} ${pose.tilt} ${cut?.side} ${cut?.at}`
  const size = box ? Math.hypot(...box.max.map((c, i) => c - box.min[i]!)) : 1
  const onPaper = firstScale(size, area.width, area.height) / px
  const held = (): Held | undefined => board && { frame: board.frame, scale: onPaper, ...(cut ? { cut } : {}) }
  const { seen, last } = useSeen(solid, area.width > 0 ? key : '', held, look)
  const { turning, ready } = useTurning(canvas, solid)
  const shown = seen ?? (ready ? undefined : last)

  useKeyboard(slip, canvas)
  useEffect(() => {
    if (ready) turning.current?.light(light)
  }, [light, ready, turning])
  const style = last?.hatching
  const drawnFor = light
  // biome-ignore lint/correctness/useExhaustiveDependencies: lit faces are painted anew too
  useLayoutEffect(() => {
    if (!ready || !board) return
    turning.current?.cutAt(
      cut,
      style ?? { angle: figures.hatching.angle, spacing: figures.hatching.spacing[1] / onPaper },
    )
    turning.current?.draw(board, area.width, area.height, pens, seen === undefined)
  }, [board, cut?.side, cut?.at, style, seen, ready, area, pens, drawnFor])

  const home = useCallback((whole: boolean): Promise<void> => {
    let from: Pose = HOME
    let depth = 0
    setPose((now) => {
      from = now
      return now
    })
    setPlane((now) => {
      depth = now.depth
      return now
    })
    if (isStill()) {
      setPose(HOME)
      if (whole) setPlane((p) => ({ ...p, depth: 0 }))
      return Promise.resolve()
    }
    return new Promise((done) => {
      const start = performance.now()
      const step = (now: number) => {
        const t = Math.min(1, Math.max(0, (now - start) / FLIGHT))
        setPose(between(from, HOME, t))
        if (whole) setPlane((p) => ({ ...p, depth: depth * (1 - t) }))
        if (t < 1) requestAnimationFrame(step)
        else done()
      }
      requestAnimationFrame(step)
    })
  }, [])
  const gone = useRef(onGone)
  gone.current = onGone
  useEffect(() => {
    if (!going) return
    if (isStill()) gone.current()
    else void Promise.all([home(true), fly(true)]).then(() => gone.current())
  }, [going, home, fly])

  const grip = useGrip({
    onTurn: (dx, dy) => setPose((p) => turned(p, -dx * BY_HAND, dy * BY_HAND)),
    onNearer: (factor, [x, y]) => {
      const first = firstScale(size, area.width, area.height)
      setPose((p) => nearer(p, factor, [(x - area.width / 2) / first, (area.height / 2 - y) / first]))
    },
    onTouch: (at, kind) => {
      const line = seen && board ? lineAt(seen, board, at, kind === 'mouse' ? REACH.mouse : REACH.touch) : undefined
      if (line) return onPick({ edge: line.edges[0]! })
      const face = turning.current?.faceAt(at[0], at[1], area.width, area.height)
      onPick(face === undefined ? {} : { face })
    },
  })
  const slipGrip = useSlipGrip(carry)
  const stops = useMemo(() => (seen && solid ? edgeStops(seen, solid, drawn) : []), [seen, solid, drawn])
  const reach = useMemo(() => solid && cutReach(plane, solid.box, solid.corners), [plane, solid])
  const line = box && reach && board && cuttingLine(plane, box, reach, board, figures, px)
  const inner = props.centre && solid && board ? innerLines(props.centre, solid, board, figures, px) : []
  const says = solid ? `${poseWords(pose)}. ${planeWords(plane, solid.box, solid.axes, units)}.` : ''
  const said = useSettled(says)
  return (
    <section
      ref={slip}
      className={`turning${going ? ' going' : ''}`}
      style={{ left: place.left, top: place.top, width: place.width, height: place.height }}
      aria-label="Pictorial, lifted off"
      data-state={fault ? 'failed' : seen ? 'at rest' : 'moving'}
      {...slipGrip}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        // What is chosen on the sheet stays until the next.
        event.nativeEvent.stopImmediatePropagation()
        onPutBack()
      }}
    >
      <TornPaper width={place.width} height={place.height} />
      <header>
        <button type="button" disabled={isHome(pose)} onClick={() => void home(false)}>
          As on the sheet
        </button>
        <button type="button" onClick={onPutBack}>
          Put back
        </button>
      </header>
      <div
        className="stage-of-slip"
        ref={stage}
        {...grip}
        onWheel={(event) => {
          const at = event.currentTarget.getBoundingClientRect()
          const first = firstScale(size, area.width, area.height)
          const [x, y] = [event.clientX - at.left - area.width / 2, at.top + area.height / 2 - event.clientY]
          setPose((p) => nearer(p, Math.exp(-event.deltaY * 0.0016), [x / first, y / first]))
        }}
      >
        {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: its keys are its own */}
        <canvas
          ref={canvas}
          tabIndex={0}
          role="application"
          aria-label={`The part in the hand. ${said}`}
          aria-description="Arrows turn it, plus and minus bring it nearer and farther, Home holds it as on the sheet; Shift and an arrow carry the slip. Tab goes to the cutting plane and to the edges."
          onKeyDown={(event) => {
            const factor = { '+': 1.25, '=': 1.25, '-': 0.8 }[event.key]
            const by = TURNS[event.key]
            if (factor) setPose((p) => nearer(p, factor))
            else if (by && event.shiftKey) carry(-by[0] * STRIDE, by[1] * STRIDE)
            else if (by) setPose((p) => turned(p, by[0] * BY_KEY, by[1] * BY_KEY))
            else if (event.key === 'Home') void home(false)
            else return
            event.preventDefault()
            // The same keys bring the sheet nearer elsewhere.
            event.stopPropagation()
            event.nativeEvent.stopImmediatePropagation()
          }}
        />
        {board && solid ? (
          // biome-ignore lint/a11y/useSemanticElements: a drawing is no set of fields
          <svg className="over" viewBox={`0 0 ${area.width} ${area.height}`} role="group" aria-label="Its drawing">
            {shown ? <SeenLines seen={shown} board={board} pens={pens} light={light} /> : null}
            {inner.map(({ a, b, dashes }) => (
              <line
                key={`${a} ${b}`}
                className="ink inner lit"
                x1={a[0]}
                y1={a[1]}
                x2={b[0]}
                y2={b[1]}
                strokeWidth={pens.thin * 1.5}
                {...(dashes ? { strokeDasharray: dashes.join(' ') } : {})}
              />
            ))}
            {line ? (
              <CuttingHandle
                line={line}
                plane={plane}
                solid={solid}
                unit={units}
                scale={board.scale}
                onPlane={setPlane}
                onNext={() => setPlane((p) => laidAnew(p, board.frame))}
              />
            ) : null}
            {cut ? (
              <text
                className="ink section-label"
                x={area.width / 2}
                y={area.height + 0.95 * rem}
                textAnchor="middle"
                fontSize={figures.lettering.viewLabel * 0.8 * px * EM_OVER_CAPITAL}
              >
                {`${figures.words.section} A-A`.trim()}
              </text>
            ) : null}
            <EdgeStop stops={stops} board={board} onPick={(edge) => onPick({ edge })} />
          </svg>
        ) : null}
      </div>
      <footer>
        {solid || fault ? null : <p role="status">Lifting it off</p>}
        {fault ? <p role="alert">{fault}</p> : null}
        {props.words ? <p className="why">{props.words}</p> : null}
        {solid ? (
          <p className="says" aria-live="polite">
            {said}
          </p>
        ) : null}
        {solid && !cut ? (
          <p className="hint">Draw A–A into the part to cut it; touch a letter to lay it anew.</p>
        ) : null}
      </footer>
    </section>
  )
}

/** The border of a cut stands out among the outlines (ISO 128-3 allows an extra-wide line for it; from memory). */
const CUT_WIDER = 1.5

/** The keyboard comes along, and goes back to where it came from. */
function useKeyboard(
  slip: React.RefObject<HTMLElement | null>,
  canvas: React.RefObject<HTMLCanvasElement | null>,
): void {
  useLayoutEffect(() => {
    const from = document.activeElement
    const here = slip.current!
    const { dataset } = document.documentElement
    dataset.lifted = 'yes'
    canvas.current!.focus({ preventScroll: true })
    return () => {
      delete dataset.lifted
      if (!here.contains(document.activeElement) && document.activeElement !== document.body) return
      const back = from?.isConnected && from !== document.body ? from : document.querySelector('.lift')
      if (back instanceof HTMLElement || back instanceof SVGElement) back.focus({ preventScroll: true })
    }
  }, [slip, canvas])
}

/** The slip is carried by its paper. */
function useSlipGrip(carry: (dx: number, dy: number) => void) {
  const held = useRef<{ x: number; y: number }>(undefined)
  return {
    onPointerDown: (event: React.PointerEvent<HTMLElement>) => {
      if (event.target instanceof Element && event.target.closest('.stage-of-slip, button')) return
      event.currentTarget.setPointerCapture(event.pointerId)
      held.current = { x: event.clientX, y: event.clientY }
    },
    onPointerMove: (event: React.PointerEvent<HTMLElement>) => {
      if (!held.current) return
      carry(event.clientX - held.current.x, event.clientY - held.current.y)
      held.current = { x: event.clientX, y: event.clientY }
    },
    onPointerUp: () => {
      held.current = undefined
    },
    onPointerCancel: () => {
      held.current = undefined
    },
  }
}

/** Milliseconds after which words are said that change while something is carried. */
const SETTLED = 350

function useSettled(words: string): string {
  const [said, setSaid] = useState(words)
  useEffect(() => {
    const timer = setTimeout(() => setSaid(words), SETTLED)
    return () => clearTimeout(timer)
  }, [words])
  return said
}
