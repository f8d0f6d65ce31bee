import type { CSSProperties } from 'react'
import type { Drawn } from '../engine/messages.ts'
import { centreOf } from '../sheet/centre-of.ts'
import type { Light } from '../sheet/light.ts'
import type { Room } from './room.ts'

interface WhyNoteProps {
  readonly words: string
  /** The pictorial has something to show of it. */
  readonly shows: boolean
  /** Where the note lies: in the marks' place below the sheet where that is free, else over the sheet above it. */
  readonly room: Room
  readonly marks: number
  readonly onLift: () => void
  readonly onClose: () => void
}

/** Whether something of the part would be lit on the pictorial: faces, edges, an axis or a middle plane. */
export function showsOnPictorial(drawn: Drawn, light: Light | undefined): boolean {
  if (!light) return false
  if (light.faces.size + light.edges.size > 0) return true
  const centre = centreOf(drawn, light.item)
  return centre !== undefined && (centre.features.length > 0 || centre.plane !== undefined)
}

/** Px of the marks' place that has room for a row of a few of them and for the note below it. */
const ROOMY = 140
const FEW = 3

function placeIn({ margin, covered, slip, slim }: Room, marks: number): CSSProperties {
  if (slip?.side === 'below' && !margin)
    return slim ? { bottom: covered.bottom } : free(slip.bottom + slip.height, `calc(${slip.width}px + 1.2rem)`)
  if (margin?.side !== 'below')
    return slip?.side === 'left'
      ? { left: `calc(50% + ${slip.width / 2}px)`, maxWidth: `calc(100% - ${slip.width}px - 1.5rem)` }
      : {}
  if (marks > 0) return { bottom: marks <= FEW && margin.height > ROOMY ? margin.bottom : covered.bottom }
  return free(margin.bottom + margin.height, `${margin.left}px`)
}

/** So many px from the window's lower edge, from `left` on. */
const free = (top: number, left: string): CSSProperties => ({
  inset: `calc(100% - ${top}px + 0.4rem) 1.2rem auto ${left}`,
  transform: 'none',
  width: 'fit-content',
  margin: '0 auto',
})

/** Why the chosen line is there. The pictorial is offered where something of the part would be lit on it. */
export const WhyNote = ({ words, shows, room, marks, onLift, onClose }: WhyNoteProps) => (
  <div className="why-note" role="status" style={placeIn(room, marks)}>
    <p>{words}</p>
    {shows ? (
      <button type="button" onClick={onLift}>
        Show it on the pictorial
      </button>
    ) : null}
    <button type="button" className="close" aria-label="Put the note away" onClick={onClose}>
      ×
    </button>
  </div>
)
