import type { RefObject } from 'react'
import type { SheetHandle } from '../sheet/sheet-view.tsx'

interface ScaleRuleProps {
  readonly sheet: RefObject<SheetHandle | null>
  readonly onMeasure: () => void
}

export const ScaleRule = ({ sheet, onMeasure }: ScaleRuleProps) => (
  <nav className="scale-rule" aria-label="Size of the sheet on the screen">
    <button type="button" onClick={() => sheet.current?.showWhole()}>
      Whole sheet
    </button>
    <button type="button" onClick={() => sheet.current?.realSize()}>
      Real size
    </button>
    <button type="button" aria-label="Measure the screen" onClick={onMeasure}>
      Measure
    </button>
    <button type="button" aria-label="Smaller" onClick={() => sheet.current?.zoom(1 / 1.25)}>
      −
    </button>
    <button type="button" aria-label="Larger" onClick={() => sheet.current?.zoom(1.25)}>
      +
    </button>
  </nav>
)
