import type { Size } from '../brief/size.ts'
import type { Vec3 } from '../geometry/vec.ts'

/** What a datum is taken from, or what a tolerance holds: a flat or round surface, or two sides with a width. */
export interface NamedFeature {
  /** Id of the feature, plane or surface: `hole A`, `top`, `body`, `width`. */
  readonly id: string
  readonly kind: 'plane' | 'round' | 'width'
  readonly faces: readonly number[]
  /** Out of a plane, along an axis, across a width. */
  readonly direction: Vec3
  /** Its diameter or width, where the brief states one. A plane has none. */
  readonly size?: Size
  /** The brief's number is a thread's; its limits are the thread's. */
  readonly threaded?: true
  /** Hole, slot or notch, rather than shaft, boss or tab. */
  readonly internal: boolean
  /** Id of the part's feature, whose other sizes say where it is. */
  readonly feature?: string
}

/** The features that the brief's datums, frames and textures name, in their order; absent where nothing bears the name. */
export interface NamedFeatures {
  readonly datums: readonly (NamedFeature | undefined)[]
  readonly frames: readonly (NamedFeature | undefined)[]
  readonly textures: readonly (NamedFeature | undefined)[]
  /** Both ends of each stack. */
  readonly stacks: readonly (readonly [NamedFeature | undefined, NamedFeature | undefined])[]
}
