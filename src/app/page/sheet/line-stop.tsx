import { useMemo, useState } from 'react'
import type { Vec2 } from '../../../geometry/vec.ts'
import { pathOf } from '../../../write/path-data.ts'
import type { Drawn } from '../engine/messages.ts'
import { whyIsIt } from './why.ts'

interface LineStopProps {
  readonly drawn: Drawn
  readonly onFocus: (item: number | undefined) => void
  readonly onChoose: (item: number) => void
}

/** A place for the keyboard on the lines of the views: arrows go from line to line, each says why it is there. */
export function LineStop({ drawn, onFocus, onChoose }: LineStopProps) {
  const [current, setCurrent] = useState(0)
  const lines = useMemo(() => {
    // Lines of one view that are there for one reason are one stop.
    const seen = new Set<string>()
    return drawn.sheet!.items.flatMap((item, i) => {
      const why = whyIsIt(drawn, i)
      const view = item.tie?.view
      if (!why || view === 'pictorial' || seen.has(`${view} ${why}`)) return []
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
      aria-label={`Line in the ${item.tie?.view} view. ${whyIsIt(drawn, index)}`}
      d={pathOf([item.curve], flip)}
      onFocus={() => onFocus(index)}
      onBlur={() => onFocus(undefined)}
      onKeyDown={(event) => {
        if (event.key === 'ArrowRight' || event.key === 'ArrowDown') move(1)
        else if (event.key === 'ArrowLeft' || event.key === 'ArrowUp') move(-1)
        else if (event.key === 'Enter' || event.key === ' ') onChoose(index)
        else return
        event.preventDefault()
        event.stopPropagation()
      }}
    />
  )
}
