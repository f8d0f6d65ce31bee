import { type Area, type Covered, fitted } from '../sheet/viewport.ts'

/** What lies about the sheet, in rem; the style sheet says the same. */
const REM = {
  slip: 23.5,
  foldedSlip: 2.6,
  edge: 1.2,
  margin: 16,
  leastBelow: 6.2,
  leastSlip: 18.5,
  leastOnPhone: 10,
  strip: 11,
}

/** What an open slip takes of a narrow window's width, where it lies beside the sheet. */
const BESIDE = 0.46

/** Between the sheet and the slip below it, rem. */
const GAP = 0.5

/** Routing slip and the row above it, in rem: as a slip of desks, in two rows, in three, or as one line; the row alone. */
const BOTTOM = { plain: 8.1, narrow: 12, slim: 15.2, low: 4.3, without: 2.7 }

/** The row of the scale, rem. */
const SCALE_ROW = 2

/** How the window stands to what lies in it. */
export interface Window extends Area {
  /** Px of one rem. */
  readonly rem: number
}

/** The slip would take most of the window. */
const isNarrow = ({ width, rem }: Window): boolean => REM.slip * rem > 0.4 * width

/** An upright one, such as a tablet's: the slip lies below the sheet, the marks beside it. */
const isUpright = (window: Window): boolean => {
  const { width, height, rem } = window
  return isNarrow(window) && height > width && width >= (REM.slip + REM.margin) * rem && height >= 48 * rem
}

/** Whether the slip, laid open, would make the sheet small. */
export const takesFromSheet = (window: Window): boolean => isNarrow(window) && !isUpright(window)

/** A phone's: three desks do not stand side by side. */
const isSlim = (window: Window): boolean => isNarrow(window) && !isLow(window) && window.width < 44 * window.rem

/** No place for desks below the sheet, nor for marks beside it. */
const isLow = ({ height, rem }: Window): boolean => height < 36 * rem

/** Where the sheet lies and where the marks stand, px. */
export interface Room {
  readonly covered: Covered
  readonly narrow: boolean
  readonly slim: boolean
  readonly low: boolean
  /** Higher than wide: two sheets lie one below the other. */
  readonly upright: boolean
  /** The open slip's place, px; absent: along the window's left edge, as wide as it is by itself. */
  readonly slip?: SlipRoom
  /** The marks' place; absent: there is none, they lie over the sheet when they are asked for. */
  readonly margin: MarginPlace | undefined
}

export interface SlipRoom {
  readonly bottom: number
  readonly height: number
  readonly width: number
  /** Below the sheet, or at its left. */
  readonly side: 'below' | 'left'
}

/** As CSS has it. */
export const slipStyle = ({ bottom, height, width }: SlipRoom) => ({ top: 'auto', bottom, height, width })

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
  const [narrow, slim, low] = [isNarrow(window), isSlim(window), isLow(window)]
  const kind = withoutDesks ? 'without' : low ? 'low' : slim ? 'slim' : narrow ? 'narrow' : 'plain'
  const bottom = BOTTOM[kind] * rem
  const edge = REM.edge * rem
  const top = edge
  const plain: Covered = {
    left: (folded ? REM.foldedSlip : REM.slip) * rem + edge,
    right: edge,
    top,
    bottom,
  }
  const is = { narrow, slim, low, upright: window.height > window.width }
  if (!folded && isUpright(window)) {
    const open = { ...plain, left: edge, bottom: bottom + REM.leastSlip * rem }
    const height = window.height - top - bottom - paper.height * fitted(paper, window, open).scale
    // As wide as a column of marks leaves it.
    const width = window.width - (REM.margin + REM.edge) * rem
    return {
      covered: { ...open, bottom: bottom + height },
      ...is,
      slip: { side: 'below', bottom, height: height - GAP * rem, width },
      margin: withoutMargin ? undefined : { side: 'below', left: width + edge, bottom, height },
    }
  }
  if (!folded && slim && window.height > window.width) {
    // Sheet, slip and marks one below the other.
    const strip = withoutMargin ? 0 : REM.leastBelow * rem
    const over = bottom + strip + GAP * rem
    const open = { ...plain, left: edge, bottom: over + REM.leastOnPhone * rem }
    const height = window.height - top - over - paper.height * fitted(paper, window, open).scale - GAP * rem
    return {
      covered: { ...open, bottom: over + height },
      ...is,
      slip: { side: 'below', bottom: over, height, width: window.width },
      margin: withoutMargin ? undefined : { side: 'below', left: edge, bottom, height: strip },
    }
  }
  if (!folded && narrow) {
    const width = Math.min(REM.slip * rem, BESIDE * window.width)
    // In a low window down to the routing slip: the row of the scale is beside it.
    const foot = bottom - (low ? SCALE_ROW : 0) * rem
    const slip: SlipRoom = { side: 'left', bottom: foot, height: window.height - foot, width }
    return { ...besideOrBelow(window, { ...plain, left: width + edge }, paper, withoutMargin || low), ...is, slip }
  }
  return { ...besideOrBelow(window, plain, paper, withoutMargin || low), ...is }
}

/** The sheet in what `plain` leaves free, and the marks on its right or below it. */
function besideOrBelow(
  window: Window,
  plain: Covered,
  paper: Area,
  withoutMargin: boolean,
): Pick<Room, 'covered' | 'margin'> {
  if (withoutMargin) return { covered: plain, margin: undefined }
  const { rem } = window
  const right: Covered = { ...plain, right: REM.margin * rem }
  const below: Covered = { ...plain, bottom: plain.bottom + REM.leastBelow * rem }
  const { scale } = fitted(paper, window, below)
  if (fitted(paper, window, right).scale >= scale) return { covered: right, margin: { side: 'right' } }
  // What the sheet leaves free belongs to the marks.
  const height = window.height - plain.top - plain.bottom - paper.height * scale
  return {
    covered: { ...plain, bottom: plain.bottom + height },
    margin: { side: 'below', left: plain.left, bottom: plain.bottom, height },
  }
}
