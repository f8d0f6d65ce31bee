import { memo, useMemo, useState } from 'react'
import type { Vec2 } from '../../../geometry/vec.ts'
import { pathOf } from '../../../write/path-data.ts'
import type { Drawn } from '../engine/messages.ts'
import { viewWords } from './drag.ts'
import { WAYS, type Way } from './step.ts'
import type { Drag } from './use-hands.ts'
import { whyIsIt } from './why.ts'

interface LineStopProps {
  readonly drawn: Drawn
  readonly onFocus: (item: number | undefined) => void
  readonly onChoose: (item: number) => void
  readonly onCarry: (drag: Drag) => void
}

/** How far a view goes at one press, paper mm. */
const STRIDE = 5
const BY: Readonly<Record<Way, Vec2>> = {
  left: [-STRIDE, 0],
  right: [STRIDE, 0],
  top: [0, STRIDE],
  bottom: [0, -STRIDE],
}

/** A place for the keyboard on the lines of the views: arrows go from line to line, each says why it is there; Shift and an arrow moves its view. */
export const LineStop = memo(function LineStop({ drawn, onFocus, onChoose, onCarry }: LineStopProps) {
  const [current, setCurrent] = useState(0)
  const lines = useMemo(() => {
    // Lines of one view that are there for one reason are one stop.
    const seen = new Set<string>()
    return drawn.sheet!.items.flatMap((item, i) => {
      const why = whyIsIt(drawn, i)
      const view = item.tie?.view
      if (!why || seen.has(`${view} ${why}`)) return []
      seen.add(`${view} ${why}`)
      return [i]
    })
  }, [drawn])
  const index = lines[Math.min(current, lines.length - 1)]
  const item = index === undefined ? undefined : drawn.sheet!.items[index]
  if (index === undefined || item?.item !== 'stroke') return null
  const { height } = drawn.sheet!
  const move = (by: number) => {
    const next = (Math.min(current, lines.length - 1) + by + lines.length) % lines.length
    setCurrent(next)
    onFocus(lines[next])
  }
  const flip = (p: Vec2): Vec2 => [p[0], height - p[1]]
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG has no button
    <path
      className="line-stop"
      role="button"
      tabIndex={0}
      aria-description="Shift and an arrow moves the view"
      aria-label={`Line in the ${viewWords(item.tie?.view ?? '')}. ${whyIsIt(drawn, index)}`}
      d={pathOf([item.curve], flip)}
      onFocus={() => onFocus(index)}
      onBlur={() => onFocus(undefined)}
      onKeyDown={(event) => {
        const way = WAYS[event.key]
        if (way && event.shiftKey && item.tie?.view) onCarry({ what: 'view', view: item.tie.view, by: BY[way] })
        else if (event.key === 'ArrowRight' || event.key === 'ArrowDown') move(1)
        else if (event.key === 'ArrowLeft' || event.key === 'ArrowUp') move(-1)
        else if (event.key === 'Enter' || event.key === ' ') onChoose(index)
        else return
        event.preventDefault()
        event.stopPropagation()
      }}
    />
  )
})
