import { useState } from 'react'
import type { Vec2 } from '../../../geometry/vec.ts'
import { pathOf } from '../../../write/path-data.ts'
import type { edgeStops } from './pick.ts'
import type { Board } from './pose.ts'
import { placeOf } from './seen-lines.tsx'

interface EdgeStopProps {
  readonly stops: ReturnType<typeof edgeStops>
  readonly board: Board
  readonly onPick: (edge: number) => void
}

const flip = (p: Vec2): Vec2 => [p[0], -p[1]]

/** A place for the keyboard on the edges of the part in the hand: arrows go from edge to edge, Enter picks one. */
export function EdgeStop({ stops, board, onPick }: EdgeStopProps) {
  const [edge, setEdge] = useState<number>()
  const index = Math.max(
    0,
    stops.findIndex((s) => s.edge === edge),
  )
  const stop = stops[index]
  if (!stop) return null
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG has no button
    <path
      className="edge-stop"
      role="button"
      tabIndex={0}
      aria-label={stop.words}
      transform={placeOf(board)}
      d={pathOf([stop.line.curve], flip)}
      onKeyDown={(event) => {
        const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
        if (by) setEdge(stops[(index + by + stops.length) % stops.length]!.edge)
        else if (event.key === 'Home') setEdge(stops[0]!.edge)
        else if (event.key === 'End') setEdge(stops.at(-1)!.edge)
        else if (event.key === 'Enter' || event.key === ' ') onPick(stop.edge)
        else return
        event.preventDefault()
        event.stopPropagation()
      }}
    />
  )
}
