import { memo, useLayoutEffect, useRef, useState } from 'react'
import type { Box2 } from '../../../geometry/evaluate.ts'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Drawn } from '../engine/messages.ts'
import type { SizePlace } from './size-places.ts'
import { WAYS } from './step.ts'
import type { Drag } from './use-hands.ts'

interface SizeStopsProps {
  readonly drawn: Drawn
  readonly sheet: Sheet
  readonly places: readonly SizePlace[]
  /** Where each of them is to be touched, paper mm. */
  readonly boxes: readonly Box2[]
  readonly onFocus: (item: number | undefined) => void
  readonly onPress: (dimension: string) => void
  readonly onCarry: (drag: Drag) => void
}

/**
 * A place for the keyboard on each size: one stop for Tab, arrows from size to size, Enter to change it, Shift and an
 * arrow to put it in another row, V to put it beside another view.
 */
export const SizeStops = memo(function SizeStops(props: SizeStopsProps) {
  const { drawn, sheet, places, boxes, onFocus, onPress, onCarry } = props
  const [current, setCurrent] = useState(0)
  const group = useRef<SVGGElement>(null)
  /** The size at which the keyboard is. */
  const held = useRef<string>(undefined)
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
  const { height } = sheet
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG has no fieldset
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of lines is not interactive
    <g
      ref={group}
      role="group"
      aria-label="Sizes; arrows go from one to the next, Enter changes it, Shift and an arrow puts it in another row, V at another view"
    >
      {places.map(({ id, items }, i) => {
        const box = boxes[i]!
        const dimension = drawn.dimensions.find((d) => d.id === id)
        const words = items.map((k) => textOf(sheet.items[k]!)).join(' ')
        return (
          // biome-ignore lint/a11y/useSemanticElements: an SVG has no button
          <rect
            key={id}
            className="hit"
            data-dimension={id}
            role="button"
            tabIndex={i === Math.min(current, places.length - 1) ? 0 : -1}
            aria-label={`Size ${words}${dimension ? `, ${dimension.direction}, ${dimension.view} view` : ''}`}
            x={box.min[0]}
            y={height - box.max[1]}
            width={box.max[0] - box.min[0]}
            height={box.max[1] - box.min[1]}
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
