import { type PointerEvent, useRef } from 'react'
import type { Vec2 } from '../../../geometry/vec.ts'

interface GripOptions {
  readonly onTurn: (dx: number, dy: number) => void
  /** Nearer by a factor about a point of the board, px. */
  readonly onNearer: (factor: number, at: Vec2) => void
  readonly onTouch: (at: Vec2, kind: string) => void
}

interface Hand {
  readonly id: number
  x: number
  y: number
}

/** Px that a hand may tremble before a touch becomes a turn. */
const STILL = 5

/** One hand turns the part, two bring it nearer, a touch picks. */
export function useGrip({ onTurn, onNearer, onTouch }: GripOptions) {
  const hands = useRef<Hand[]>([])
  const far = useRef(0)
  const place = (event: PointerEvent): Vec2 => {
    const box = event.currentTarget.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  const letGo = (event: PointerEvent) => {
    hands.current = hands.current.filter((h) => h.id !== event.pointerId)
  }
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button > 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      const [x, y] = place(event)
      far.current = hands.current.length === 0 ? 0 : STILL
      hands.current.push({ id: event.pointerId, x, y })
    },
    onPointerMove: (event: PointerEvent) => {
      const hand = hands.current.find((h) => h.id === event.pointerId)
      if (!hand) return
      const [x, y] = place(event)
      const other = hands.current.find((h) => h !== hand)
      if (other) {
        const [before, after] = [Math.hypot(hand.x - other.x, hand.y - other.y), Math.hypot(x - other.x, y - other.y)]
        if (before > 0) onNearer(after / before, [(x + other.x) / 2, (y + other.y) / 2])
      } else {
        far.current += Math.hypot(x - hand.x, y - hand.y)
        if (far.current >= STILL) onTurn(x - hand.x, y - hand.y)
      }
      hand.x = x
      hand.y = y
    },
    onPointerUp: (event: PointerEvent) => {
      const alone = hands.current.length === 1 && hands.current[0]!.id === event.pointerId
      letGo(event)
      if (alone && far.current < STILL) onTouch(place(event), event.pointerType)
    },
    onPointerCancel: letGo,
  }
}
