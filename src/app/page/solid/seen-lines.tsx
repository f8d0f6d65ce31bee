import { memo, useMemo } from 'react'
import type { Vec2 } from '../../../geometry/vec.ts'
import { pathOf } from '../../../write/path-data.ts'
import type { Seen, SeenLine } from '../engine/messages.ts'
import type { Board } from './pose.ts'
import type { Pens, TurningLight } from './turning.ts'

interface SeenLinesProps {
  readonly seen: Seen
  readonly board: Board
  readonly pens: Pens
  readonly light: TurningLight | undefined
}

const flip = (p: Vec2): Vec2 => [p[0], -p[1]]

/** The part at rest, in the lines of a sheet's view. */
export const SeenLines = memo(function SeenLines({ seen, board, pens, light }: SeenLinesProps) {
  const paths = useMemo(() => {
    const hatching = seen.lines.filter((l) => l.kind === 'hatching').map((l) => l.curve)
    const lines = seen.lines
      .filter((l) => l.kind !== 'hatching')
      .map((line) => ({ line, d: pathOf([line.curve], flip) }))
    // The border of the cut lies over what meets it.
    lines.sort((a, b) => Number(a.line.kind === 'cut') - Number(b.line.kind === 'cut'))
    return { hatching: pathOf(hatching, flip), lines }
  }, [seen])
  const { scale } = board
  const width = ({ kind }: SeenLine) =>
    (kind === 'cut' ? pens.cut : kind === 'intersection' ? pens.thin : pens.outline) / scale
  const isLit = ({ edges }: SeenLine) => light !== undefined && edges.some((e) => light.edges.has(e))
  return (
    <g className="seen" transform={placeOf(board)}>
      {paths.hatching ? <path className="ink hatching" d={paths.hatching} strokeWidth={pens.thin / scale} /> : null}
      {paths.lines.map(({ line, d }, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own
          key={i}
          className={`ink visible ${line.kind}${isLit(line) ? ' lit' : ''}`}
          d={d}
          strokeWidth={width(line)}
        />
      ))}
    </g>
  )
})

/** Where the view's mm lie on the board; y down. */
export function placeOf({ scale, middle, at }: Board): string {
  return `translate(${at[0] - middle[0] * scale} ${at[1] + middle[1] * scale}) scale(${scale})`
}
