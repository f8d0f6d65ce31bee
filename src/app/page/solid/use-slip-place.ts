import { type RefObject, useCallback, useLayoutEffect, useRef, useState } from 'react'

/** Where the slip lies on the bench, px. */
export interface SlipPlace {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** How long the slip takes from its place on the sheet and back, ms. */
export const FLIGHT = 260

export const isStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches

/** What a slip shows larger than the sheet. */
const LARGER = 2.6
/** Of the slip: height for width, and its widths in rem. */
const SHAPE = 0.86
const NARROWEST = 31
const WIDEST = 44
/** Px that the slip keeps from the edges of the bench. */
const CLEAR = 10

/** Where the pictorial lies on the sheet in the window, px; undefined where none is in sight. */
function onSheet(): DOMRect | undefined {
  const lines = document.querySelectorAll('main > .sheet-frame:first-child .sheet [data-view="pictorial"]')
  let box: DOMRect | undefined
  for (const line of lines) {
    const one = line.getBoundingClientRect()
    if (!box) {
      box = one
      continue
    }
    const [left, top] = [Math.min(box.left, one.left), Math.min(box.top, one.top)]
    box = new DOMRect(left, top, Math.max(box.right, one.right) - left, Math.max(box.bottom, one.bottom) - top)
  }
  return box && box.right > 0 && box.bottom > 0 && box.left < innerWidth && box.top < innerHeight ? box : undefined
}

/** Over the place in which the pictorial lies, within what slip and routing slip leave of the bench. */
function laidOver(): SlipPlace {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  const edge = (selector: string) => document.querySelector(selector)?.getBoundingClientRect()
  const slip = edge('.slip:not(.folded) .slip-body')
  const free = {
    left: Math.min(slip?.right ?? 0, innerWidth * 0.4) + CLEAR,
    right: innerWidth - CLEAR,
    top: CLEAR,
    bottom: (edge('.routing')?.top ?? innerHeight) - CLEAR,
  }
  const room = { width: free.right - free.left, height: free.bottom - free.top }
  const box = onSheet()
  const wanted = Math.min(WIDEST * rem, Math.max(NARROWEST * rem, LARGER * (box?.width ?? 0)))
  const width = Math.min(wanted, room.width, (room.height * 0.94) / SHAPE)
  const height = width * SHAPE
  const middle = box
    ? [box.left + box.width / 2, box.top + box.height / 2]
    : [(free.left + free.right) / 2, (free.top + free.bottom) / 2]
  return {
    left: Math.max(free.left, Math.min(free.right - width, middle[0]! - width / 2)),
    top: Math.max(free.top, Math.min(free.bottom - height, middle[1]! - height / 2)),
    width,
    height,
  }
}

/** The slip's place: taken from the sheet when it is lifted, carried about since, and back to the sheet. */
export function useSlipPlace(slip: RefObject<HTMLElement | null>) {
  const [place, setPlace] = useState<SlipPlace>(laidOver)
  const latest = useRef(place)
  latest.current = place
  const fly = useCallback(
    (back: boolean): Promise<unknown> => {
      const box = onSheet()
      const here = slip.current
      if (!box || !here || isStill()) return Promise.resolve()
      const { left, top, width, height } = latest.current
      const small = {
        transform: `translate(${box.left + box.width / 2 - left - width / 2}px, ${box.top + box.height / 2 - top - height / 2}px) scale(${Math.min(1, box.width / width)})`,
      }
      const frames = back ? [{ transform: 'none' }, small] : [small, { transform: 'none' }]
      const flight = here.animate(frames, { duration: FLIGHT, easing: 'ease-in-out', fill: back ? 'forwards' : 'none' })
      return flight.finished.catch(() => {})
    },
    [slip],
  )
  useLayoutEffect(() => {
    void fly(false)
    const refit = () =>
      setPlace(({ left, top }) => {
        const fresh = laidOver()
        return {
          ...fresh,
          left: Math.max(0, Math.min(innerWidth - fresh.width, left)),
          top: Math.max(0, Math.min(innerHeight - fresh.height, top)),
        }
      })
    addEventListener('resize', refit)
    return () => removeEventListener('resize', refit)
  }, [fly])
  const carry = useCallback((dx: number, dy: number) => {
    setPlace((p) => ({
      ...p,
      left: Math.max(p.width * -0.6, Math.min(innerWidth - 0.4 * p.width, p.left + dx)),
      top: Math.max(0, Math.min(innerHeight - 0.4 * p.height, p.top + dy)),
    }))
  }, [])
  return { place, carry, fly }
}
