import type { Feature } from './feature.ts'
import type { DatumFeature, FaceTexture, FrameStatement } from './geometric.ts'
import type { Header } from './header.ts'
import type { Mark } from './mark.ts'
import type { Acceptance, PlaceRequest, SchemeRequest, ShowRequest, ViewRequest } from './request.ts'
import type { StackStatement } from './stack.ts'
import type { Stock } from './stock.ts'
import type { Words } from './words.ts'

export type * from './feature.ts'
export type * from './header.ts'
export type * from './placement.ts'
export type * from './request.ts'
export type * from './side.ts'
export type * from './stock.ts'
export type { Name, Words } from './words.ts'

/** The brief as read. Whatever could not be read is in `marks`; everything else stands. */
export interface Brief {
  readonly text: string
  readonly header: Header
  readonly stock?: Stock
  /** In the order written, which is the order worked. */
  readonly features: readonly Feature[]
  /** Absent: the program proposes the views. */
  readonly views?: readonly ViewRequest[]
  readonly shows: readonly ShowRequest[]
  readonly places: readonly PlaceRequest[]
  readonly schemes: readonly SchemeRequest[]
  /** Absent: none. */
  readonly acceptances?: readonly Acceptance[]
  /** Absent: none. */
  readonly datums?: readonly DatumFeature[]
  /** Absent: none. */
  readonly frames?: readonly FrameStatement[]
  /** What sizes must add up to. Absent: nothing is asked. */
  readonly stacks?: readonly StackStatement[]
  /** Textures of single surfaces; the general one is in the header. Absent: none. */
  readonly textures?: readonly FaceTexture[]
  readonly comments?: readonly Comment[]
  readonly marks: readonly Mark[]
}

/** A comment, from its `#`. */
export interface Comment extends Words {
  /** On lines of its own above a statement (or inside one), beside a statement's first line, or after the last one. */
  readonly place: 'above' | 'beside' | 'end'
  /** Start of the statement it goes with. */
  readonly of?: number
}
