import type { Drawn } from '../engine/messages.ts'
import { centreOf } from '../sheet/centre-of.ts'
import type { Light } from '../sheet/light.ts'

interface WhyNoteProps {
  readonly words: string
  /** The pictorial has something to show of it. */
  readonly shows: boolean
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

/** Why the chosen line is there. The pictorial is offered where something of the part would be lit on it. */
export const WhyNote = ({ words, shows, onLift, onClose }: WhyNoteProps) => (
  <div className="why-note" role="status">
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
