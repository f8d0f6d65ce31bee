import { type Area, type Covered, fitted } from '../sheet/viewport.ts'

/** What lies about the sheet, in rem; the style sheet says the same. */
const REM = { slip: 23.5, foldedSlip: 2.6, edge: 1.2, margin: 16, leastBelow: 6.2, leastSlip: 18.5, strip: 11 }

/** Between the sheet and the slip below it, rem. */
const GAP = 0.5

/** Routing slip and the row above it, in rem: as a slip of desks, in two rows, or as one line; the row alone. */
const BOTTOM = { plain: 8.1, narrow: 12, low: 4.3, without: 2.7 }

/** How the window stands to what lies in it. */
export interface Window extends Area {
  /** Px of one rem. */
  readonly rem: number
}

/** The slip would take most of the window: it lies over the sheet where it is not folded. */
const isNarrow = ({ width, rem }: Window): boolean => REM.slip * rem > 0.4 * width

/** An upright one, such as a tablet's: the slip lies below the sheet, the marks beside it. */
const isUpright = (window: Window): boolean => {
  const { width, height, rem } = window
  return isNarrow(window) && height > width && width >= (REM.slip + REM.margin) * rem && height >= 48 * rem
}

/** Whether the slip, laid open, would lie over the sheet. */
export const liesOverSheet = (window: Window): boolean => isNarrow(window) && !isUpright(window)

/** No place for desks below the sheet, nor for marks beside it. */
const isLow = ({ height, rem }: Window): boolean => height < 36 * rem

/** Where the sheet lies and where the marks stand, px. */
export interface Room {
  readonly covered: Covered
  readonly narrow: boolean
  readonly low: boolean
  /** The open slip's place where it lies below the sheet, px; absent: along the window's left edge. */
  readonly slip?: { readonly bottom: number; readonly height: number; readonly width?: number }
  /** The marks' place; absent: there is none, they lie over the sheet when they are asked for. */
  readonly margin: MarginPlace | undefined
}

export type MarginPlace =
  | { readonly side: 'right' }
  /** Below the sheet, from `left` as far as the window's edge. */
  | { readonly side: 'below'; readonly left: number; readonly bottom: number; readonly height: number }

export interface Lying {
  readonly folded: boolean
  /** The sheet's format, mm. */
  readonly paper: Area
  /** Marks are told elsewhere, or not at all: no room is kept for them. */
  readonly withoutMargin: boolean
  /** No desk has to do with it: there is no routing slip. */
  readonly withoutDesks?: boolean
}

/**
 * The margin's place is kept whether there are marks or not, so that the sheet does not change while one writes: on the
 * right or below, wherever it leaves the sheet larger.
 */
export function roomFor(window: Window, { folded, paper, withoutMargin, withoutDesks }: Lying): Room {
  const { rem } = window
  const [narrow, low] = [isNarrow(window), isLow(window)]
  const bottom = (withoutDesks ? BOTTOM.without : low ? BOTTOM.low : narrow ? BOTTOM.narrow : BOTTOM.plain) * rem
  const plain: Covered = {
    left: ((folded || narrow ? REM.foldedSlip : REM.slip) + REM.edge) * rem,
    right: REM.edge * rem,
    top: REM.edge * rem,
    bottom,
  }
  if (isUpright(window) && !folded) {
    const open = { ...plain, left: REM.edge * rem, bottom: bottom + REM.leastSlip * rem }
    const height = window.height - plain.top - bottom - paper.height * fitted(paper, window, open).scale
    // As wide as a column of marks leaves it.
    const width = window.width - (REM.margin + REM.edge) * rem
    return {
      covered: { ...open, bottom: bottom + height },
      narrow,
      low,
      slip: { bottom, height: height - GAP * rem, width },
      margin: withoutMargin ? undefined : { side: 'below', left: width + REM.edge * rem, bottom, height },
    }
  }
  if (low || withoutMargin) return { covered: plain, narrow, low, margin: undefined }
  const right: Covered = { ...plain, right: REM.margin * rem }
  const below: Covered = { ...plain, bottom: bottom + REM.leastBelow * rem }
  const { scale } = fitted(paper, window, below)
  if (fitted(paper, window, right).scale >= scale) return { covered: right, narrow, low, margin: { side: 'right' } }
  // What the sheet leaves free belongs to the marks.
  const height = window.height - plain.top - bottom - paper.height * scale
  const room: Room = {
    covered: { ...plain, bottom: bottom + height },
    narrow,
    low,
    margin: { side: 'below', left: plain.left, bottom, height },
  }
  if (folded || !narrow) return room
  // Laid open over the sheet, the slip leaves the marks a strip below it.
  const strip = Math.min(height, REM.strip * rem)
  const over = bottom + strip + GAP * rem
  return {
    ...room,
    slip: { bottom: over, height: window.height - over - GAP * rem },
    margin: { side: 'below', left: plain.left, bottom, height: strip },
  }
}
