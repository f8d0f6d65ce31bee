import type { Vec3 } from '../../geometry/vec.ts'
import type { Body } from '../../kernel/body.ts'
import type { PartFeature } from '../../part/part.ts'
import type { Frame, ViewLine } from '../view.ts'

/** What the views and sections of one sheet show, as far as it bears on each other's hidden lines. */
export interface Showing {
  readonly body: Body
  readonly features: readonly PartFeature[]
  /** Axis of a turned part. */
  readonly axis?: { readonly point: Vec3; readonly direction: Vec3 }
  /** The principal views with all their lines, that of the hidden lines among them. */
  readonly principals: readonly ShownView[]
  readonly sections: readonly CutBySection[]
}

export interface ShownView {
  readonly frame: Frame
  readonly lines: readonly ViewLine[]
}

/** A cutting plane; `cutHalf` points from the division of a half section to the half that is cut, absent in a full one. */
export interface CutBySection {
  readonly point: Vec3
  readonly normal: Vec3
  readonly cutHalf?: Vec3
}
