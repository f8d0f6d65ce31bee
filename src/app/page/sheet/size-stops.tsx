import { memo, useLayoutEffect, useMemo, useRef, useState } from 'react'
import type { Drawn } from '../engine/messages.ts'
import { type Ground, union } from './ground.ts'
import { WAYS } from './step.ts'
import type { Drag } from './use-hands.ts'

interface SizeStopsProps {
  readonly drawn: Drawn
  readonly ground: Ground
  readonly onFocus: (item: number | undefined) => void
  readonly onPress: (dimension: string) => void
  readonly onCarry: (drag: Drag) => void
}

/**
 * A place for the keyboard on each size: one stop for Tab, arrows from size to size, Enter to change it, Shift and an
 * arrow to put it in another row, V to put it beside another view.
 */
export const SizeStops = memo(function SizeStops({ drawn, ground, onFocus, onPress, onCarry }: SizeStopsProps) {
  const [current, setCurrent] = useState(0)
  const group = useRef<SVGGElement>(null)
  /** The size at which the keyboard is. */
  const held = useRef<string>(undefined)
  const places = useMemo(() => {
    const byDimension = new Map<string, number[]>()
    ground.sheet.items.forEach((item, i) => {
      const id = item.tie?.dimension
      if (id && (item.item === 'text' || item.item === 'glyph'))
        byDimension.set(id, [...(byDimension.get(id) ?? []), i])
    })
    return [...byDimension].map(([id, items]) => ({ id, items, box: union(items.map((i) => ground.boxes[i]!)) }))
  }, [ground])
  const move = (to: number) => {
    const next = (to + places.length) % places.length
    setCurrent(next)
    group.current?.querySelectorAll<SVGRectElement>('.hit')[next]?.focus()
  }
  // A new sheet may show the size no more; the keyboard stays among the sizes.
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at once for each sheet
  useLayoutEffect(() => {
    if (held.current !== undefined && !places.some(({ id }) => id === held.current) && places.length > 0)
      move(Math.min(current, places.length - 1))
  }, [places])
  const { height } = ground.sheet
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG has no fieldset
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of lines is not interactive
    <g
      ref={group}
      role="group"
      aria-label="Sizes; arrows go from one to the next, Enter changes it, Shift and an arrow puts it in another row, V at another view"
    >
      {places.map(({ id, items, box }, i) => {
        const dimension = drawn.dimensions.find((d) => d.id === id)
        const words = items.map((k) => textOf(ground.sheet.items[k]!)).join(' ')
        return (
          // biome-ignore lint/a11y/useSemanticElements: an SVG has no button
          <rect
            key={id}
            className="hit"
            data-dimension={id}
            role="button"
            tabIndex={i === Math.min(current, places.length - 1) ? 0 : -1}
            aria-label={`Size ${words}${dimension ? `, ${dimension.direction}, ${dimension.view} view` : ''}`}
            x={box.min[0] - 0.6}
            y={height - box.max[1] - 0.6}
            width={box.max[0] - box.min[0] + 1.2}
            height={box.max[1] - box.min[1] + 1.2}
            onFocus={() => {
              held.current = id
              setCurrent(i)
              onFocus(items[0])
            }}
            onBlur={() => {
              held.current = undefined
              onFocus(undefined)
            }}
            onKeyDown={(event) => {
              const way = WAYS[event.key]
              if (way && event.shiftKey) onCarry({ what: 'row', dimension: id, way })
              else if (event.key.toLowerCase() === 'v' && !event.ctrlKey && !event.metaKey && !event.altKey) {
                onCarry({ what: 'next view', dimension: id })
              } else if (event.key === 'ArrowRight' || event.key === 'ArrowDown') move(i + 1)
              else if (event.key === 'ArrowLeft' || event.key === 'ArrowUp') move(i - 1)
              else if (event.key === 'Home') move(0)
              else if (event.key === 'End') move(places.length - 1)
              else if (event.key === 'Enter' || event.key === ' ') onPress(id)
              else return
              event.preventDefault()
              event.stopPropagation()
            }}
          />
        )
      })}
    </g>
  )
})

const textOf = (item: { readonly item: string; readonly text?: string }): string => item.text ?? ''
