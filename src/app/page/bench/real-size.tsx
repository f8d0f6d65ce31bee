import { useEffect, useRef, useState } from 'react'

const PLACE = 'sheetwright real size'
/** CSS counts 96 px to the inch, whatever the screen is. */
const UNKNOWN = 96 / 25.4

/** Px of this screen to a millimetre, as it was last measured. */
export function screenPixelsPerMm(): number {
  const stored = Number(localStorage.getItem(PLACE))
  return stored > 1 && stored < 40 ? stored : UNKNOWN
}

interface RealSizeProps {
  readonly open: boolean
  readonly pixelsPerMm: number
  readonly onMeasure: (pixelsPerMm: number) => void
  readonly onClose: () => void
}

/** Measures the screen with a rule held against it, so that real size is real. */
export function RealSize({ open, pixelsPerMm, onMeasure, onClose }: RealSizeProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  const [value, setValue] = useState(pixelsPerMm)
  useEffect(() => {
    if (open && !dialog.current!.open) dialog.current!.showModal()
    if (!open && dialog.current!.open) dialog.current!.close()
  }, [open])
  return (
    <dialog ref={dialog} className="real-size" aria-label="Measure the screen" onClose={onClose}>
      <form
        method="dialog"
        onSubmit={() => {
          localStorage.setItem(PLACE, String(value))
          onMeasure(value)
        }}
      >
        <h2>Real size</h2>
        <p>Hold a rule against the screen, and move the slide until the line is 100 mm long.</p>
        <div className="rule" style={{ width: value * 100 }}>
          <span className="end" />
          100 mm
          <span className="end" />
        </div>
        <label>
          <span>Length of the line</span>
          <input
            type="range"
            min={2}
            max={12}
            step={0.005}
            value={value}
            onChange={(event) => setValue(Number(event.target.value))}
          />
        </label>
        <div className="row">
          <button type="submit">It is 100 mm now</button>
          <button type="button" onClick={onClose}>
            Back
          </button>
        </div>
      </form>
    </dialog>
  )
}
