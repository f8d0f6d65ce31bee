import type { Frame } from './frame/frame.ts'
import type { Num } from './size.ts'
import type { Span } from './span.ts'
import type { Name, Words } from './words.ts'

/** `datum A  rear face`: the feature from which a datum is taken. */
export interface DatumFeature {
  /** One capital, or two alike. */
  readonly letter: Words
  readonly of: Name
  readonly span: Span
}

/** `frame holes A: ⌖ ⌀0.2 Ⓜ A B C`: a geometric tolerance and the feature that it holds. */
export interface FrameStatement {
  readonly of: Name
  readonly frame: Frame
  /** A profile that runs all around the feature's border. */
  readonly allAround?: true
  readonly span: Span
}

export const lays = ['=', '⟂', 'X', 'M', 'C', 'R', 'P'] as const
/** Direction of the tool marks: parallel or square to the symbol's edge, crossed, in many ways, round, radial, none. */
export type Lay = (typeof lays)[number]

/** `texture bore: Ra 0.8, machined`: surface texture of one surface, in place of the general one. */
export interface FaceTexture {
  readonly of: Name
  readonly parameter: 'Ra' | 'Rz'
  /** In `unit`. */
  readonly value: Num
  readonly unit: 'µm' | 'µin'
  /** Whether material is to be taken off: as the shop likes, yes, or no. */
  readonly removal: 'any' | 'required' | 'prohibited'
  readonly lay?: Lay
  /** `ground`, `lapped`: how it is made. */
  readonly process?: Words
  readonly span: Span
}

/** After the value of a surface texture. */
export const textureWords = [
  'machined',
  'unmachined',
  'lay',
  'parallel',
  'square',
  'crossed',
  'many ways',
  'round',
  'radial',
  'even',
] as const
/** Ways of making a surface that a texture symbol may name. */
export const processWords = [
  'ground',
  'turned',
  'milled',
  'reamed',
  'bored',
  'honed',
  'lapped',
  'polished',
  'broached',
  'planed',
  'blasted',
] as const
