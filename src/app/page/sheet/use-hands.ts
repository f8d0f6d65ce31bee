import { type PointerEvent, type RefObject, useEffect, useRef, useState } from 'react'
import type { Vec2 } from '../../../geometry/vec.ts'
import type { SheetItem } from '../../../sheet/sheet.ts'
import type { Way } from './step.ts'
import { type Area, kept, moved, paperPoint, type Viewport, zoomed } from './viewport.ts'

/** A size or a view carried to another place by hand or by keys; points and ways in paper mm. */
export type Drag =
  | { readonly what: 'row'; readonly dimension: string; readonly way: Way }
  | { readonly what: 'next view'; readonly dimension: string }
  | { readonly what: 'size'; readonly dimension: string; readonly to: Vec2 }
  | { readonly what: 'view'; readonly view: string; readonly by: Vec2 }

interface HandsOptions {
  readonly frame: RefObject<HTMLDivElement | null>
  readonly paper: Area
  readonly view: Viewport
  readonly change: (next: (old: Viewport) => Viewport) => void
  readonly itemAt: (point: Vec2, kind: string, scale: number) => number | undefined
  readonly itemOf: (index: number) => SheetItem
  readonly onHover: (index: number | undefined) => void
  readonly onTouch: (index: number | undefined, point: Vec2) => void
  readonly onDrag: (drag: Drag) => void
}

interface Hand {
  readonly id: number
  x: number
  y: number
}

interface Grip {
  readonly item: number | undefined
  readonly from: Vec2
  readonly at: readonly [number, number]
  carries: 'nothing yet' | 'paper' | 'size' | 'view'
}

/** Px that a hand may tremble before a touch becomes a drag. */
const STILL = 5

/** Mouse, pen and fingers on the sheet: wheel and pinch zoom to the hand, a drag moves the paper, a size or a view. */
export function useHands(options: HandsOptions) {
  const latest = useRef(options)
  latest.current = options
  const hands = useRef<Hand[]>([])
  const grip = useRef<Grip>(undefined)
  const hovered = useRef<number>(undefined)
  const [ghost, setGhost] = useState<readonly [number, number]>()
  const [word, setWord] = useState('')

  useEffect(() => {
    const frame = options.frame.current
    if (!frame) return undefined
    const onWheel = (event: WheelEvent) => {
      event.preventDefault()
      const [x, y] = place(frame, event)
      const { change, paper } = latest.current
      const area = { width: frame.clientWidth, height: frame.clientHeight }
      const lines = event.deltaMode === 1 ? 16 : 1
      if (event.shiftKey) change((v) => kept(moved(v, -(event.deltaX || event.deltaY) * lines, 0), paper, area))
      else change((v) => kept(zoomed(v, Math.exp(-event.deltaY * lines * 0.0016), x, y), paper, area))
    }
    frame.addEventListener('wheel', onWheel, { passive: false })
    return () => frame.removeEventListener('wheel', onWheel)
  }, [options.frame])

  const pointOf = (event: PointerEvent): Vec2 => {
    const { frame, view, paper } = latest.current
    const [x, y] = place(frame.current!, event)
    return paperPoint(view, paper, x, y)
  }
  const find = (event: PointerEvent) =>
    latest.current.itemAt(pointOf(event), event.pointerType, latest.current.view.scale)
  const onBench = (event: PointerEvent) =>
    event.target instanceof Element && event.target.closest('button, input, form, .ring, .turning') === null

  const down = (event: PointerEvent) => {
    if (!onBench(event) || event.button > 1) return
    const [x, y] = place(latest.current.frame.current!, event)
    hands.current = [...hands.current.filter((h) => h.id !== event.pointerId), { id: event.pointerId, x, y }]
    latest.current.frame.current!.setPointerCapture(event.pointerId)
    grip.current =
      hands.current.length === 1
        ? { item: find(event), from: pointOf(event), at: [x, y], carries: 'nothing yet' }
        : undefined
  }

  const move = (event: PointerEvent) => {
    const frame = latest.current.frame.current!
    const [x, y] = place(frame, event)
    const hand = hands.current.find((h) => h.id === event.pointerId)
    if (!hand) {
      const over = onBench(event) ? find(event) : undefined
      if (over !== hovered.current) {
        hovered.current = over
        latest.current.onHover(over)
      }
      return
    }
    const { change, paper } = latest.current
    const area = { width: frame.clientWidth, height: frame.clientHeight }
    const other = hands.current.find((h) => h.id !== event.pointerId)
    if (other) {
      const before = Math.hypot(hand.x - other.x, hand.y - other.y)
      const after = Math.hypot(x - other.x, y - other.y)
      change((v) => kept(zoomed(v, before > 0 ? after / before : 1, (x + other.x) / 2, (y + other.y) / 2), paper, area))
    } else if (grip.current) carry(grip.current, hand, x, y, area)
    hand.x = x
    hand.y = y
  }

  const carry = (held: Grip, hand: Hand, x: number, y: number, area: Area) => {
    const { change, paper, itemOf } = latest.current
    if (held.carries === 'nothing yet') {
      if (Math.hypot(x - held.at[0], y - held.at[1]) < STILL) return
      const item = held.item === undefined ? undefined : itemOf(held.item)
      held.carries = carried(item)
      setWord(held.carries === 'size' ? 'Put the size here' : held.carries === 'view' ? 'Put the view here' : '')
    }
    if (held.carries === 'paper') change((v) => kept(moved(v, x - hand.x, y - hand.y), paper, area))
    else setGhost([x, y])
  }

  const up = (event: PointerEvent) => {
    const held = grip.current
    hands.current = hands.current.filter((h) => h.id !== event.pointerId)
    grip.current = undefined
    setGhost(undefined)
    if (!held || event.type === 'pointercancel') return
    const { onTouch, onDrag, itemOf } = latest.current
    const point = pointOf(event)
    const tie = held.item === undefined ? undefined : itemOf(held.item).tie
    if (held.carries === 'nothing yet') onTouch(held.item, point)
    else if (held.carries === 'size' && tie?.dimension) onDrag({ what: 'size', dimension: tie.dimension, to: point })
    else if (held.carries === 'view' && tie?.view) {
      onDrag({ what: 'view', view: tie.view, by: [point[0] - held.from[0], point[1] - held.from[1]] })
    }
  }

  const leave = () => {
    if (hovered.current === undefined) return
    hovered.current = undefined
    latest.current.onHover(undefined)
  }

  return {
    listeners: {
      onPointerDown: down,
      onPointerMove: move,
      onPointerUp: up,
      onPointerCancel: up,
      onPointerLeave: leave,
    },
    dragging: ghost !== undefined,
    ghost,
    word,
  }
}

/** What a drag that begins on the item carries: sizes and views go, the rest is paper. */
function carried(item: SheetItem | undefined): Grip['carries'] {
  if (!item?.tie) return 'paper'
  if (item.tie.dimension) return 'size'
  const isLine = item.item === 'stroke' && (item.kind === 'visible' || item.kind === 'hidden')
  return isLine && item.tie.view ? 'view' : 'paper'
}

function place(frame: Element, event: { clientX: number; clientY: number }): [number, number] {
  const box = frame.getBoundingClientRect()
  return [event.clientX - box.left, event.clientY - box.top]
}
