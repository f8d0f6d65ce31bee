import type { Side } from '../../brief/brief.ts'
import type { Mark } from '../../brief/mark.ts'
import type { Vec3 } from '../../geometry/vec.ts'

/** A section as planned: what is in front of the plane (for a half section, one quarter) is taken away. */
export interface PlannedSection {
  readonly kind: 'section'
  readonly letter: string
  readonly extent: 'full' | 'half'
  /** The view it stands in for; the cutting plane faces that viewer. */
  readonly side: Side
  /** A point of the cutting plane (on the axis for a half and an aligned section). */
  readonly point: Vec3
  /** Where the plane is bent along the axis: unit directions of its halves from there, upper (right) half of the view first. */
  readonly aligned?: readonly [Vec3, Vec3]
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
  readonly marks?: readonly Mark[]
}

/** What the part looks like from a side; asked only where sides compete, for each costs a projection. */
export interface Sight {
  /** Hidden outline, mm on the part. */
  hiddenLength(side: Side): number
  hiddenLines(side: Side): number
  /** Some visible line of that side borders one of these faces. */
  shows(side: Side, faces: readonly number[]): boolean
  /** Some visible line of that side stands for edges of these faces alone. */
  showsAlone(side: Side, faces: readonly number[]): boolean
}
