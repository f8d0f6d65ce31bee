import { type PointerEvent, useEffect, useLayoutEffect, useRef, useState } from 'react'
import type { SolidPicture } from '../engine/messages.ts'
import type { Pose, Turning, TurningLight } from './turning.ts'

interface LiftedProps {
  readonly solid: SolidPicture | undefined
  readonly fault: string | undefined
  readonly light: TurningLight | undefined
  /** Said under the picture: why the lit line is there. */
  readonly words: string | undefined
  readonly onFace: (face: number | undefined) => void
  readonly onPutBack: () => void
}

const AXES = [
  ['nowhere', undefined],
  ['across', 0],
  ['from the front', 1],
  ['from above', 2],
] as const

/** The pictorial lifted off the sheet, on a card of its own paper. */
export function Lifted({ solid, fault, light, words, onFace, onPutBack }: LiftedProps) {
  const card = useRef<HTMLElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  // The keyboard comes along, and goes back to where it came from.
  useLayoutEffect(() => {
    const from = document.activeElement
    const here = card.current!
    canvas.current!.focus({ preventScroll: true })
    return () => {
      if (!here.contains(document.activeElement)) return
      const back = from?.isConnected && from !== document.body ? from : document.querySelector('.lift')
      if (back instanceof HTMLElement || back instanceof SVGElement) back.focus({ preventScroll: true })
    }
  }, [])
  const turning = useRef<Turning>(undefined)
  const pose = useRef<Pose>(undefined)
  const [ready, setReady] = useState(false)
  const [failed, setFailed] = useState<string>()
  const [axis, setAxis] = useState<0 | 1 | 2>()
  const [share, setShare] = useState(0.5)
  useEffect(() => {
    if (!solid) return undefined
    let gone = false
    import('./turning.ts').then(
      ({ Turning: Made }) => {
        if (gone) return
        try {
          turning.current = new Made(canvas.current!, solid)
          if (pose.current) turning.current.pose = pose.current
          setReady(true)
        } catch {
          setFailed('This browser cannot turn the pictorial: it has no WebGL.')
        }
      },
      () => setFailed('The turning pictorial could not be loaded.'),
    )
    return () => {
      gone = true
      setReady(false)
      pose.current = turning.current?.pose
      turning.current?.close()
      turning.current = undefined
    }
  }, [solid])
  useEffect(() => {
    if (ready) turning.current?.light(light)
  }, [light, ready])
  useEffect(() => {
    if (ready) turning.current?.cutAt(axis === undefined ? undefined : { axis, share })
  }, [axis, share, ready])

  const held = useRef<{ x: number; y: number; far: number }>(undefined)
  const onMove = (event: PointerEvent<HTMLCanvasElement>) => {
    const hand = held.current
    if (!hand) return
    const [dx, dy] = [event.clientX - hand.x, event.clientY - hand.y]
    Object.assign(hand, { x: event.clientX, y: event.clientY, far: hand.far + Math.hypot(dx, dy) })
    turning.current?.turn(-dx * 0.008, dy * 0.008)
  }
  return (
    <section
      ref={card}
      className="turning"
      aria-label="Pictorial, lifted off"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        // What is chosen on the sheet stays until the next.
        event.nativeEvent.stopImmediatePropagation()
        onPutBack()
      }}
    >
      <canvas
        ref={canvas}
        tabIndex={0}
        role="img"
        aria-label="The part in the hand; arrows turn it, plus and minus bring it nearer and farther"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId)
          held.current = { x: event.clientX, y: event.clientY, far: 0 }
        }}
        onPointerMove={onMove}
        onPointerUp={(event) => {
          const box = event.currentTarget.getBoundingClientRect()
          if (held.current && held.current.far < 5) {
            onFace(turning.current?.faceAt(event.clientX - box.left, event.clientY - box.top))
          }
          held.current = undefined
        }}
        onWheel={(event) => turning.current?.zoom(Math.exp(-event.deltaY * 0.0016))}
        onKeyDown={(event) => {
          const nearer = { '+': 1.25, '=': 1.25, '-': 0.8 }[event.key]
          if (nearer) {
            // The same keys bring the sheet nearer elsewhere.
            event.stopPropagation()
            event.nativeEvent.stopImmediatePropagation()
            turning.current?.zoom(nearer)
            return
          }
          const turns: Readonly<Record<string, readonly [number, number]>> = {
            ArrowLeft: [-0.1, 0],
            ArrowRight: [0.1, 0],
            ArrowUp: [0, 0.1],
            ArrowDown: [0, -0.1],
          }
          const by = turns[event.key]
          if (!by) return
          event.preventDefault()
          turning.current?.turn(...by)
        }}
      />
      {solid || fault ? null : <p role="status">Lifting it off</p>}
      {fault || failed ? <p role="alert">{fault ?? failed}</p> : null}
      {words ? <p className="why">{words}</p> : null}
      <div className="row">
        <label>
          Cut open{' '}
          <select
            value={AXES.findIndex(([, a]) => a === axis)}
            onChange={(event) => setAxis(AXES[Number(event.target.value)]![1])}
          >
            {AXES.map(([name], i) => (
              <option key={name} value={i}>
                {name}
              </option>
            ))}
          </select>
        </label>
        {axis === undefined ? null : (
          <input
            type="range"
            aria-label="Place of the cut"
            min={0}
            max={1}
            step={0.01}
            value={share}
            onChange={(event) => setShare(Number(event.target.value))}
          />
        )}
        <button type="button" onClick={() => turning.current?.home()}>
          As on the sheet
        </button>
        <button type="button" onClick={onPutBack}>
          Put back
        </button>
      </div>
    </section>
  )
}
