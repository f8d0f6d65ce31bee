import type { Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'

/** A section as planned: what is in front of the plane (for a half section, one quarter) is taken away. */
export interface PlannedSection {
  readonly kind: 'section'
  readonly letter: string
  readonly extent: 'full' | 'half'
  /** The view it stands in for; the cutting plane faces that viewer. */
  readonly side: Side
  /** A point of the cutting plane (on the axis for a half section). */
  readonly point: Vec3
  /** The view that shows the cutting-plane line; absent where no other view sees the plane edge-on. */
  readonly parent?: Side
}

export type PlannedView =
  | { readonly kind: 'principal'; readonly side: Side }
  | PlannedSection
  | { readonly kind: 'pictorial' }

export interface ViewPlan {
  readonly views: readonly PlannedView[]
  /** Reasons in a drafter's words. */
  readonly reasons: readonly string[]
  readonly thicknessNote?: string
}

/** How much hidden line a view of that side would carry, mm; asked only where two sides compete. */
export type HiddenLength = (side: Side) => number
