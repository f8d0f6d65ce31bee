import type { Covered } from '../sheet/viewport.ts'

interface BlankPaperProps {
  readonly covered: Covered
  /** Why there is no sheet. */
  readonly words: string
  readonly onStart: (() => void) | undefined
}

/** Paper on which nothing is drawn yet. */
export const BlankPaper = ({ covered: { left, right, top, bottom }, words, onStart }: BlankPaperProps) => (
  <div className="sheet-frame">
    <div className="blank-paper" style={{ left, right, top, bottom }}>
      <p role="status">{words}</p>
      {onStart ? (
        <button type="button" onClick={onStart}>
          Choose what the shop begins from
        </button>
      ) : null}
    </div>
  </div>
)
