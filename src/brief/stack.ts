import type { Num } from './size.ts'
import type { Span } from './span.ts'
import type { Name, Words } from './words.ts'

/** `stack lid seat: top to hole A edge, min 2`: what lies between two faces or axes, and what it must keep to. */
export interface StackStatement {
  /** What the drafter calls it. */
  readonly name: Words
  readonly from: Name
  readonly to: Name
  /** Direction, where the two ends leave it open: two axes that differ both ways. */
  readonly along?: 'left-right' | 'front-rear' | 'up-down'
  /** In the brief's unit. */
  readonly min?: Num
  readonly max?: Num
  /** By which the limits are held; worst case where nothing is said. */
  readonly method: 'worst case' | 'root-sum-square'
  /** The bonus of Ⓜ and Ⓛ counts beside the zones of position. */
  readonly bonus?: true
  readonly span: Span
}
