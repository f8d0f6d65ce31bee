import { useMemo } from 'react'
import type { Drawn } from '../engine/messages.ts'
import { tiesOf } from '../sheet/light.ts'
import { SheetView } from '../sheet/sheet-view.tsx'
import type { Covered } from '../sheet/viewport.ts'
import { NO_MARKS } from './by-weight.ts'

interface BesideSheetProps {
  readonly drawn: Drawn
  readonly covered: Covered
  readonly pixelsPerMm: number
  readonly onTake: () => void
  readonly onPutAway: () => void
}

const nothing = () => {}

/** A second sheet laid beside the one that is worked on: to look at, not to change. */
export function BesideSheet({ drawn, covered, pixelsPerMm, onTake, onPutAway }: BesideSheetProps) {
  const ties = useMemo(() => tiesOf(drawn), [drawn])
  return (
    <SheetView
      drawn={drawn}
      ties={ties}
      marks={NO_MARKS}
      stale={false}
      light={undefined}
      covered={covered}
      pixelsPerMm={pixelsPerMm}
      openMark={undefined}
      handle={null}
      onLight={nothing}
      onChoose={nothing}
      onSize={() => 'Take this sheet to the front to change it.'}
      onDrag={nothing}
      onMark={nothing}
    >
      <div className="beside-says">
        <button type="button" onClick={onTake}>
          Take to the front
        </button>
        <button type="button" onClick={onPutAway}>
          Put back
        </button>
      </div>
    </SheetView>
  )
}
