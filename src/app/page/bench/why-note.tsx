import type { Light } from '../sheet/light.ts'

interface WhyNoteProps {
  readonly words: string
  readonly light: Light | undefined
  readonly onLift: () => void
  readonly onClose: () => void
}

/** Why the chosen line is there. The pictorial is offered where something of the part would be lit on it. */
export const WhyNote = ({ words, light, onLift, onClose }: WhyNoteProps) => (
  <div className="why-note" role="status">
    <p>{words}</p>
    {light && light.faces.size + light.edges.size > 0 ? (
      <button type="button" onClick={onLift}>
        Show it on the pictorial
      </button>
    ) : null}
    <button type="button" className="close" aria-label="Put the note away" onClick={onClose}>
      ×
    </button>
  </div>
)
