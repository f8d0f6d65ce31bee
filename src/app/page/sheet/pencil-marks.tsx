import { memo, useMemo } from 'react'
import type { Mark } from '../../../brief/mark.ts'
import type { Box2 } from '../../../geometry/evaluate.ts'
import type { Drawn } from '../engine/messages.ts'
import type { Ground } from './ground.ts'
import type { Ties } from './light.ts'
import { ringPath, ringsOf } from './pencil.ts'

interface PencilMarksProps {
  readonly drawn: Drawn
  readonly ties: Ties
  readonly ground: Ground
  readonly marks: readonly Mark[]
  readonly open: number | undefined
  readonly onMark: (mark: number) => void
}

/** The check print: each mark that has a place on the sheet is ringed there, with its number. */
export const PencilMarks = memo(function PencilMarks({ drawn, ties, marks, ground, open, onMark }: PencilMarksProps) {
  const rings = useMemo(() => ringsOf(drawn, ground, ties, marks), [drawn, ground, ties, marks])
  const { height } = ground.sheet
  /** Marks round the same lettering share one place for their numbers; the first of them says all. */
  const numbers = (box: Box2, mark: number) => {
    const same = rings.filter((r) => r.box.min[0] === box.min[0] && r.box.max[1] === box.max[1]).map((r) => r.mark)
    return same[0] === mark ? same.map((m) => m + 1).join(', ') : ''
  }
  return (
    <g className="pencil">
      {rings.map(({ mark, box }) => {
        const { weight, text } = marks[mark]!
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: each mark is a button in the margin too
          <g
            key={`${mark} ${text}`}
            className={`ring ${weight.replaceAll(' ', '-')}${open === mark ? ' open' : ''}`}
            onClick={() => onMark(mark)}
          >
            <path d={ringPath(box, height, mark + text.length)} />
            <text x={box.max[0] + 3.2} y={height - box.max[1] - 1.6}>
              {numbers(box, mark)}
            </text>
          </g>
        )
      })}
    </g>
  )
})
